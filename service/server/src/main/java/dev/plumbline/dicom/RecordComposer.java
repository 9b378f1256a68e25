// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.CaseInputs;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.RecordRevision;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/**
 * Makes the DICOM objects of one revision of a record: an annotated frame for every frame used, then the structured report.
 *
 * <p>A pure function: the same revision, installation and frames always give the same bytes.
 */
public final class RecordComposer {
    private final Installation installation;

    public RecordComposer(Installation installation) {
        this.installation = installation;
    }

    /**
     * The objects of a revision, the report last, so that it never names what is not there.
     *
     * @throws Refusal when a frame is not held or belongs to another patient, when a word of the case has no code, or when a
     *     proposed plan is signed
     */
    public List<ComposedObject> compose(RecordRevision revision, RecordFrames frames) {
        RecordSource source = new RecordSource(revision, installation, frames);
        List<FramesUsed.Use> used = FramesUsed.of(source);
        RecordRules.check(source, used);
        CaseInputs inputs = CaseInputs.of(
                revision.document(), ref -> source.frame(ref, "/frame").frame().geometry());
        List<ComposedObject> objects = new ArrayList<>();
        for (int i = 0; i < used.size(); i++) {
            FramesUsed.Use use = used.get(i);
            BufferedImage annotated = AnnotatedFrame.draw(source, inputs, use);
            objects.add(object(SecondaryCapture.part(i + 1), SecondaryCapture.of(source, use, i + 1, annotated)));
        }
        objects.add(object(ObjectHeader.Kind.REPORT.part(), report(source, used)));
        return List.copyOf(objects);
    }

    static DataSet report(RecordSource source, List<FramesUsed.Use> used) {
        DataSet report = ObjectHeader.of(source, ObjectHeader.Kind.REPORT, ObjectHeader.Kind.REPORT.part());
        ObjectHeader.codingSchemes(report);
        DocumentHeader.put(report, source);
        Evidence.put(report, used);
        ContentWriter.write(MeasurementReport.root(source, used), report);
        return report;
    }

    private static ComposedObject object(String part, DataSet dataSet) {
        return new ComposedObject(
                part,
                dataSet.string(Tag.SOP_CLASS_UID).orElseThrow(),
                dataSet.string(Tag.SOP_INSTANCE_UID).orElseThrow(),
                DicomFile.encode(dataSet));
    }
}
