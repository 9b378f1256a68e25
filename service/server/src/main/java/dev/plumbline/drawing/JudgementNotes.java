// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.WayOut;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What was judged, what was not, and what the numbers take for granted. */
final class JudgementNotes {
    private JudgementNotes() {}

    static List<Note> of(Plan plan) {
        List<Note> notes = new ArrayList<>();
        Plan.Judgement judgement = plan.judgement();
        if (!judgement.binding().isEmpty()) {
            notes.add(new Note.Badge("Outside the limits: " + limits(judgement.binding()), false));
        } else if (plan.feasible()) {
            notes.add(new Note.Paragraph("Fits the limits you set, for what you marked.", false));
        }
        notes.add(new Note.Paragraph(plan.text(), false));
        plan.waysOut().stream()
                .map(WayOut::text)
                .filter(text -> !plan.text().contains(text))
                .forEach(text -> notes.add(new Note.Paragraph("Way out: " + text, false)));
        if (!judgement.unchecked().isEmpty()) {
            notes.add(new Note.Paragraph(
                    "Not checked: "
                            + judgement.unchecked().stream().map(Limit::subject).collect(Collectors.joining(", "))
                            + ".",
                    false));
        }
        notes.addAll(doubts(judgement.doubts()));
        return notes;
    }

    static List<Note> doubts(List<Doubt> doubts) {
        return doubts.isEmpty()
                ? List.of()
                : List.of(new Note.Paragraph(
                        "Look again: " + doubts.stream().map(Doubt::words).collect(Collectors.joining("; ")) + ".",
                        false));
    }

    static List<Note> assumptions(List<Assumption> assumptions) {
        return assumptions.isEmpty()
                ? List.of()
                : List.of(new Note.Paragraph(
                        "Taken for granted: "
                                + assumptions.stream().map(Assumption::words).collect(Collectors.joining("; "))
                                + ".",
                        true));
    }

    private static String limits(List<Limit> limits) {
        return limits.stream().map(Wording::limit).collect(Collectors.joining(", "));
    }
}
