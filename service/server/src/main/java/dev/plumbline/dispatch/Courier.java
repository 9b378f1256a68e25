// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.Progress;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatches;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.problem.Refusal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Carries the records that wait for one destination: those of one study in their order, a study that cannot go on holding
 * up no other. Waits are counted on a clock that nobody sets; after a start everything is due.
 */
final class Courier {
    private static final Logger LOG = LoggerFactory.getLogger(Courier.class);
    private static final int LOOKED_AT = 500;
    private static final String DAMAGED = "The object's own file here is damaged; run doctor.";

    private final Destination destination;
    private final Carrier carrier;
    private final Archive archive;
    private final Dispatches dispatches;
    private final Clock clock;
    private final LongSupplier nanoTime;
    private final Backoff backoff;
    private final Supplier<String> uids;

    private final Map<Long, Rest> resting = new HashMap<>();
    private Rest destinationRest = Rest.NONE;

    /** What the courier may not make itself. */
    record Times(Clock clock, LongSupplier nanoTime, Backoff backoff, Supplier<String> uids) {}

    /** Failures in a row, and until when nothing is tried. */
    private record Rest(int failures, long until) {
        static final Rest NONE = new Rest(0, Long.MIN_VALUE);
    }

    Courier(Destination destination, Archive archive, Times times) {
        this.destination = destination;
        this.carrier = destination.carrier().get();
        this.archive = archive;
        this.dispatches = archive.store().dispatches();
        this.clock = times.clock();
        this.nanoTime = times.nanoTime();
        this.backoff = times.backoff();
        this.uids = times.uids();
    }

    /**
     * Does what is due.
     *
     * @return how long until something may be due again; zero where there is more to do at once
     */
    Duration round() {
        long began = nanoTime.getAsLong();
        if (isResting(destinationRest)) {
            return untilDue(began);
        }
        Set<String> heldUp = new HashSet<>();
        boolean moved = false;
        for (Dispatch dispatch : dispatches.waiting(destination.name(), State.QUEUED, LOOKED_AT + resting.size())) {
            boolean first = heldUp.add(dispatch.addressed().studyInstanceUid());
            if (first && isDue(dispatch) && !isResting(destinationRest)) {
                Dispatch now = send(dispatch);
                moved |= now.state() != State.QUEUED;
                if (now.state() != State.QUEUED) {
                    heldUp.remove(dispatch.addressed().studyInstanceUid());
                }
            }
        }
        if (!isResting(destinationRest)) {
            moved |= proveAll();
        }
        return moved ? Duration.ZERO : untilDue(began);
    }

    private boolean proveAll() {
        boolean moved = false;
        for (Dispatch dispatch : dispatches.waiting(destination.name(), State.SENT, LOOKED_AT + resting.size())) {
            if (isDue(dispatch) && !isResting(destinationRest)) {
                moved |= prove(dispatch).state() != State.SENT;
            }
        }
        return moved;
    }

    void rest() {
        carrier.rest();
    }

    /** An operator wants it now: neither the record nor its destination rests any longer. */
    void hurry(long id) {
        resting.remove(id);
        destinationRest = Rest.NONE;
    }

    private boolean isDue(Dispatch dispatch) {
        return !isResting(resting.getOrDefault(dispatch.id(), Rest.NONE));
    }

    private boolean isResting(Rest rest) {
        return rest.failures() > 0 && rest.until() - nanoTime.getAsLong() > 0;
    }

    /**
     * At most what the shortest rest leaves; a new record wakes the courier in any case. A rest that was over before the
     * round began belongs to a record that is behind another of its study, or that a person or a report has ended: waiting
     * for it would be no wait at all.
     */
    private Duration untilDue(long began) {
        long now = nanoTime.getAsLong();
        long shortest = Backoff.LONGEST.toNanos();
        if (isResting(destinationRest)) {
            return Duration.ofNanos(destinationRest.until() - now);
        }
        for (Rest rest : resting.values()) {
            if (rest.until() - began > 0) {
                shortest = Math.min(shortest, Math.max(0, rest.until() - now));
            }
        }
        return Duration.ofNanos(shortest);
    }

    private Dispatch send(Dispatch dispatch) {
        List<Part> parts = new ArrayList<>(dispatch.parts());
        Optional<Instant> next = Optional.empty();
        for (int i = 0; i < parts.size() && next.isEmpty(); i++) {
            if (parts.get(i).state() == State.QUEUED) {
                Outcome outcome = attempt(parts.get(i));
                parts.set(i, parts.get(i).now(state(outcome.verdict()), outcome.answer(), clock.instant()));
                if (!outcome.verdict().isSent()) {
                    next = Optional.of(later(dispatch.id(), outcome));
                }
            }
        }
        if (next.isEmpty()) {
            resting.remove(dispatch.id());
            destinationRest = Rest.NONE;
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

    /** When it is tried again; at once is never, and what is held waits for a person. */
    private Instant later(long id, Outcome outcome) {
        if (outcome.verdict() == Verdict.HELD) {
            return clock.instant();
        }
        if (outcome.verdict() == Verdict.DESTINATION_LATER) {
            destinationRest = longer(destinationRest, outcome.notBefore());
            carrier.rest();
            return clock.instant().plusNanos(destinationRest.until() - nanoTime.getAsLong());
        }
        Rest rest = longer(resting.getOrDefault(id, Rest.NONE), outcome.notBefore());
        resting.put(id, rest);
        return clock.instant().plusNanos(rest.until() - nanoTime.getAsLong());
    }

    private Rest longer(Rest before, Optional<Duration> notBefore) {
        int failures = before.failures() + 1;
        Duration wait = backoff.after(failures);
        Duration least = notBefore.filter(asked -> asked.compareTo(wait) > 0).orElse(wait);
        return new Rest(failures, nanoTime.getAsLong() + least.toNanos());
    }

    private Dispatch prove(Dispatch dispatch) {
        List<Part> parts = new ArrayList<>(dispatch.parts());
        Rest before = resting.getOrDefault(dispatch.id(), Rest.NONE);
        Optional<Proof> asked = Optional.empty();
        Optional<Instant> next = Optional.empty();
        for (int i = 0; i < parts.size() && next.isEmpty(); i++) {
            if (parts.get(i).state() == State.SENT) {
                parts.set(i, withTransaction(parts.get(i)));
                keep(dispatch, parts, next, 0);
                Proof proof = look(parts.get(i), before);
                parts.set(i, proved(parts.get(i), proof));
                State state = parts.get(i).state();
                if (proof.finding() == Proof.Finding.ASKED) {
                    asked = Optional.of(proof);
                } else if (state == State.SENT || state == State.QUEUED) {
                    next = Optional.of(later(dispatch.id(), rest(proof)));
                }
            }
        }
        if (next.isEmpty() && asked.isPresent()) {
            next = Optional.of(later(dispatch.id(), rest(asked.get())));
        }
        if (next.isEmpty()) {
            resting.remove(dispatch.id());
        }
        return keep(dispatch, parts, next, 0);
    }

    /** A report may have come in, or an operator done something, meanwhile: what is proved stays proved. */
    private Dispatch keep(Dispatch before, List<Part> parts, Optional<Instant> next, int attempts) {
        dispatches.change(before.id(), stored -> {
            for (int i = 0; i < parts.size(); i++) {
                if (stored.parts().get(i).state() == State.PROVED) {
                    parts.set(i, stored.parts().get(i));
                }
            }
            return after(before, parts, next, attempts);
        });
        return told(after(before, parts, next, attempts));
    }

    private Part withTransaction(Part part) {
        return new Part(
                part.position(),
                part.sopInstanceUid(),
                part.state(),
                part.answer(),
                part.changed(),
                Optional.of(uids.get()));
    }

    private static Outcome rest(Proof proof) {
        Verdict verdict =
                proof.finding() == Proof.Finding.DESTINATION_LATER ? Verdict.DESTINATION_LATER : Verdict.RECORD_LATER;
        return new Outcome(verdict, proof.answer(), proof.notBefore());
    }

    private Proof look(Part part, Rest rest) {
        try {
            return carrier.prove(
                    new Carrier.Question(held(part), part.transactionUid().orElse(""), rest.failures()));
        } catch (StoreDamaged e) {
            LOG.error("An object to be proved cannot be read.", e);
            return Proof.of(Proof.Finding.DIFFERENT, DAMAGED);
        } catch (RuntimeException e) {
            LOG.error("An object could not be proved.", e);
            return Proof.of(Proof.Finding.LATER, "Plumbline itself failed; its log says how.");
        }
    }

    private Part proved(Part part, Proof proof) {
        State next = switch (proof.finding()) {
            case PROVED -> State.PROVED;
            case MISSING -> State.QUEUED;
            case DIFFERENT -> State.HELD;
            case ASKED, LATER, DESTINATION_LATER, NOT_OFFERED -> State.SENT;
        };
        // where no proof is to be had, what the archive said when it was sent stays the last word
        boolean keepsAnswer = proof.finding() == Proof.Finding.NOT_OFFERED;
        return part.now(next, keepsAnswer ? part.answer() : proof.answer(), clock.instant());
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
