// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Companions;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Uids;
import dev.plumbline.record.Withdrawal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

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
        Composition composition = new Composition(source, used);
        composition.make(report(source, used, composition.root));
        return composition.objects(part -> true);
    }

    /**
     * What a signature makes at once: the report, and which companions it will have.
     *
     * @param companions SOP Instance UIDs in the order they are composed
     */
    public record Begun(ComposedObject report, List<String> companions) {
        public Begun {
            companions = List.copyOf(companions);
        }
    }

    /**
     * The report alone, with the names of what {@link #companions} makes of it, at any time, always with the same bytes.
     *
     * @throws Refusal as {@link #compose}; the frames are rendered, so that none is found broken after the signature
     */
    public Begun begin(RecordRevision revision, RecordFrames frames) {
        RecordSource source = new RecordSource(revision, installation, frames);
        List<FramesUsed.Use> used = FramesUsed.of(source);
        RecordRules.check(source, used);
        ContentItem root = MeasurementReport.root(source, used);
        List<String> uids = companionParts(used, root).stream()
                .map(part -> Uids.instance(revision.caseId(), revision.revision(), part))
                .toList();
        return new Begun(object(ObjectHeader.Kind.REPORT.part(), report(source, used, root)), uids);
    }

    /** In the order they are composed. */
    private List<String> companionParts(List<FramesUsed.Use> used, ContentItem root) {
        List<String> parts = new ArrayList<>();
        int measured = (int) used.stream().filter(FramesUsed.Use::measured).count();
        for (int i = 1; i <= measured; i++) {
            parts.add(SecondaryCapture.KIND.part(i));
        }
        for (int i = 1; companions.presentationStates() && i <= measured; i++) {
            if (PresentationState.draws(used.get(i - 1), root)) {
                parts.add(ObjectHeader.Kind.GREY_PRESENTATION.part(i));
            }
        }
        if (companions.pdf()) {
            parts.add(ObjectHeader.Kind.PDF.part());
        }
        if (companions.keyObjects()) {
            parts.add(ObjectHeader.Kind.KEY_OBJECTS.part());
        }
        return parts;
    }

    /**
     * The companions of a signed report, in the order they are composed, as {@link #begin} has named them whatever is
     * configured now.
     *
     * @param report whole data set of the report as it is held
     * @param named UIDs that {@link #begin} gave
     */
    public List<ComposedObject> companions(
            RecordRevision revision, DataSet report, List<String> named, RecordFrames frames) {
        RecordSource source = new RecordSource(
                revision, installation.at(report.string(Tag.INSTITUTION_NAME).orElse("")), frames);
        List<FramesUsed.Use> used = FramesUsed.of(source);
        Composition composition = with(wanted(revision, named)).new Composition(source, used);
        composition.make(report);
        List<ComposedObject> objects = composition.objects(part -> !part.equals(ObjectHeader.Kind.REPORT.part()));
        if (!objects.stream().map(ComposedObject::sopInstanceUid).toList().equals(named)) {
            throw new IllegalStateException("The companions are not those that the signature named.");
        }
        return objects;
    }

    private static Companions wanted(RecordRevision revision, List<String> named) {
        Predicate<String> isNamed = part -> named.contains(Uids.instance(revision.caseId(), revision.revision(), part));
        int frames = 1 + revision.document().observations().size();
        return new Companions(
                IntStream.rangeClosed(1, frames)
                        .mapToObj(ObjectHeader.Kind.GREY_PRESENTATION::part)
                        .anyMatch(isNamed),
                isNamed.test(ObjectHeader.Kind.PDF.part()),
                isNamed.test(ObjectHeader.Kind.KEY_OBJECTS.part()));
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
        private final ContentItem root;
        private final List<String> parts = new ArrayList<>();
        private final List<DataSet> made = new ArrayList<>();

        Composition(RecordSource source, List<FramesUsed.Use> used) {
            this.source = source;
            this.used = used;
            this.root = MeasurementReport.root(source, used);
        }

        void make(DataSet report) {
            List<RasterDrawing.Painted> pictures =
                    drawings().stream().map(RecordDrawing::painted).toList();
            annotatedFrames(pictures);
            if (companions.presentationStates()) {
                presentationStates();
            }
            add(ObjectHeader.Kind.REPORT.part(), report);
            if (companions.pdf()) {
                add(
                        ObjectHeader.Kind.PDF.part(),
                        EncapsulatedPdf.of(source, report, RecordPages.pdf(report, pictures)));
            }
            if (companions.keyObjects()) {
                add(ObjectHeader.Kind.KEY_OBJECTS.part(), KeyObjects.of(source, used, made));
            }
        }

        List<ComposedObject> objects(Predicate<String> wanted) {
            return IntStream.range(0, made.size())
                    .filter(i -> wanted.test(parts.get(i)))
                    .mapToObj(i -> object(parts.get(i), made.get(i)))
                    .toList();
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

        private void presentationStates() {
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
