// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatch.Taken;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.dimse.Services;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks whether what was sent is there. What it finds of one record, or of the ways to find out, holds up no sending; what
 * cannot be found out rests, so that an archive that offers no proof is not asked for ever.
 */
final class Prover {
    /** When an archive that offers no proof is asked again whether it does now. Source: design choice. */
    static final Duration NOT_OFFERED_FOR = Duration.ofHours(24);

    /** So many records in a row, and no other is asked. Source: design choice. */
    private static final int NOT_OFFERED_IN_A_ROW = 3;

    /** An archive may file what it took a little later; what it misses twice is sent again. Source: design choice. */
    private static final int MISSED_BEFORE_SENT_AGAIN = 2;

    private static final Logger LOG = LoggerFactory.getLogger(Prover.class);

    private final Carrier carrier;
    private final Ground ground;
    private final Courier.Times times;
    private final Rests rests;
    private int notOffered;

    /** What it stands on. */
    interface Ground {
        /** The object of a part, whose file is as it was. */
        HeldObject held(Part part);

        /** Keeps what became of a dispatch; how it stands then. */
        Dispatch keep(Dispatch before, List<Part> parts, Optional<Instant> next);

        /** Where reports on commitment go. */
        Services reports();
    }

    Prover(Carrier carrier, Ground ground, Courier.Times times) {
        this.carrier = carrier;
        this.ground = ground;
        this.times = times;
        this.rests = new Rests(times.nanoTime(), times.backoff());
    }

    Rests rests() {
        return rests;
    }

    /** After it was sent again it is looked for as late as the last time in vain. */
    void sentAgain(long id) {
        rests.again(id);
    }

    /** The dispatch as it stands then. */
    Dispatch prove(Dispatch dispatch) {
        Duration early = early(dispatch);
        if (!early.isZero()) {
            rests.pause(dispatch.id(), early);
            return dispatch;
        }
        return new Look(dispatch).done();
    }

    /** After a start: what was asked before it is not asked again before its time. */
    private Duration early(Dispatch dispatch) {
        if (rests.knows(dispatch.id())) {
            return Duration.ZERO;
        }
        Instant now = clock().instant();
        return dispatch.parts().stream()
                .filter(part -> part.state() == State.SENT && !part.asked().settled())
                .map(part -> CommitmentSchedule.left(
                        part.asked().times(), part.asked().last().orElse(now), now))
                .min(Duration::compareTo)
                .orElse(Duration.ZERO);
    }

    private Clock clock() {
        return times.clock();
    }

    /** One look at the objects of one dispatch. */
    private final class Look {
        private final Dispatch before;
        private final List<Part> parts;
        private Optional<Duration> patience = Optional.empty();
        private Optional<Duration> wait = Optional.empty();

        Look(Dispatch before) {
            this.before = before;
            this.parts = new ArrayList<>(before.parts());
        }

        Dispatch done() {
            for (int i = 0; i < parts.size() && wait.isEmpty(); i++) {
                if (parts.get(i).state() == State.SENT && !parts.get(i).asked().settled()) {
                    Proof proof = look(i);
                    parts.set(i, seen(parts.get(i), proof));
                }
            }
            Optional<Duration> next = wait.or(() -> patience.map(each -> rests.pause(before.id(), each)));
            if (next.isEmpty()) {
                rests.forget(before.id());
            }
            Dispatch now = ground.keep(
                    before, parts, next.map(each -> clock().instant().plus(each)));
            if (now.state() == State.PROVED) {
                rests.forget(now.id()); // a report was quicker
            }
            return now;
        }

        private Proof look(int i) {
            Part part = parts.get(i);
            try {
                return carrier.prove(new Carrier.Question(
                        ground.held(part), part.asked().times(), part.taken() != Taken.AS_SENT, asking(i)));
            } catch (StoreDamaged e) {
                LOG.error("An object to be proved cannot be read.", e);
                return Proof.of(Proof.Finding.DAMAGED, Courier.DAMAGED);
            } catch (RuntimeException e) {
                LOG.error("An object could not be proved.", e);
                return Proof.of(Proof.Finding.LATER, "Plumbline itself failed; its log says how.");
            }
        }

        private Carrier.Asking asking(int i) {
            return new Carrier.Asking() {
                @Override
                public String transaction() {
                    String uid = times.uids().get();
                    parts.set(i, parts.get(i).with(parts.get(i).asked().in(uid)));
                    ground.keep(before, parts, before.progress().nextAttempt());
                    return uid;
                }

                @Override
                public Services reports() {
                    return ground.reports();
                }
            };
        }

        private Part seen(Part part, Proof proof) {
            Instant now = clock().instant();
            return switch (proof.finding()) {
                case PROVED -> {
                    notOffered = 0;
                    rests.allWell();
                    yield part.now(State.PROVED, proof.answer(), now).with(Taken.AS_SENT);
                }
                case ASKED -> {
                    Part asked = part.now(State.SENT, proof.answer(), now)
                            .with(part.asked().again(now));
                    Duration its = CommitmentSchedule.after(asked.asked().times());
                    patience =
                            patience.filter(other -> other.compareTo(its) < 0).or(() -> Optional.of(its));
                    yield asked;
                }
                case MISSING -> {
                    wait = Optional.of(rests.failed(before.id(), proof.notBefore()));
                    boolean again = rests.failures(before.id()) >= MISSED_BEFORE_SENT_AGAIN;
                    yield part.now(again ? State.QUEUED : State.SENT, proof.answer(), now);
                }
                case DIFFERENT ->
                    part.taken() == Taken.BEFORE
                            ? part.now(State.HELD, proof.answer(), now)
                            : part.now(State.SENT, proof.answer(), now)
                                    .with(Taken.ALTERED)
                                    .with(part.asked().over());
                case DAMAGED -> part.now(State.HELD, proof.answer(), now);
                case UNCONFIRMED ->
                    part.now(State.SENT, proof.answer(), now).with(part.asked().over());
                case NOT_OFFERED -> {
                    wait = Optional.of(rests.pause(before.id(), NOT_OFFERED_FOR));
                    notOffered++;
                    if (notOffered >= NOT_OFFERED_IN_A_ROW) {
                        rests.pauseAll(NOT_OFFERED_FOR);
                    }
                    // what the archive said when it was sent stays the last word
                    yield part;
                }
                case LATER -> {
                    wait = Optional.of(rests.failed(before.id(), proof.notBefore()));
                    yield part.now(State.SENT, proof.answer(), now);
                }
                case DESTINATION_LATER -> {
                    carrier.rest();
                    wait = Optional.of(rests.allFailed(before.id(), proof.notBefore()));
                    yield part.now(State.SENT, proof.answer(), now);
                }
            };
        }
    }
}
