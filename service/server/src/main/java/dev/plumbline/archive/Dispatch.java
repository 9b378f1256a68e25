// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A record on its way to another archive: one signed revision, one destination.
 *
 * @param parts its objects in the order they are sent, images first, the report last
 * @param released when an operator gave it up; nobody tries or waits any more, what is kept here stays
 * @param uncomposed while its companions are not composed, why not; blank before that was tried. Nothing is sent until then
 */
public record Dispatch(
        long id,
        Addressed addressed,
        Instant created,
        Progress progress,
        Optional<Instant> released,
        Optional<String> uncomposed,
        List<Part> parts) {
    public Dispatch {
        parts = List.copyOf(parts);
    }

    /** The same with its parts and its progress as they are now. */
    public Dispatch now(List<Part> parts, Progress progress) {
        return new Dispatch(id, addressed, created, progress, released, uncomposed, parts);
    }

    /** Where to, and what. */
    public record Addressed(String destination, String caseId, int revision, String studyInstanceUid) {}

    /**
     * How often it was tried.
     *
     * @param nextAttempt for people to read; the dispatcher counts on another clock
     */
    public record Progress(int attempts, Optional<Instant> nextAttempt) {}

    /** Where a record stands on its way. Each is further than the one before, but for the last. */
    public enum State {
        /** Durable here, to be sent. */
        QUEUED("queued"),
        /** The archive answered that it has it. */
        SENT("sent"),
        /** Read back and equal, or committed to by the archive. */
        PROVED("proved"),
        /** Refused for good, until a person acts. */
        HELD("held");

        private final String word;

        State(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** How an archive took an object that it says it has. */
    public enum Taken {
        /** Without a word. */
        AS_SENT,
        /** It altered something, as it said or as was seen when the object was read back. */
        ALTERED,
        /** It said that an object with this UID was there before. */
        BEFORE
    }

    /**
     * What was asked of an archive to prove an object.
     *
     * @param transactionUid of the last storage commitment that was asked for, if one was
     * @param times how often commitment was asked for
     * @param last when that was
     * @param settled nothing more is asked by itself: every way was tried, or what the archive altered is known
     */
    public record Asked(Optional<String> transactionUid, int times, Optional<Instant> last, boolean settled) {
        public static final Asked NOTHING = new Asked(Optional.empty(), 0, Optional.empty(), false);

        /** In a new transaction, of which nobody has been told yet. */
        public Asked in(String transaction) {
            return new Asked(Optional.of(transaction), times, last, settled);
        }

        /** Once more. */
        public Asked again(Instant when) {
            return new Asked(transactionUid, times + 1, Optional.of(when), settled);
        }

        /** For the last time. */
        public Asked over() {
            return new Asked(transactionUid, times, last, true);
        }

        /** As if it had never been, but for the transaction in which a report may still come. */
        public Asked anew() {
            return new Asked(transactionUid, 0, Optional.empty(), false);
        }
    }

    /**
     * One object of it.
     *
     * @param changed when its state or answer last changed
     */
    public record Part(
            int position,
            String sopInstanceUid,
            State state,
            Answer answer,
            Instant changed,
            Taken taken,
            Asked asked) {
        /** The same part in another state. */
        public Part now(State next, Answer why, Instant when) {
            return new Part(position, sopInstanceUid, next, why, when, taken, asked);
        }

        /** The same part, taken so. */
        public Part with(Taken how) {
            return new Part(position, sopInstanceUid, state, answer, changed, how, asked);
        }

        /** The same part, asked after so. */
        public Part with(Asked what) {
            return new Part(position, sopInstanceUid, state, answer, changed, taken, what);
        }

        /** Whether the archive has it as it altered it. */
        public boolean isAltered() {
            return taken == Taken.ALTERED && (state == State.SENT || state == State.PROVED);
        }

        /** Whether the archive says it has it and every way to prove that was tried. */
        public boolean isUnconfirmed() {
            return state == State.SENT && asked.settled() && taken != Taken.ALTERED;
        }
    }

    /**
     * What the archive last said, in its own words.
     *
     * @param code status of DIMSE in hexadecimal, or of HTTP; "" before there is any
     */
    public record Answer(String code, String words) {
        public static final Answer NONE = new Answer("", "");
    }

    /** Of all parts together: held where one is, else the least of them. */
    public State state() {
        return stateOf(parts);
    }

    static State stateOf(List<Part> parts) {
        if (parts.stream().anyMatch(part -> part.state() == State.HELD)) {
            return State.HELD;
        }
        return parts.stream().map(Part::state).min(Comparator.naturalOrder()).orElse(State.PROVED);
    }

    /** What was last heard of it: of the part that holds it up, or else of the one that changed last. */
    public Answer lastAnswer() {
        Optional<Part> held =
                parts.stream().filter(part -> part.state() == State.HELD).findFirst();
        Optional<Part> heard = held.or(() -> parts.stream()
                .filter(part -> !part.answer().equals(Answer.NONE))
                .max(Comparator.comparing(Part::changed)));
        return heard.map(Part::answer).orElse(Answer.NONE);
    }

    /** Whether the archive altered one of its objects. */
    public boolean isAltered() {
        return parts.stream().anyMatch(Part::isAltered);
    }

    /** Whether one of its objects is sent and can be proved by no way that was tried. */
    public boolean isUnconfirmed() {
        return parts.stream().anyMatch(Part::isUnconfirmed);
    }

    /** How many dispatches of a destination stand in a state. */
    public record Count(String destination, State state, boolean released, int dispatches) {}
}
