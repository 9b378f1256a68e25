// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** What is known about complications. None is only ever said with the time until which somebody looked, and who. */
public sealed interface Complications {
    /** At least one was noticed; the events say which. */
    record Noticed(List<LoggedEvent> events) implements Complications {
        public Noticed {
            events = List.copyOf(events);
        }
    }

    /** Somebody looked until a time and noticed none. */
    record NoneNoticed(OffsetDateTime until, String by) implements Complications {
        private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

        /**
         * Checks that somebody looked.
         *
         * @throws Refusal {@link Problem.MissingField} without a name
         */
        public NoneNoticed {
            if (by.isBlank()) {
                throw new Refusal(new Problem.MissingField("/lookedBy", "Say who looked."));
            }
        }

        /** In words. */
        public String text() {
            return "None noticed until " + MINUTE.format(until) + " by " + by + ".";
        }
    }

    /** Nobody said anything. */
    record NotRecorded() implements Complications {}

    /** From the log; what was noticed outweighs every statement that nothing was, and the last of those counts. */
    static Complications of(ProcedureLog log) {
        List<LoggedEvent> noticed = log.standing().stream()
                .filter(event -> event.what() instanceof Happening.Complication)
                .toList();
        if (!noticed.isEmpty()) {
            return new Noticed(noticed);
        }
        Complications said = new NotRecorded();
        for (LoggedEvent event : log.standing()) {
            if (event.what() instanceof Happening.LookedForComplications looked) {
                said = new NoneNoticed(event.happenedAt(), looked.by());
            }
        }
        return said;
    }
}
