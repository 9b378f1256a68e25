// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Companions;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Withdrawal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Makes the DICOM objects of one revision of a record: an annotated frame for every frame used, presentation states over the
 * same frames, the structured report, the readable record as PDF, and the selection of all that as key objects.
 *
 * <p>A pure function: the same revision, installation and frames always give the same bytes.
 */
public final class RecordComposer {
    private final Installation installation;
    private final Companions companions;

    /** Composes every object there is. */
    public RecordComposer(Installation installation) {
        this(installation, Companions.ALL);
    }

    public RecordComposer(Installation installation, Companions companions) {
        this.installation = installation;
        this.companions = companions;
    }

    /** The same installation with other companions. */
    public RecordComposer with(Companions wanted) {
        return new RecordComposer(installation, wanted);
    }

    /**
     * The objects of a revision, in an order in which none names an object that comes later.
     *
     * @throws Refusal when a frame is not held or belongs to another patient or study, when a word of the case has no code,
     *     or when a proposed plan is signed
     */
    public List<ComposedObject> compose(RecordRevision revision, RecordFrames frames) {
        RecordSource source = new RecordSource(revision, installation, frames);
        List<FramesUsed.Use> used = FramesUsed.of(source);
        RecordRules.check(source, used);
        return new Composition(source, used).all();
    }

    /**
     * The structured report alone, not yet in a file.
     *
     * @throws Refusal as {@link #compose}
     */
    public DataSet report(RecordRevision revision, RecordFrames frames) {
        RecordSource source = new RecordSource(revision, installation, frames);
        List<FramesUsed.Use> used = FramesUsed.of(source);
        RecordRules.check(source, used);
        return report(source, used);
    }

    /**
     * The note that withdraws a record.
     *
     * @param report the report withdrawn
     * @param objects headers of all objects withdrawn, the report among them
     */
    public ComposedObject withdraw(Withdrawal withdrawal, DataSet report, List<DataSet> objects) {
        return object(
                ObjectHeader.Kind.REJECTION_NOTE.part(), RejectionNote.of(withdrawal, report, objects, installation));
    }

    static DataSet report(RecordSource source, List<FramesUsed.Use> used) {
        return report(source, used, MeasurementReport.root(source, used));
    }

    private static DataSet report(RecordSource source, List<FramesUsed.Use> used, ContentItem root) {
        DataSet report = ObjectHeader.of(source, ObjectHeader.Kind.REPORT, ObjectHeader.Kind.REPORT.part());
        ObjectHeader.codingSchemes(report);
        DocumentHeader.put(report, source);
        Evidence.put(
                report, used.stream().map(use -> use.placed().frame().header()).toList());
        ContentWriter.write(root, report);
        return report;
    }

    /** One revision being composed. */
    private final class Composition {
        private final RecordSource source;
        private final List<FramesUsed.Use> used;
        private final List<String> parts = new ArrayList<>();
        private final List<DataSet> made = new ArrayList<>();

        Composition(RecordSource source, List<FramesUsed.Use> used) {
            this.source = source;
            this.used = used;
        }

        List<ComposedObject> all() {
            ContentItem root = MeasurementReport.root(source, used);
            List<RasterDrawing.Painted> pictures =
                    drawings().stream().map(RecordDrawing::painted).toList();
            annotatedFrames(pictures);
            if (companions.presentationStates()) {
                presentationStates(root);
            }
            DataSet report = report(source, used, root);
            add(ObjectHeader.Kind.REPORT.part(), report);
            if (companions.pdf()) {
                add(
                        ObjectHeader.Kind.PDF.part(),
                        EncapsulatedPdf.of(source, report, RecordPages.pdf(report, pictures)));
            }
            if (companions.keyObjects()) {
                add(ObjectHeader.Kind.KEY_OBJECTS.part(), KeyObjects.of(source, used, made));
            }
            List<ComposedObject> objects = new ArrayList<>();
            for (int i = 0; i < made.size(); i++) {
                objects.add(object(parts.get(i), made.get(i)));
            }
            return List.copyOf(objects);
        }

        private void add(String part, DataSet object) {
            parts.add(part);
            made.add(object);
        }

        private List<RecordDrawing> drawings() {
            CaseInputs inputs = CaseInputs.of(
                    source.revision().document(),
                    ref -> source.frame(ref, "/frame").frame().geometry());
            return RecordDrawing.all(
                    source.revision(),
                    inputs,
                    ref -> Optional.of(source.frame(ref, "/frame").frame().rendered()));
        }

        private void annotatedFrames(List<RasterDrawing.Painted> pictures) {
            for (int i = 0; i < pictures.size(); i++) {
                add(
                        SecondaryCapture.KIND.part(i + 1),
                        SecondaryCapture.of(
                                source, used.get(i), i + 1, pictures.get(i).sheet()));
            }
        }

        private void presentationStates(ContentItem root) {
            for (int i = 0; i < used.size() && used.get(i).measured(); i++) {
                String part = ObjectHeader.Kind.GREY_PRESENTATION.part(i + 1);
                PresentationState.of(source, used.get(i), i + 1, root).ifPresent(state -> add(part, state));
            }
        }
    }

    private static ComposedObject object(String part, DataSet dataSet) {
        return new ComposedObject(
                part,
                dataSet.string(Tag.SOP_CLASS_UID).orElseThrow(),
                dataSet.string(Tag.SOP_INSTANCE_UID).orElseThrow(),
                DicomFile.encode(dataSet));
    }
}
