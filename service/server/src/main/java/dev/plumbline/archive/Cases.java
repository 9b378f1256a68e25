// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.AcquisitionTime;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.ImageIdentity;
import dev.plumbline.dicom.OrderCheck;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.CasePart;
import dev.plumbline.document.Door;
import dev.plumbline.document.GrowingCase;
import dev.plumbline.document.Lack;
import dev.plumbline.document.LogJson;
import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseCheck;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.SessionDose;
import dev.plumbline.record.SigningCheck;
import dev.plumbline.record.SiteRules;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Cases while they grow: every append is one transaction, durable when it returns, and harmless when it comes again. Several
 * people can append to one case; who replaces a part says what it was made from.
 */
public final class Cases {
    /** Ids of what a person said of an observation begin so. */
    private static final String SAID_OF = "said-";

    private final Archive archive;
    private final HeldFrames frames;
    private final SiteRules site;
    private final Clock clock;

    public Cases(Archive archive, SiteRules site, Clock clock) {
        this.archive = archive;
        this.frames = new HeldFrames(archive);
        this.site = site;
        this.clock = clock;
    }

    /** What the site has set. */
    public SiteRules site() {
        return site;
    }

    /**
     * A case as it stands.
     *
     * @param received when each event that was appended came in, by our clock and the event's id
     */
    public record Held(GrowingCase growing, Map<String, Instant> received) {
        public Held {
            received = Map.copyOf(received);
        }

        public CaseDocument document() {
            return growing.document();
        }
    }

    /**
     * What an append came to.
     *
     * @param appended ids that are new
     * @param known ids that were there before with the same content
     */
    public record Appended(List<String> appended, List<String> known, String tag) {
        public Appended {
            appended = List.copyOf(appended);
            known = List.copyOf(known);
        }
    }

    /**
     * A case as it stands.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public Held held(String caseId) {
        StoredCase opened = archive.store()
                .storedCase(caseId)
                .orElseThrow(() -> new Refusal(new Problem.NotHeld(
                        "/caseId", "No case with this identifier is held here.", "Send it with POST /v1/cases.")));
        GrowingCase growing = GrowingCase.opened(opened.document());
        Map<String, Instant> received = new HashMap<>();
        for (CaseItem item : archive.store().caseItems(caseId)) {
            growing = growing.with(item.part(), item.content());
            if (item.part() == CasePart.EVENTS) {
                received.put(item.id(), item.received());
            }
        }
        return new Held(growing, received);
    }

    /**
     * The cases of a session, in the order they were opened.
     *
     * @throws Refusal {@link Problem.NotHeld} where no case names it
     */
    public List<Held> session(String session) {
        List<String> ids = archive.store().casesOf(session);
        if (ids.isEmpty()) {
            throw new Refusal(new Problem.NotHeld(
                    "",
                    "No case held here names this session.",
                    "Give the session's name in each case's session field."));
        }
        return ids.stream().map(this::held).toList();
    }

    /** What a case says, held against the site's lists, the clock, and its order against the frame. */
    public void check(CaseDocument document) {
        CaseCheck.check(document, site, now());
        header(document.frame()).ifPresent(frame -> OrderCheck.require(document, frame));
    }

    /** What the log of a case is told beside. */
    public LogJson.Facts logFacts(Held held) {
        CaseDocument document = held.document();
        return new LogJson.Facts(
                site,
                patientKnown(document),
                imageSide(document),
                AcquisitionTime.all(document, this::header),
                held.received(),
                now());
    }

    /**
     * Whether somebody may sign.
     *
     * @throws Refusal {@link Problem.Incomplete}
     */
    public void requireSignable(CaseDocument document) {
        SigningCheck.require(
                document,
                new SigningCheck.Beside(site, patientKnown(document), imageSide(document), linked(document), now()));
    }

    /** What all cases of the session have given, this one as it is given here. */
    Optional<SessionDose> sessionDose(CaseDocument document, OffsetDateTime time) {
        return SessionDose.of(linked(document), site, time);
    }

    /** The cases of the same session as they stand, this one as it is given. */
    private List<CaseDocument> linked(CaseDocument document) {
        List<CaseDocument> linked = new ArrayList<>();
        linked.add(document);
        document.bedside().session().stream()
                .flatMap(session -> archive.store().casesOf(session).stream())
                .filter(id -> !document.caseId().equals(Optional.of(id)))
                .forEach(id -> linked.add(signedOrHeld(id)));
        return linked;
    }

    /** What was signed last, which an amendment may have mended; else the case as it stands. */
    private CaseDocument signedOrHeld(String caseId) {
        return Standing.newestSigned(archive.store().revisions(caseId))
                .map(signed -> CaseJson.read(signed.document().getBytes(StandardCharsets.UTF_8), Door.HTTP))
                .orElseGet(() -> held(caseId).document());
    }

    private boolean patientKnown(CaseDocument document) {
        return header(document.frame()).filter(ImageIdentity::namesPatient).isPresent();
    }

    private Optional<Laterality> imageSide(CaseDocument document) {
        return header(document.frame()).flatMap(ImageIdentity::side);
    }

    private Optional<DataSet> header(FrameRef named) {
        return named instanceof FrameRef.Held frame
                        && archive.store().object(frame.sopInstanceUid()).isPresent()
                ? Optional.of(frames.object(frame.sopInstanceUid()).header())
                : Optional.empty();
    }

    /** By our clock. */
    public OffsetDateTime now() {
        return clock.instant().atZone(clock.getZone()).toOffsetDateTime();
    }

    /** What an open case does not say yet, in words. */
    public List<Lack> lacks(CaseDocument document) {
        return Lack.of(document, frames::geometry);
    }

    /**
     * Appends the items of a request, all or none.
     *
     * @param ifMatch entity tag that the sender has seen; needed to replace a part
     * @throws Refusal that points into the request
     */
    public Appended append(String caseId, CasePart part, JsonNode body, Optional<String> ifMatch) {
        return archive.store().write(writing -> {
            Held before = held(caseId);
            List<CaseItem> items = archive.store().caseItems(caseId);
            List<CaseItem> fresh = new ArrayList<>();
            List<String> known = new ArrayList<>();
            List<GrowingCase.Item> sent = before.growing().items(part, body);
            for (int i = 0; i < sent.size(); i++) {
                String content = sent.get(i).content();
                String id = sent.get(i).id().orElseGet(() -> freeId("", items, part));
                Optional<String> there = there(before.growing(), items, part, sent.get(i));
                if (there.isEmpty()) {
                    fresh.add(new CaseItem(caseId, part, id, content, clock.instant()));
                } else if (there.get().equals(content)) {
                    known.add(id);
                } else {
                    throw otherContent(body.isArray() ? "/" + i : "");
                }
            }
            if (fresh.isEmpty()) {
                return new Appended(List.of(), known, before.growing().tag());
            }
            requireOpen(caseId, before.document());
            if (!part.list()) {
                requireMatch(ifMatch, before.growing().tag());
            }
            GrowingCase after = before.growing();
            for (CaseItem item : fresh) {
                after = after.with(part, item.content());
            }
            checkGrown(before, after, part, body.isArray());
            fresh.forEach(writing::add);
            return new Appended(fresh.stream().map(CaseItem::id).toList(), known, after.tag());
        });
    }

    /**
     * Says of an observation that stands what its marks do not, such as whether the point marked as tip is the tip.
     *
     * @param ifMatch entity tag that the sender has seen
     * @throws Refusal that points into the request
     */
    public Appended say(String caseId, String observation, JsonNode body, Optional<String> ifMatch) {
        return archive.store().write(writing -> {
            Held before = held(caseId);
            GrowingCase growing = before.growing();
            ObjectNode whole = growing.said(observation, body);
            String content = growing.items(CasePart.OBSERVATIONS, whole).get(0).content();
            GrowingCase after = growing.with(CasePart.OBSERVATIONS, content);
            if (after.canonical().equals(growing.canonical())) {
                return new Appended(List.of(), List.of(observation), growing.tag());
            }
            requireOpen(caseId, before.document());
            requireMatch(ifMatch, growing.tag());
            checkGrown(before, after, CasePart.OBSERVATIONS, false);
            String id = freeId(SAID_OF, archive.store().caseItems(caseId), CasePart.OBSERVATIONS);
            writing.add(new CaseItem(caseId, CasePart.OBSERVATIONS, id, content, clock.instant()));
            return new Appended(List.of(observation), List.of(), after.tag());
        });
    }

    /**
     * What was drawn in other software, for a case.
     *
     * @param prefix of the ids it is kept under
     * @param marks makes the new marks of the plan of those that stand
     * @param observations each with an id, in the place of those with the same ids
     */
    public record Drawn(String prefix, UnaryOperator<ObjectNode> marks, List<ObjectNode> observations) {
        public Drawn {
            observations = List.copyOf(observations);
        }
    }

    /**
     * Puts what was drawn into a case, all or nothing; what is there already is not put twice.
     *
     * @throws Refusal where the case is signed, or the marks cannot be those of its frames
     */
    public void place(String caseId, Drawn drawn) {
        archive.store().write(writing -> {
            Held before = held(caseId);
            GrowingCase after = before.growing();
            List<CaseItem> items = archive.store().caseItems(caseId);
            List<CaseItem> fresh = new ArrayList<>();
            Keeping keeping = new Keeping(drawn.prefix(), items, fresh);
            ObjectNode standing =
                    (ObjectNode) StrictJson.read(after.standing(CasePart.MARKS).getBytes(StandardCharsets.UTF_8));
            after = placed(after, CasePart.MARKS, drawn.marks().apply(standing), keeping);
            for (ObjectNode observation : drawn.observations()) {
                after = placed(after, CasePart.OBSERVATIONS, observation, keeping);
            }
            if (!fresh.isEmpty()) {
                requireOpen(caseId, before.document());
                CaseCheck.check(after.document(), site, notBefore(before));
                CaseInputs.check(after.document(), frames::geometry);
                fresh.forEach(writing::add);
            }
            return fresh.size();
        });
    }

    /** Where new items go: beside those of the case, under ids that begin so. */
    private record Keeping(String prefix, List<CaseItem> items, List<CaseItem> fresh) {}

    private GrowingCase placed(GrowingCase growing, CasePart part, ObjectNode sent, Keeping keeping) {
        String drawn = growing.items(part, sent).get(0).content();
        String content = part == CasePart.OBSERVATIONS ? growing.keepingWhatWasSaid(drawn) : drawn;
        GrowingCase next = growing.with(part, content);
        if (next.canonical().equals(growing.canonical())) {
            return growing;
        }
        List<CaseItem> all = Stream.concat(keeping.items().stream(), keeping.fresh().stream())
                .toList();
        String id = freeId(keeping.prefix(), all, part);
        keeping.fresh().add(new CaseItem(caseOf(growing), part, id, content, clock.instant()));
        return next;
    }

    private static String caseOf(GrowingCase growing) {
        return growing.document().caseId().orElseThrow();
    }

    /** Id of the last item that set a part; empty where it stands as the case was opened. */
    Optional<String> lastSet(String caseId, CasePart part) {
        return archive.store().caseItems(caseId).stream()
                .filter(item -> item.part() == part)
                .reduce((earlier, later) -> later)
                .map(CaseItem::id);
    }

    /** Whether somebody signed it, or a record of it. */
    boolean isSigned(String caseId) {
        return held(caseId).document().signature().isPresent()
                || archive.store().revisions(caseId).stream()
                        .anyMatch(revision -> revision.state() != StoredRevision.State.DRAFT);
    }

    /** What is held under the id of an item; for a part that stands once also what stands, if it is the very same. */
    private static Optional<String> there(
            GrowingCase before, List<CaseItem> items, CasePart part, GrowingCase.Item item) {
        if (part.list()) {
            boolean sentBefore = items.stream()
                    .anyMatch(held -> held.part() == part && held.content().equals(item.content()));
            return sentBefore
                    ? Optional.of(item.content())
                    : before.held(part, item.id().orElseThrow());
        }
        Optional<String> named = items.stream()
                .filter(held -> held.part() == part
                        && item.id().filter(held.id()::equals).isPresent())
                .map(CaseItem::content)
                .findFirst();
        return named.or(() -> Optional.of(before.standing(part)).filter(item.content()::equals));
    }

    private static Refusal otherContent(String at) {
        return new Refusal(new Problem.Conflict(
                at + "/id",
                "Another content was sent with this id before; the first one stands.",
                "Send what is new with a new id; to change an entry, send one that corrects it."));
    }

    /** For a part whose sender gave no id: one that no earlier setting of it has. */
    private static String freeId(String prefix, List<CaseItem> items, CasePart part) {
        Set<String> taken = items.stream()
                .filter(item -> item.part() == part)
                .map(CaseItem::id)
                .collect(Collectors.toSet());
        int number = 1;
        while (taken.contains(prefix + part.field() + "-" + number)) {
            number++;
        }
        return prefix + part.field() + "-" + number;
    }

    private void checkGrown(Held before, GrowingCase after, CasePart part, boolean array) {
        try {
            CaseDocument document = after.document();
            CaseCheck.check(document, site, notBefore(before));
            if (part == CasePart.MARKS
                    || part == CasePart.FRAME
                    || part == CasePart.PROBE
                    || part == CasePart.OBSERVATIONS) {
                CaseInputs.check(document, frames::geometry);
            }
        } catch (Refusal refusal) {
            throw GrowingCase.inRequest(refusal, part, before.growing().count(part), array);
        }
    }

    /** A clock that was set back must not make an event of the future out of what was taken before. */
    private OffsetDateTime notBefore(Held before) {
        OffsetDateTime now = now();
        return before.received().values().stream()
                .max(Comparator.naturalOrder())
                .map(last -> last.atZone(clock.getZone()).toOffsetDateTime())
                .filter(now::isBefore)
                .orElse(now);
    }

    private void requireOpen(String caseId, CaseDocument document) {
        if (document.signature().isPresent() || isSigned(caseId)) {
            throw new Refusal(new Problem.Conflict(
                    "",
                    "The case is signed, and nothing is added to what somebody signed.",
                    "Amend the record, with the reason."));
        }
    }

    private static void requireMatch(Optional<String> ifMatch, String tag) {
        String sent = ifMatch.orElseThrow(() -> new Refusal(new Problem.PreconditionRequired("")));
        boolean matches = sent.strip().equals("*")
                || Arrays.stream(sent.split(",")).map(String::strip).anyMatch(tag::equals);
        if (!matches) {
            throw new Refusal(new Problem.PreconditionFailed(""));
        }
    }
}
