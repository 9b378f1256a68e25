// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.intake.ForeignMark.Coded;
import dev.plumbline.intake.ForeignMark.Label;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Hazard;
import java.util.List;
import java.util.Optional;

/**
 * A site's rules for what marks mean: the first rule that a mark meets decides. A mark that meets none is listed, never
 * guessed.
 *
 * @param rules in the order they are tried
 * @param opens the approach of a case that marks open, where a site does one only; else a person says it, as marks do not
 *     tell
 */
public record MarkRules(List<Rule> rules, Optional<Approach> opens) {
    public MarkRules {
        rules = List.copyOf(rules);
    }

    /**
     * One rule.
     *
     * @param label matches a label as a whole, of any kind
     * @param code is one of a label's codes
     * @param kind of a hazard; {@code OTHER} where the rule does not say
     */
    public record Rule(MarkMeaning meaning, Optional<LabelPattern> label, Optional<Coded> code, Hazard.Kind kind) {
        public Rule {
            if (label.isPresent() == code.isPresent()) {
                throw new IllegalArgumentException("A rule has either a label or a code.");
            }
        }

        boolean meets(ForeignMark mark) {
            return mark.labels().stream().anyMatch(this::meets);
        }

        /** The label by which a mark meets the rule. */
        Label met(ForeignMark mark) {
            return mark.labels().stream().filter(this::meets).findFirst().orElseThrow();
        }

        private boolean meets(Label said) {
            boolean named =
                    label.filter(pattern -> pattern.matches(said.text())).isPresent();
            return named || (code.isPresent() && code.equals(said.code()));
        }
    }

    /** The rule that decides; empty where none does. */
    Optional<Rule> of(ForeignMark mark) {
        return rules.stream().filter(rule -> rule.meets(mark)).findFirst();
    }
}
