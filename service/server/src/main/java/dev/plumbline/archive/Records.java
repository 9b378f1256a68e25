// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.dicom.ComposedObject;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.dicom.RecordDrawing;
import dev.plumbline.dicom.RecordPages;
import dev.plumbline.dicom.WrittenLife;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.document.SessionDoseJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import dev.plumbline.record.Uids;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Makes records of cases and keeps them.
 *
 * <p>A case with a signature becomes a signed record whose objects stand in the archive; without one it stays a draft
 * that is kept here and never archived. The objects are a function of what is kept, so they can be composed again.
 */
public final class Records {
    private static final int FIRST_REVISION = 1;
    private static final int CREATED = 201;
    private static final int HELD = 200;

    private final Archive archive;
    private final HeldFrames frames;
    private final RecordComposer composer;
    private final Cases cases;
    private final Clock clock;
    private final RecordIndex index;
    private final CompanionMaker companions;

    public Records(Archive archive, RecordComposer composer, Cases cases, Clock clock) {
        this.archive = archive;
        this.frames = new HeldFrames(archive);
        this.composer = composer;
        this.cases = cases;
        this.clock = clock;
        this.index = new RecordIndex(archive);
        this.companions = new CompanionMaker(this, archive);
        archive.finishing(companions::finish);
    }

    /** Makes what goes with the reports. */
    public CompanionMaker companions() {
        return companions;
    }

    /** What happens to records after they were made. */
    public RecordLife life() {
        return new RecordLife(this, archive, cases);
    }

    /** A request that carries a key, so that it can come again without harm. */
    public record Request(String key, String bodyDigest) {}

    /**
     * What is answered, now and each time the same request comes again.
     *
     * @param status of HTTP: created or already held
     */
    public record Reply(int status, String body) {}

    /** Says in words of the door what was kept. */
    @FunctionalInterface
    public interface Wording<K> {
        String body(K kept);
    }

    /**
     * Keeps a case without making a record of it; durable when it returns. The same case again is harmless.
     *
     * @throws Refusal {@link Problem.Conflict} where another content is held under its identifier
     */
    public Reply open(CaseDocument document, Optional<Request> request, Wording<CaseDocument> wording) {
        Optional<Reply> earlier = request.flatMap(this::answered);
        if (earlier.isPresent()) {
            return earlier.get();
        }
        CaseDocument identified = CaseJson.identified(document);
        boolean known = isHeld(identified);
        if (!known) {
            cases.check(identified);
        }
        Reply reply = new Reply(known ? HELD : CREATED, wording.body(identified));
        archive.store().write(writing -> {
            writing.add(stored(identified));
            return request.map(r -> writing.add(kept(r, reply)));
        });
        return reply;
    }

    /**
     * Makes and keeps the record of a case; durable when it returns. The same case again is harmless.
     *
     * @throws Refusal where the case cannot be recorded, or another content is held under its identifier
     */
    public Reply file(CaseDocument document, Optional<Request> request, Wording<Standing> wording) {
        Optional<Reply> earlier = request.flatMap(this::answered);
        if (earlier.isPresent()) {
            return earlier.get();
        }
        CaseDocument identified = CaseJson.identified(document);
        isHeld(identified);
        List<StoredRevision> revisions =
                archive.store().revisions(identified.caseId().orElseThrow());
        Optional<StoredRevision> same = same(revisions, identified);
        if (same.isPresent()) {
            return again(Standing.of(same.get(), revisions), request, wording);
        }
        cases.check(identified);
        if (identified.signature().isPresent()) {
            cases.requireSignable(identified);
        }
        OffsetDateTime time = identified.signature().map(Signature::time).orElseGet(this::now);
        RecordRevision revision =
                compute(identified, new Place(revisions.size() + FIRST_REVISION, time, begun(revisions, time)));
        return file(made(revision, Optional.empty()), request, wording, () -> {});
    }

    /** A revision with its report, ready to be kept. */
    record Made(RecordRevision revision, StoredRevision stored, ComposedObject report) {}

    /**
     * Which revision it is.
     *
     * @param begun when the series of its reports began
     */
    record Place(int number, OffsetDateTime time, OffsetDateTime begun) {}

    /** When the first revision was made; of the one to come where there is none. */
    static OffsetDateTime begun(List<StoredRevision> revisions, OffsetDateTime first) {
        return revisions.isEmpty() ? first : revisions.get(0).time();
    }

    Made made(RecordRevision revision, Optional<StoredRevision.Change> change) {
        RecordComposer.Begun begun = composer.begin(revision, frames);
        return new Made(revision, stored(revision, begun, change), begun.report());
    }

    /** Keeps what was made; durable when it returns. */
    Reply file(Made made, Optional<Request> request, Wording<Standing> wording, Runnable still) {
        StoredRevision stored = made.stored();
        List<StoredRevision> chain = new ArrayList<>(archive.store().revisions(stored.caseId()));
        chain.add(stored);
        Reply reply = new Reply(CREATED, wording.body(Standing.of(stored, chain)));
        archive.file(
                new Filing(
                        stored(made.revision().document()),
                        stored,
                        made.revision().signed() ? List.of(made.report().bytes()) : List.of(),
                        request.map(r -> kept(r, reply)),
                        Optional.of(index.row(made.revision(), stored.reportUid())),
                        clock.instant()),
                () -> {
                    still.run();
                    requireSameDoses(made.revision());
                });
        companions.wake();
        return reply;
    }

    /** Inside the transaction: no other case of the session had anything given since the objects were composed. */
    private void requireSameDoses(RecordRevision revision) {
        if (!cases.sessionDose(revision.document(), revision.time()).equals(revision.sessionDose())) {
            throw new Refusal(new Problem.Conflict(
                    "", "Another case of this session has changed meanwhile.", "Send the request again."));
        }
    }

    /** The companions of a signed revision, made from what its signature kept. */
    List<ComposedObject> companions(String caseId, int number) {
        List<StoredRevision> chain = archive.store().revisions(caseId);
        StoredRevision stored = chain.stream()
                .filter(each -> each.revision() == number)
                .findFirst()
                .orElseThrow();
        DataSet report = frames.object(stored.reportUid()).header();
        OffsetDateTime begun = WrittenLife.begun(report).orElseGet(() -> begun(chain, stored.time()));
        List<String> named = stored.objects().subList(1, stored.objects().size());
        return composer.companions(read(stored, begun), report, named, frames);
    }

    /** Keeps a note of withdrawal. */
    Reply file(
            ComposedObject note,
            StoredRevision stored,
            Optional<Request> request,
            Wording<Standing> wording,
            Runnable still) {
        List<StoredRevision> chain = new ArrayList<>(archive.store().revisions(stored.caseId()));
        chain.add(stored);
        Reply reply = new Reply(CREATED, wording.body(Standing.of(stored, chain)));
        archive.file(
                new Filing(
                        archive.store().storedCase(stored.caseId()).orElseThrow(),
                        stored,
                        List.of(note.bytes()),
                        request.map(r -> kept(r, reply)),
                        clock.instant()),
                still);
        return reply;
    }

    /** Answers for something that is held already. */
    Reply again(Standing held, Optional<Request> request, Wording<Standing> wording) {
        Reply again = new Reply(HELD, wording.body(held));
        archive.store().write(writing -> request.map(r -> writing.add(kept(r, again))));
        return again;
    }

    RecordComposer composer() {
        return composer;
    }

    HeldFrames frames() {
        return frames;
    }

    OffsetDateTime now() {
        return clock.instant()
                .truncatedTo(ChronoUnit.SECONDS)
                .atZone(clock.getZone())
                .toOffsetDateTime();
    }

    /** A revision among the others of its case. */
    public Standing standing(StoredRevision revision) {
        return Standing.of(revision, archive.store().revisions(revision.caseId()));
    }

    /** Records that a query asks for. */
    public RecordList list(RecordQuery query) {
        return new RecordList(archive.store(), query);
    }

    Optional<Reply> answered(Request request) {
        return archive.store()
                .answer(request.key(), request.bodyDigest(), clock.instant())
                .map(kept -> new Reply(kept.status(), kept.body()));
    }

    private KeptAnswer kept(Request request, Reply reply) {
        return new KeptAnswer(request.key(), request.bodyDigest(), reply.status(), reply.body(), clock.instant());
    }

    private StoredCase stored(CaseDocument identified) {
        String caseId = identified.caseId().orElseThrow();
        return archive.store()
                .storedCase(caseId)
                .orElseGet(() -> new StoredCase(
                        caseId,
                        CaseJson.canonical(identified),
                        identified.bedside().session().orElse(""),
                        clock.instant()));
    }

    /**
     * Whether this very case is held: as it was opened, or as it stands after what was appended.
     *
     * @throws Refusal where another content is held under the identifier
     */
    private boolean isHeld(CaseDocument identified) {
        String caseId = identified.caseId().orElseThrow();
        Optional<StoredCase> held = archive.store().storedCase(caseId);
        if (held.isEmpty()) {
            return false;
        }
        String canonical = CaseJson.canonical(identified);
        if (!canonical.equals(held.get().document())
                && !canonical.equals(cases.held(caseId).growing().canonical())) {
            throw new Refusal(new Problem.Conflict(
                    "/caseId",
                    "Another content is held under this case identifier; the first one stands.",
                    "Send a new caseId for a new case."));
        }
        return true;
    }

    /**
     * The revision that says the very same. A draft of a case that has gone on since is followed by a further draft.
     *
     * @throws Refusal where the case has gone on, and what was sent is how it was opened
     */
    private Optional<StoredRevision> same(List<StoredRevision> revisions, CaseDocument identified) {
        String canonical = CaseJson.canonical(identified);
        Optional<StoredRevision> same = revisions.stream()
                .filter(revision -> revision.document().equals(canonical))
                .findFirst();
        String caseId = identified.caseId().orElseThrow();
        boolean goneOn = archive.store().storedCase(caseId).isPresent()
                && !canonical.equals(cases.held(caseId).growing().canonical());
        if (same.isEmpty() && goneOn) {
            throw new Refusal(new Problem.Conflict(
                    "/caseId",
                    "The case has gone on since it was opened like this.",
                    "Send only {\"caseId\": ...} for a record of the case as it stands."));
        }
        return same;
    }

    /**
     * The case document as it stands.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public CaseDocument document(String caseId) {
        return cases.held(caseId).document();
    }

    RecordRevision compute(CaseDocument document, Place place) {
        return computed(document, place).with(cases.sessionDose(document, place.time()));
    }

    private RecordRevision computed(CaseDocument document, Place place) {
        CaseInputs inputs = CaseInputs.of(document, frames::geometry);
        Comparison comparison = Comparison.of(inputs.plan(), inputs.observations());
        return new RecordRevision(
                document.caseId().orElseThrow(), place.number(), document, comparison, place.time(), place.begun());
    }

    /** A draft keeps its objects to itself: they are composed again when somebody asks. */
    private static StoredRevision stored(
            RecordRevision revision, RecordComposer.Begun begun, Optional<StoredRevision.Change> change) {
        List<String> reportFirst = new ArrayList<>();
        if (revision.signed()) {
            reportFirst.add(begun.report().sopInstanceUid());
            reportFirst.addAll(begun.companions());
        }
        return new StoredRevision(
                revision.caseId(),
                revision.revision(),
                revision.time(),
                revision.signed() ? StoredRevision.State.SIGNED : StoredRevision.State.DRAFT,
                CaseJson.canonical(revision.document()),
                Uids.instance(revision.caseId(), revision.revision(), "sr"),
                reportFirst,
                change,
                SessionDoseJson.write(revision.sessionDose()));
    }

    /**
     * A record by the UID of its report.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public StoredRevision revision(String reportUid) {
        return archive.store()
                .revisionOfReport(reportUid)
                .orElseThrow(() -> new Refusal(new Problem.NotHeld(
                        "", "No record with this UID is held here.", "List the records with GET /v1/records.")));
    }

    /** The revision with what it says, and plan, observations and deviations computed again from that. */
    public RecordRevision read(StoredRevision stored) {
        return read(stored, begun(archive.store().revisions(stored.caseId()), stored.time()));
    }

    private RecordRevision read(StoredRevision stored, OffsetDateTime begun) {
        return computed(read(stored.document()), new Place(stored.revision(), stored.time(), begun))
                .with(SessionDoseJson.read(stored.doses()));
    }

    static CaseDocument read(String canonical) {
        return CaseJson.read(canonical.getBytes(StandardCharsets.UTF_8), Door.HTTP);
    }

    /** The record in the forms that people read, with the frames it was drawn on. */
    public RecordPages pages(StoredRevision stored) {
        RecordRevision revision = read(stored);
        CaseInputs inputs = CaseInputs.of(revision.document(), frames::geometry);
        return new RecordPages(dataSet(stored, revision), RecordDrawing.all(revision, inputs, frames::image));
    }

    /** What people read of a record, without its drawings. */
    public String text(StoredRevision stored) {
        return RecordPages.text(dataSet(stored, read(stored)));
    }

    private DataSet dataSet(StoredRevision stored, RecordRevision revision) {
        return stored.state() == StoredRevision.State.DRAFT
                ? composer.report(revision, frames)
                : frames.object(stored.reportUid()).header();
    }

    /** The report as a DICOM file: the one in the archive, or composed again for a draft, which stands nowhere else. */
    public InputStream report(StoredRevision stored) {
        if (stored.state() == StoredRevision.State.DRAFT) {
            return new ByteArrayInputStream(DicomFile.encode(composer.report(read(stored), frames)));
        }
        try {
            return Files.newInputStream(archive.file(archive.held(stored.reportUid())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
