// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.Progress;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatch.Taken;
import dev.plumbline.archive.Dispatches;
import dev.plumbline.archive.Dispatches.Waiting;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.dimse.Services;
import dev.plumbline.problem.Refusal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Carries the records that wait for one destination: those of one study in their order, a study that cannot go on holding
 * up no other, nor does a record that the archive cannot take. Waits are counted on a clock that nobody sets; after a start
 * everything is due.
 */
final class Courier {
    private static final Logger LOG = LoggerFactory.getLogger(Courier.class);

    /** What a person has to know of an object whose file cannot be sent or compared with. */
    static final String DAMAGED = "The object's own file here is damaged; run doctor.";

    /** So many at most before it is looked again what came in meanwhile. Source: design choice. */
    private static final int MOST_AT_ONCE = 500;

    private final Destination destination;
    private final Carrier carrier;
    private final Archive archive;
    private final Dispatches dispatches;
    private final Clock clock;

    private final Rests sending;
    private final Prover prover;

    /** What the courier may not make itself. */
    record Times(Clock clock, LongSupplier nanoTime, Backoff backoff, Supplier<String> uids) {}

    Courier(Destination destination, Archive archive, Times times) {
        this.destination = destination;
        this.carrier = destination.carrier().get();
        this.archive = archive;
        this.dispatches = archive.store().dispatches();
        this.clock = times.clock();
        this.sending = new Rests(times.nanoTime(), times.backoff());
        this.prover = new Prover(carrier, new Ground(), times);
    }

    /** What the prover stands on. */
    private final class Ground implements Prover.Ground {
        private final Services reports = new Inbox(archive, clock);

        @Override
        public HeldObject held(Part part) {
            return Courier.this.held(part);
        }

        @Override
        public Dispatch keep(Dispatch before, List<Part> parts, Optional<Instant> next) {
            return Courier.this.keep(before, parts, next, 0);
        }

        @Override
        public Services reports() {
            return reports;
        }
    }

    /**
     * Does what is due.
     *
     * @return how long until something may be due again; zero where there is more to do at once
     */
    Duration round() {
        List<Waiting> queued = dispatches.waiting(destination.name(), State.QUEUED);
        sending.keep(ids(queued));
        boolean moved = sendAll(queued);
        List<Waiting> sent = destination.provable() ? dispatches.waiting(destination.name(), State.SENT) : List.of();
        Set<Long> unproved = ids(queued);
        unproved.addAll(ids(sent));
        prover.rests().keep(unproved);
        moved |= proveAll(sent);
        return moved ? Duration.ZERO : untilDue(queued, sent);
    }

    private static Set<Long> ids(List<Waiting> waiting) {
        return waiting.stream().map(Waiting::id).collect(Collectors.toCollection(HashSet::new));
    }

    /** Those that failed least first, so that the next attempt is with another record than the last one that failed. */
    private boolean sendAll(List<Waiting> queued) {
        Map<String, List<Waiting>> studies = new LinkedHashMap<>();
        queued.forEach(each -> studies.computeIfAbsent(each.studyInstanceUid(), study -> new ArrayList<>())
                .add(each));
        List<List<Waiting>> inTurn = new ArrayList<>(studies.values());
        inTurn.sort(
                Comparator.comparingInt(study -> sending.failures(study.get(0).id())));
        boolean moved = false;
        int attempts = 0;
        for (List<Waiting> study : inTurn) {
            boolean goesOn = true;
            for (int i = 0; goesOn && i < study.size() && attempts < MOST_AT_ONCE; i++) {
                boolean due = isDue(sending, study.get(i));
                goesOn = due && send(study.get(i));
                moved |= goesOn;
                attempts += due ? 1 : 0;
            }
        }
        return moved;
    }

    private boolean proveAll(List<Waiting> sent) {
        boolean moved = false;
        int looks = 0;
        List<Waiting> inTurn = new ArrayList<>(sent);
        inTurn.sort(Comparator.comparingInt(each -> prover.rests().failures(each.id())));
        for (Waiting each : inTurn) {
            if (looks < MOST_AT_ONCE && untilProving().isZero() && isDue(prover.rests(), each)) {
                moved |= prove(each);
                looks++;
            }
        }
        return moved;
    }

    void rest() {
        carrier.rest();
    }

    /** An operator wants it now: neither the record nor its destination rests any longer. */
    void hurry(long id) {
        if (dispatches.get(id).filter(this::isOurs).isEmpty()) {
            return;
        }
        for (Rests rests : List.of(sending, prover.rests())) {
            rests.forget(id);
            rests.allWell();
        }
    }

    private boolean isOurs(Dispatch dispatch) {
        return dispatch.addressed().destination().equals(destination.name());
    }

    private static boolean isDue(Rests rests, Waiting waiting) {
        return rests.left(waiting.id()).isZero();
    }

    /** An archive that takes nothing just now is not asked either: one probe is enough. */
    private Duration untilProving() {
        return longer(prover.rests().leftOfAll(), sending.leftOfAll());
    }

    private static Duration longer(Duration one, Duration other) {
        return one.compareTo(other) > 0 ? one : other;
    }

    /** Until the first of them is due that is not behind another of its study; a new record wakes the courier in any case. */
    private Duration untilDue(List<Waiting> queued, List<Waiting> sent) {
        Set<String> studies = new HashSet<>();
        Stream<Duration> toSend = queued.stream()
                .filter(each -> studies.add(each.studyInstanceUid()))
                .map(each -> sending.left(each.id()));
        Stream<Duration> toProve =
                sent.stream().map(each -> longer(prover.rests().left(each.id()), untilProving()));
        return Stream.of(toSend, toProve, Stream.of(Backoff.LONGEST))
                .flatMap(each -> each)
                .min(Comparator.naturalOrder())
                .orElseThrow();
    }

    /** Somebody may have given it up since it was looked who waits. */
    private Optional<Dispatch> stillOnItsWay(Waiting waiting) {
        return dispatches
                .get(waiting.id())
                .filter(dispatch -> dispatch.released().isEmpty());
    }

    /** Whether it is on its way further now. */
    private boolean send(Waiting waiting) {
        return stillOnItsWay(waiting)
                .map(this::send)
                .filter(now -> now.state() != State.QUEUED)
                .isPresent();
    }

    /** What was looked for in vain is sent again, but not at once; what the archive itself reports as missing is. */
    private Dispatch waitingAgain(Dispatch looked) {
        if (looked.state() == State.QUEUED && prover.rests().failures(looked.id()) > 0) {
            sending.pause(looked.id(), prover.rests().left(looked.id()));
        }
        return looked;
    }

    private boolean prove(Waiting waiting) {
        return stillOnItsWay(waiting)
                .map(prover::prove)
                .map(this::waitingAgain)
                .filter(now -> now.state() != State.SENT)
                .isPresent();
    }

    private Dispatch send(Dispatch dispatch) {
        List<Part> parts = new ArrayList<>(dispatch.parts());
        Optional<Instant> next = Optional.empty();
        for (int i = 0; i < parts.size() && next.isEmpty(); i++) {
            if (parts.get(i).state() == State.QUEUED) {
                Outcome outcome = attempt(parts.get(i));
                parts.set(
                        i,
                        parts.get(i)
                                .now(state(outcome.verdict()), outcome.answer(), clock.instant())
                                .with(taken(outcome.verdict())));
                if (!outcome.verdict().isSent()) {
                    next = Optional.of(later(dispatch.id(), outcome));
                }
            }
        }
        if (next.isEmpty()) {
            sending.forget(dispatch.id());
            sending.allWell();
            prover.sentAgain(dispatch.id());
        }
        return keep(dispatch, parts, next, 1);
    }

    private Outcome attempt(Part part) {
        try {
            return carrier.send(held(part));
        } catch (StoreDamaged e) {
            LOG.error("An object to be sent cannot be read.", e);
            return Outcome.of(Verdict.HELD, "", DAMAGED);
        } catch (RuntimeException e) {
            LOG.error("An object could not be sent.", e);
            return Outcome.of(Verdict.RECORD_LATER, "", "Plumbline itself failed; its log says how.");
        }
    }

    private HeldObject held(Part part) {
        try {
            HeldObject object = archive.held(part.sopInstanceUid());
            archive.requireUnaltered(object);
            return object;
        } catch (Refusal e) {
            throw new IllegalStateException("A queued object is not in the index.", e);
        }
    }

    private static State state(Verdict verdict) {
        return switch (verdict) {
            case SENT, SENT_ALTERED, SENT_BEFORE -> State.SENT;
            case DESTINATION_LATER, RECORD_LATER -> State.QUEUED;
            case HELD -> State.HELD;
        };
    }

    private static Taken taken(Verdict verdict) {
        return switch (verdict) {
            case SENT_ALTERED -> Taken.ALTERED;
            case SENT_BEFORE -> Taken.BEFORE;
            default -> Taken.AS_SENT;
        };
    }

    /** When it is tried again; at once is never, and what is held waits for a person. */
    private Instant later(long id, Outcome outcome) {
        return switch (outcome.verdict()) {
            case DESTINATION_LATER -> {
                carrier.rest();
                yield clock.instant().plus(sending.allFailed(id, outcome.notBefore()));
            }
            case RECORD_LATER -> clock.instant().plus(sending.failed(id, outcome.notBefore()));
            default -> clock.instant();
        };
    }

    /**
     * A report may have come in, or an operator done something, meanwhile: what others made of a part stands.
     */
    private Dispatch keep(Dispatch before, List<Part> parts, Optional<Instant> next, int attempts) {
        return told(dispatches.change(before.id(), stored -> {
            List<Part> merged = new ArrayList<>(parts);
            for (int i = 0; i < parts.size(); i++) {
                if (stored.parts().get(i).state() != before.parts().get(i).state()) {
                    merged.set(i, stored.parts().get(i));
                }
            }
            return after(before, merged, next, attempts);
        }));
    }

    private static Dispatch after(Dispatch before, List<Part> parts, Optional<Instant> next, int attempts) {
        return before.now(
                parts, new Progress(before.progress().attempts() + attempts, next.filter(time -> waits(parts))));
    }

    private static Dispatch told(Dispatch now) {
        if (now.state() == State.HELD) {
            LOG.warn(
                    "Dispatch {} is held: {} {}",
                    now.id(),
                    now.lastAnswer().code(),
                    now.lastAnswer().words());
        }
        return now;
    }

    private static boolean waits(List<Part> parts) {
        return parts.stream().noneMatch(part -> part.state() == State.HELD);
    }
}
