// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The set-up checks of a site. Each is answered by itself; there is no way to answer all at once, and what nobody answered is
 * not recorded, which is not yes.
 *
 * @param stopMomentHolds how long a stop moment holds before a puncture, above 0
 */
public record SetUpChecks(List<Check> checks, Duration stopMomentHolds) {
    /** The word for a check that nobody answered. */
    public static final String NOT_RECORDED = "notRecorded";

    public SetUpChecks {
        checks = List.copyOf(checks);
        if (stopMomentHolds.isNegative() || stopMomentHolds.isZero()) {
            throw new IllegalArgumentException("A stop moment holds for some time.");
        }
        Set<String> ids = new HashSet<>();
        for (Check check : checks) {
            if (!ids.add(check.id())) {
                throw new IllegalArgumentException("Two checks are called " + check.id() + ".");
            }
        }
    }

    /**
     * One check in the words of the site.
     *
     * @param code in the private coding scheme, where it has one
     */
    public record Check(String id, Optional<String> code, String text) {}

    /** What can be said to a check. */
    public enum Answer {
        DONE("done"),
        NOT_DONE("notDone"),
        NOT_APPLICABLE("notApplicable");

        private final String word;

        Answer(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** An answer with its person and time. */
    public record Answered(String checkId, Answer answer, Optional<String> reason, String by, OffsetDateTime at) {
        /**
         * Checks that an omission has its reason.
         *
         * @throws Refusal {@link Problem.MissingField} for not done without a reason, or without a name
         */
        public Answered {
            if (answer == Answer.NOT_DONE
                    && reason.filter(text -> !text.isBlank()).isEmpty()) {
                throw new Refusal(new Problem.MissingField("/reason", "Say why it was not done."));
            }
            if (by.isBlank()) {
                throw new Refusal(new Problem.MissingField("/by", "Say who answers."));
            }
        }
    }

    /** A check with its last answer. */
    public record Line(Check check, Optional<Answered> answered) {
        public String word() {
            return answered.map(a -> a.answer().word()).orElse(NOT_RECORDED);
        }
    }

    /**
     * Every check with its last answer, in the site's order.
     *
     * @throws Refusal {@link Problem.InvalidValue} for an answer to no check of the site
     */
    public List<Line> lines(List<Answered> answers) {
        for (int at = 0; at < answers.size(); at++) {
            String id = answers.get(at).checkId();
            if (checks.stream().noneMatch(check -> check.id().equals(id))) {
                throw new Refusal(new Problem.InvalidValue(
                        "/" + at + "/checkId",
                        "The site has no such check.",
                        "Give one of "
                                + String.join(
                                        ", ", checks.stream().map(Check::id).toList()) + "."));
            }
        }
        return checks.stream()
                .map(check -> new Line(
                        check,
                        answers.stream()
                                .filter(a -> a.checkId().equals(check.id()))
                                .reduce((earlier, later) -> later)))
                .toList();
    }
}
