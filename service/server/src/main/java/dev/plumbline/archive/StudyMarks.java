// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ForeignObjects;
import dev.plumbline.document.CasePart;
import dev.plumbline.document.GatheredJson;
import dev.plumbline.document.Lack;
import dev.plumbline.document.MarkedCase;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.intake.ForeignObject;
import dev.plumbline.intake.Gathered;
import dev.plumbline.intake.Gathered.FrameKey;
import dev.plumbline.intake.Gathered.RefusedObject;
import dev.plumbline.intake.Gathering;
import dev.plumbline.intake.MarkFrames;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Marks that other software drew in a study, and the case they belong to.
 *
 * <p>Nothing is kept of them but the objects themselves: they are read again each time, so what they say is never counted
 * twice. A case takes what holds without a question; what a person set by other means is never overwritten.
 */
public final class StudyMarks {
    private static final Logger LOG = LoggerFactory.getLogger(StudyMarks.class);

    /** Ids of marks added beside those that a person set begin so; what stands then is not for other marks to replace. */
    private static final String BESIDE_A_PERSONS = "added-";

    private final Archive archive;
    private final Cases cases;
    private final Records records;
    private final ReentrantLock attaching = new ReentrantLock();

    /** Studies with an object that was refused, perhaps because its image comes later. */
    private final Set<String> waiting = ConcurrentHashMap.newKeySet();

    public StudyMarks(Archive archive, Cases cases, Records records) {
        this.archive = archive;
        this.cases = cases;
        this.records = records;
    }

    /**
     * What marks of a study came to.
     *
     * @param caseId the case they are attached to
     * @param lacks what is still needed, in words
     */
    public record Account(String study, Gathered gathered, Optional<String> caseId, List<Lack> lacks) {
        public ObjectNode json() {
            return GatheredJson.of(study, gathered, caseId, lacks);
        }
    }

    /** Attaches what an object that came in may carry; what cannot be attached waits in the account of its study. */
    public void arrived(HeldObject object) {
        String study = object.identity().studyInstanceUid();
        if (!ForeignObjects.canCarryMarks(object.identity().sopClassUid()) && !waiting.contains(study)) {
            return;
        }
        try {
            attach(study);
        } catch (Refusal refusal) {
            LOG.info(
                    "Marks of an object that came in are not attached: {}",
                    refusal.problem().detail());
        } catch (RuntimeException e) { // the object itself is held, and its sender is to hear that
            LOG.error("Marks of an object that came in could not be attached.", e);
        }
    }

    /**
     * Reads all marks of a study and attaches what holds to its open case, or opens one.
     *
     * @throws Refusal {@link Problem.NotHeld} where no such study is held; or what the case says against the marks
     */
    public Account attach(String study) {
        attaching.lock();
        try {
            Gathered gathered = gathered(study);
            if (gathered.refused().isEmpty()) {
                waiting.remove(study);
            } else {
                waiting.add(study);
            }
            MarkedCase marked = new MarkedCase(gathered);
            List<Gathered.Question> asked = new ArrayList<>(gathered.questions());
            Optional<String> caseId = openCase(study, asked);
            if (caseId.isPresent()) {
                complete(caseId.get(), marked, asked);
            } else if (asked.size() == gathered.questions().size()) {
                caseId = opened(study, marked, asked);
            }
            return account(study, asking(gathered, asked), caseId);
        } finally {
            attaching.unlock();
        }
    }

    /**
     * What the marks of a study say now; nothing is attached.
     *
     * @throws Refusal {@link Problem.NotHeld} where no such study is held
     */
    public Account account(String study) {
        Gathered gathered = gathered(study);
        List<Gathered.Question> asked = new ArrayList<>(gathered.questions());
        Optional<String> caseId = openCase(study, asked);
        caseId.ifPresent(id -> {
            CaseDocument document = cases.held(id).document();
            planned(document)
                    .ifPresent(frame ->
                            asked.addAll(contradictions(isDrawn(id), new MarkedCase(gathered), frame, document)));
        });
        return account(study, asking(gathered, asked), caseId);
    }

    private Account account(String study, Gathered gathered, Optional<String> caseId) {
        List<Lack> lacks =
                caseId.map(id -> cases.lacks(cases.held(id).document())).orElseGet(() -> nothingOpen(gathered));
        return new Account(study, gathered, caseId, lacks);
    }

    private List<Lack> nothingOpen(Gathered gathered) {
        if (new MarkedCase(gathered).targets() == 0) {
            return List.of(new Lack("/marks/target", "The target: draw a point and label it as the site's rules say."));
        }
        return List.of();
    }

    private static Gathered asking(Gathered gathered, List<Gathered.Question> asked) {
        return new Gathered(gathered.placed(), gathered.unmatched(), asked, gathered.refused(), gathered.remarks());
    }

    /** The only unsigned case on frames of the study; several are a question. */
    private Optional<String> openCase(String study, List<Gathered.Question> asked) {
        List<String> all = archive.store().casesOfStudy(study);
        List<String> open = all.stream().filter(id -> !cases.isSigned(id)).toList();
        if (open.size() > 1) {
            asked.add(question("Which case? " + open.size() + " are open on this study: " + String.join(", ", open)
                    + ". Append the marks to the one that is meant."));
        } else if (open.isEmpty() && !all.isEmpty()) {
            asked.add(question("The case of this study is signed. What was drawn later belongs to an amendment."));
        }
        return open.size() == 1 ? Optional.of(open.get(0)) : Optional.empty();
    }

    private static Gathered.Question question(String text) {
        return new Gathered.Question("", "", Optional.empty(), text);
    }

    private Optional<String> opened(String study, MarkedCase marked, List<Gathered.Question> asked) {
        Optional<FrameKey> planned = marked.plannedFrame();
        if (planned.isEmpty()) {
            if (marked.targets() > 1) {
                asked.add(question("Which frame is the plan made on? " + marked.targets() + " frames have a target."));
            }
            return Optional.empty();
        }
        String id = MarkedCase.caseId(study);
        records.open(marked.opened(id, cases.site().marks().opens(), planned.get()), Optional.empty(), document -> "");
        return Optional.of(id);
    }

    private void complete(String caseId, MarkedCase marked, List<Gathered.Question> asked) {
        CaseDocument document = cases.held(caseId).document();
        planned(document).ifPresent(frame -> {
            boolean over = isDrawn(caseId);
            asked.addAll(contradictions(over, marked, frame, document));
            cases.place(
                    caseId,
                    new Cases.Drawn(
                            over ? MarkedCase.PREFIX : BESIDE_A_PERSONS,
                            standing -> over ? marked.marks(frame, standing) : marked.additions(frame, standing),
                            marked.observations(frame)));
        });
    }

    /** Whether the marks of a case that stand are themselves from other software; a person's stand before it. */
    private boolean isDrawn(String caseId) {
        return cases.lastSet(caseId, CasePart.MARKS).orElse(caseId).startsWith(MarkedCase.PREFIX);
    }

    private static Optional<FrameKey> planned(CaseDocument document) {
        return document.frame() instanceof FrameRef.Held held
                ? Optional.of(new FrameKey(held.sopInstanceUid(), held.frameNumber()))
                : Optional.empty();
    }

    private static List<Gathered.Question> contradictions(
            boolean over, MarkedCase marked, FrameKey planned, CaseDocument document) {
        return over
                ? List.of()
                : marked.contradictions(planned, document.marks()).stream()
                        .map(mark -> new Gathered.Question(
                                mark.from(),
                                "",
                                Optional.of(mark.meaning()),
                                "Which " + mark.meaning().word() + "? One was set by other means, and another is drawn."
                                        + " The one of the case stands."))
                        .toList();
    }

    private Gathered gathered(String study) {
        List<HeldObject> held = archive.store().objects(study, Optional.empty());
        if (held.isEmpty()) {
            throw new Refusal(new Problem.NotHeld(
                    "", "No study with this UID is held here.", "Send its images and reports first."));
        }
        List<ForeignObject> read = new ArrayList<>();
        List<RefusedObject> unread = new ArrayList<>();
        HeldStudy frames = new HeldStudy(held);
        for (HeldObject object : held) {
            if (ForeignObjects.canCarryMarks(object.identity().sopClassUid())) {
                try {
                    frames.requireOnePatient(object);
                    ForeignObjects.read(open(object).header()).ifPresent(read::add);
                } catch (Refusal refusal) {
                    unread.add(new RefusedObject(
                            object.sopInstanceUid(),
                            "",
                            refusal.problem().detail(),
                            refusal.problem().remedy()));
                }
            }
        }
        return Gathering.of(read, unread, cases.site().marks(), frames);
    }

    private DicomFile open(HeldObject object) {
        try {
            return archive.open(object);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The images of one study. */
    private final class HeldStudy implements MarkFrames {
        private static final String PATIENT_ID = "00100020";

        private final List<HeldObject> images;
        private final Map<String, Optional<DicomFile>> opened = new HashMap<>();

        private HeldStudy(List<HeldObject> held) {
            images = held.stream()
                    .filter(object ->
                            !ForeignObjects.canCarryMarks(object.identity().sopClassUid()))
                    .toList();
        }

        /** Marks of another patient under the same study UID are a mix-up that a person must look at. */
        private void requireOnePatient(HeldObject report) {
            String patient = patient(report);
            if (images.stream().anyMatch(image -> !patient(image).equals(patient))) {
                throw new Refusal(new Problem.Conflict(
                        "",
                        "The object names another patient than the images of its study.",
                        "Find out whose marks these are and send them with the right patient."));
            }
        }

        private String patient(HeldObject object) {
            return object.attributeTree().path(PATIENT_ID).path("Value").path(0).asText("");
        }

        private Optional<DicomFile> image(String uid) {
            return opened.computeIfAbsent(
                    uid,
                    wanted -> images.stream()
                            .filter(object -> object.sopInstanceUid().equals(wanted))
                            .findFirst()
                            .map(StudyMarks.this::open)
                            .filter(DicomFile::isImage));
        }

        @Override
        public Optional<Integer> count(String sopInstanceUid) {
            return image(sopInstanceUid).map(DicomFile::frameCount);
        }

        @Override
        public FrameGeometry geometry(String sopInstanceUid, int number) {
            return image(sopInstanceUid).orElseThrow().geometry(number);
        }
    }
}
