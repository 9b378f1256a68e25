// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.archive.Records.Place;
import dev.plumbline.archive.Records.Reply;
import dev.plumbline.archive.Records.Request;
import dev.plumbline.archive.Records.Wording;
import dev.plumbline.archive.StoredRevision.State;
import dev.plumbline.dicom.ComposedObject;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.ImageIdentity;
import dev.plumbline.dicom.WrittenLife;
import dev.plumbline.document.CaseChanges;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.LifeJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Amendment;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import dev.plumbline.record.Withdrawal;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What happens to a record after it was made: a draft is signed, a signed one amended, all of it withdrawn. Nothing is ever
 * overwritten; every step is a further revision whose objects name what they replace or withdraw. Source: SR document life,
 * DICOM PS3.3 C.17.2.
 */
public final class RecordLife {
    private final Records records;
    private final Archive archive;
    private final Cases cases;

    RecordLife(Records records, Archive archive, Cases cases) {
        this.records = records;
        this.archive = archive;
        this.cases = cases;
    }

    /**
     * What somebody wants done to a record.
     *
     * @param ifMatch entity tag of the record as the sender has seen it, if sent
     * @param request key of the request, if sent
     */
    public record Step(String uid, JsonNode body, Optional<String> ifMatch, Optional<Request> request) {}

    /**
     * Signs a draft; durable when it returns. The same signature again is harmless.
     *
     * @throws Refusal {@link Problem.Incomplete} where something is missing without a reason, {@link Problem.Conflict} where
     *     the record is signed already or the case has gone on
     */
    public Reply sign(Step step, Wording<Standing> wording) {
        return answeredBefore(step).orElseGet(() -> doSign(step, wording));
    }

    private Reply doSign(Step step, Wording<Standing> wording) {
        StoredRevision draft = matched(step);
        List<StoredRevision> chain = chain(draft);
        if (draft.state() == State.WITHDRAWN) {
            throw conflict("This is the note of a withdrawal, not a record.", "Sign the draft of a new case.");
        }
        LifeJson.Signing signing = LifeJson.signing(step.body(), draft.document(), records.now());
        Optional<StoredRevision> signed = Standing.newestSigned(chain);
        if (signed.isPresent()) {
            if (!sameSignature(chain, signing)) {
                throw conflict("The record is signed already, with other content.", "Amend it, with the reason.");
            }
            return records.again(Standing.of(firstSigned(chain), chain), step.request(), wording);
        }
        if (!chain.get(chain.size() - 1).equals(draft)) {
            throw conflict("A later draft of this case stands.", "Sign the latest draft.");
        }
        Runnable still = () -> {
            requireUnchanged(draft, chain);
            if (!cases.held(draft.caseId()).growing().canonical().equals(draft.document())) {
                throw conflict(
                        "The case has gone on since this draft.",
                        "Make a draft of the case as it stands with POST /v1/records and sign that.");
            }
            cases.requireSignable(signing.document());
        };
        still.run();
        cases.check(signing.document());
        OffsetDateTime time = time(signing.document());
        Place place = new Place(draft.revision() + 1, time, Records.begun(chain, time));
        RecordRevision revision = records.compute(signing.document(), place);
        return records.file(records.made(revision, Optional.empty()), step.request(), wording, still);
    }

    private static StoredRevision firstSigned(List<StoredRevision> chain) {
        return chain.stream()
                .filter(each -> each.state() == State.SIGNED)
                .findFirst()
                .orElseThrow();
    }

    /** The first signature says the same; where no time was sent, but for the time. */
    private static boolean sameSignature(List<StoredRevision> chain, LifeJson.Signing signing) {
        CaseDocument held = Records.read(firstSigned(chain).document());
        CaseDocument sent = signing.document();
        if (!signing.timed()) {
            Signature signature = sent.signature().orElseThrow();
            sent = sent.withSignature(new Signature(
                    signature.name(),
                    signature.organization(),
                    signature.role(),
                    time(held),
                    signature.incompleteBecause()));
        }
        return CaseJson.canonical(sent).equals(CaseJson.canonical(held));
    }

    private static OffsetDateTime time(CaseDocument signed) {
        return signed.signature().orElseThrow().time();
    }

    /**
     * Replaces a signed record by a corrected one; durable when it returns. The same amendment again is harmless.
     *
     * @throws Refusal {@link Problem.Conflict} where the record is a draft, withdrawn or replaced already
     */
    public Reply amend(Step step, Wording<Standing> wording) {
        return answeredBefore(step).orElseGet(() -> doAmend(step, wording));
    }

    private Reply doAmend(Step step, Wording<Standing> wording) {
        StoredRevision before = matched(step);
        List<StoredRevision> chain = chain(before);
        requireSigned(before, chain, "amended");
        LifeJson.Amending amending = LifeJson.amending(step.body(), before.caseId());
        CaseDocument document = amending.document();
        Optional<StoredRevision> later = successor(before, chain);
        if (later.isPresent()) {
            boolean same = later.get().document().equals(CaseJson.canonical(document))
                    && later.get()
                            .change()
                            .filter(c -> c.reason().equals(amending.reason()))
                            .isPresent();
            if (!same) {
                throw conflict("A later revision stands in place of this one.", "Amend the latest revision.");
            }
            return records.again(Standing.of(later.get(), chain), step.request(), wording);
        }
        String changed = LifeJson.inCase(() -> changed(before, document));
        Runnable still = () -> {
            requireUnchanged(before, chain);
            cases.requireSignable(document);
        };
        still.run();
        int number =
                (int) chain.stream().filter(each -> each.change().isPresent()).count() + 1;
        Records.Made made = LifeJson.inCase(() -> {
            cases.check(document);
            RecordRevision revision = records.compute(
                    document,
                    new Place(chain.get(chain.size() - 1).revision() + 1, time(document), begun(before, chain)));
            return records.made(
                    revision.amending(new Amendment(number, before.revision(), amending.reason(), changed)),
                    Optional.of(new StoredRevision.Change(before.reportUid(), amending.reason(), changed, "")));
        });
        return records.file(made, step.request(), wording, still);
    }

    /** As the series itself says in the archive; a first revision that was a draft is known here alone. */
    private OffsetDateTime begun(StoredRevision before, List<StoredRevision> chain) {
        return WrittenLife.begun(header(before.reportUid()))
                .orElseGet(() -> chain.get(0).time());
    }

    private String changed(StoredRevision before, CaseDocument after) {
        CaseDocument earlier = Records.read(before.document());
        if (time(after).isBefore(before.time())) {
            throw new Refusal(new Problem.InvalidValue(
                    "/signature/time",
                    "The amendment is signed before what it replaces.",
                    "Give the time of this signature."));
        }
        requireSameSubject(header(before.reportUid()), after);
        String changed = CaseChanges.words(earlier, after);
        if (changed.isEmpty()) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The case says the same as the record.", "Send the case as it should have been."));
        }
        return changed;
    }

    private void requireSameSubject(DataSet report, CaseDocument after) {
        if (!(after.frame() instanceof FrameRef.Held planned)) {
            return; // refused when the record is composed
        }
        DataSet frame = header(planned.sopInstanceUid());
        if (!ImageIdentity.samePatient(frame, report)) {
            throw new Refusal(new Problem.InvalidValue(
                    "/frame",
                    "This frame belongs to another patient than the record.",
                    "Withdraw the record and write a new case for the other patient."));
        }
        if (!ImageIdentity.sameStudy(frame, report)) {
            throw new Refusal(new Problem.InvalidValue(
                    "/frame",
                    "This frame belongs to another study than the record.",
                    "Withdraw the record and write a new case in the other study."));
        }
    }

    /**
     * Withdraws a record with all its earlier revisions; durable when it returns.
     *
     * @throws Refusal {@link Problem.Conflict} where the record is a draft, withdrawn or replaced already
     */
    public Reply withdraw(Step step, Wording<Standing> wording) {
        return answeredBefore(step).orElseGet(() -> doWithdraw(step, wording));
    }

    private Reply doWithdraw(Step step, Wording<Standing> wording) {
        StoredRevision record = matched(step);
        List<StoredRevision> chain = chain(record);
        requireSigned(record, chain, "withdrawn");
        LifeJson.Withdrawing asked = LifeJson.withdrawing(step.body());
        if (successor(record, chain).isPresent()) {
            throw conflict("A later revision stands in place of this one.", "Withdraw the latest revision.");
        }
        records.companions().require(record);
        Withdrawal withdrawal = new Withdrawal(
                record.caseId(),
                chain.get(chain.size() - 1).revision() + 1,
                asked.ground(),
                asked.text(),
                asked.by(),
                asked.time().orElseGet(records::now));
        List<DataSet> objects = chain.stream()
                .filter(each -> each.state() == State.SIGNED)
                .flatMap(each -> each.objects().stream())
                .map(this::header)
                .toList();
        ComposedObject note = records.composer().withdraw(withdrawal, header(record.reportUid()), objects);
        StoredRevision stored = new StoredRevision(
                record.caseId(),
                withdrawal.revision(),
                withdrawal.time(),
                State.WITHDRAWN,
                record.document(),
                note.sopInstanceUid(),
                List.of(note.sopInstanceUid()),
                Optional.of(new StoredRevision.Change(
                        record.reportUid(), asked.ground().word(), asked.text(), asked.by())));
        return records.file(note, stored, step.request(), wording, () -> requireUnchanged(record, chain));
    }

    private Optional<Reply> answeredBefore(Step step) {
        return step.request().flatMap(records::answered);
    }

    private StoredRevision matched(Step step) {
        StoredRevision revision = records.revision(step.uid());
        step.ifMatch().ifPresent(sent -> {
            String tag = records.standing(revision).tag();
            boolean matches = sent.strip().equals("*")
                    || Arrays.stream(sent.split(",")).map(String::strip).anyMatch(tag::equals);
            if (!matches) {
                throw new Refusal(new Problem.PreconditionFailed(""));
            }
        });
        return revision;
    }

    private List<StoredRevision> chain(StoredRevision revision) {
        return archive.store().revisions(revision.caseId());
    }

    private DataSet header(String sopInstanceUid) {
        return records.frames().object(sopInstanceUid).header();
    }

    private static Optional<StoredRevision> successor(StoredRevision revision, List<StoredRevision> chain) {
        return chain.stream()
                .filter(each -> each.state() == State.SIGNED && each.revision() > revision.revision())
                .findFirst();
    }

    private static void requireSigned(StoredRevision revision, List<StoredRevision> chain, String what) {
        if (revision.state() == State.DRAFT) {
            throw conflict(
                    "This is a draft, which is not " + what + ".",
                    "Append to the case and make a new draft, or sign it first.");
        }
        if (chain.stream().anyMatch(each -> each.state() == State.WITHDRAWN)) {
            throw conflict("The record is withdrawn.", "Write a new case, with a caseId of its own.");
        }
    }

    /** Inside the transaction: nobody did anything to the record meanwhile. */
    private void requireUnchanged(StoredRevision revision, List<StoredRevision> chain) {
        if (!chain(revision).equals(chain)) {
            throw conflict("Something else was done to the record meanwhile.", "Read it again.");
        }
    }

    private static Refusal conflict(String detail, String remedy) {
        return new Refusal(new Problem.Conflict("", detail, remedy));
    }
}
