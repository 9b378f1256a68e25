// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Numeric;
import java.util.List;

/**
 * What viewers take by its place: the drawn groups stand plan first, then observations, plans carried over, hazards and
 * nerves, each kind by its number, and within a group every number that is drawn stands before those that only explain.
 */
final class GroupOrder {
    private static final List<Code> KINDS =
            List.of(Concepts.PLAN, Concepts.OBSERVATION, Concepts.CARRIED_PLAN, Concepts.HAZARD, Concepts.NERVE);

    private final Findings findings;

    GroupOrder(Findings findings) {
        this.findings = findings;
    }

    /** @param drawn groups of Imaging Measurements in the order of the document */
    void check(List<ReadGroup> drawn) {
        for (int i = 0; i < drawn.size(); i++) {
            if (i > 0 && !follows(drawn.get(i - 1), drawn.get(i))) {
                findings.at(
                        drawn.get(i).item(),
                        "\"" + drawn.get(i).label() + "\" stands after \""
                                + drawn.get(i - 1).label() + "\": the groups are out of order");
            }
            numbers(drawn.get(i));
        }
    }

    private static boolean follows(ReadGroup before, ReadGroup after) {
        int kind = Integer.compare(kind(before), kind(after));
        return kind < 0 || (kind == 0 && number(before.label()) < number(after.label()));
    }

    private static int kind(ReadGroup group) {
        for (int i = 0; i < KINDS.size(); i++) {
            if (group.is(KINDS.get(i))) {
                return i;
            }
        }
        return KINDS.size(); // its value set has said so
    }

    /** The number that a label ends with, such as 2 of "Observation 2"; of "Plan" it is 0. */
    private static long number(String label) {
        String digits = label.replaceFirst("^.*?(\\d{0,9})$", "$1");
        return digits.isEmpty() ? 0 : Long.parseLong(digits);
    }

    private void numbers(ReadGroup group) {
        boolean explained = false;
        for (ContentItem child : group.item().children()) {
            if (child.value() instanceof Numeric) {
                boolean rich = child.codeOf(Concepts.EQUIVALENT_MEANING).isPresent();
                if (explained && !rich) {
                    findings.at(child, "is drawn and stands after a number that is not");
                }
                explained = explained || rich;
            }
        }
    }
}
