// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Answers every state of the search with one action: signs to stop first, then giving up, then the next rung. */
public final class SightSearch {
    private static final SightStep.Says NEW_PASS = new SightStep.Says(
            "This pass is over. Count it, set the needle straight at the skin and begin the ladder again.",
            "Every step of this pass was tried.",
            List.of("Do not redirect a needle that is not seen."));

    /** Not sure counts as not seen. */
    private static final Set<Seen> NOTHING_SEEN =
            Collections.unmodifiableSet(EnumSet.of(Seen.NOTHING, Seen.NO_DOT, Seen.NOT_SURE));

    private final SightRules rules;

    public SightSearch(SightRules rules) {
        this.rules = rules;
    }

    /**
     * The next single action.
     *
     * @throws Refusal for something seen that the approach does not know, an unknown step, or negative counts
     */
    public Advice next(SightQuestion question) {
        SightLadder ladder = rules.ladder(question.approach());
        check(question, ladder);
        int left = Math.max(0, rules.passLimit() - question.passesUnseen());
        List<StopSign> signs = signs(question);
        if (!signs.isEmpty()) {
            StopSign gravest = signs.get(0);
            Advice.Kind kind = gravest.endsTheSearch() ? Advice.Kind.TREAT : Advice.Kind.STOP;
            return withoutHands(kind, signs, rules.at(gravest), left);
        }
        if (question.seen().tipKnown()) {
            return withoutHands(Advice.Kind.CARRY_ON, signs, ladder.carryOn(), left);
        }
        if (left == 0) {
            return withoutHands(Advice.Kind.GIVE_UP, signs, rules.giveUp(), left);
        }
        return rung(question, ladder, left);
    }

    private Advice rung(SightQuestion question, SightLadder ladder, int left) {
        boolean passOver = ladder.steps().stream()
                .anyMatch(step -> step.limits().endsPass() && question.tried().contains(step.id()));
        if (!passOver) {
            for (SightStep step : ladder.stepsFor(question.seen())) {
                if (isOpen(step, question)) {
                    return new Advice(
                            Advice.Kind.STEP,
                            Optional.of(step.id()),
                            List.of(),
                            step.says(),
                            Optional.of(step.hands()),
                            magnitude(step.hands().measure(), question.inside()),
                            left);
                }
            }
        }
        return withoutHands(
                left > 1 ? Advice.Kind.NEW_PASS : Advice.Kind.GIVE_UP,
                List.of(),
                left > 1 ? NEW_PASS : rules.giveUp(),
                left - 1);
    }

    private static boolean isOpen(SightStep step, SightQuestion question) {
        boolean meant = !step.limits().onlyTooDeep()
                || question.tooDeep()
                || question.inside().tooDeep();
        return meant
                && Collections.frequency(question.tried(), step.id())
                        < step.limits().times();
    }

    /** The signs that were stated, and the one that the numbers show. */
    private static List<StopSign> signs(SightQuestion question) {
        Set<StopSign> all = EnumSet.noneOf(StopSign.class);
        all.addAll(question.signs());
        boolean nothing = NOTHING_SEEN.contains(question.seen());
        if (nothing && question.inside().pastLeadIn() && !question.heldPastLeadIn()) {
            all.add(StopSign.PAST_LEAD_IN);
        }
        return List.copyOf(all);
    }

    private Optional<Advice.Magnitude> magnitude(Measure measure, NeedleInside inside) {
        return switch (measure) {
            case NONE -> Optional.empty();
            case FLUID -> Optional.of(new Advice.Magnitude(measure, rules.fluidMl()));
            case BEAM_THICKNESS -> rounded(measure, inside.beamThicknessMm());
            case ROTATION_BOUND -> rounded(measure, inside.rotationBoundDeg());
        };
    }

    /** One decimal, upwards: a bound stays a bound. */
    private static Optional<Advice.Magnitude> rounded(Measure measure, OptionalDouble value) {
        return value.isEmpty()
                ? Optional.empty()
                : Optional.of(new Advice.Magnitude(
                        measure, BigDecimal.valueOf(value.getAsDouble()).setScale(1, RoundingMode.UP)));
    }

    private static Advice withoutHands(Advice.Kind kind, List<StopSign> signs, SightStep.Says says, int left) {
        return new Advice(kind, Optional.empty(), signs, says, Optional.empty(), Optional.empty(), left);
    }

    private static void check(SightQuestion question, SightLadder ladder) {
        if (!question.seen().in(question.approach())) {
            throw refused(
                    "/state",
                    "\"" + question.seen().word() + "\" is not said "
                            + question.approach().word() + ".",
                    "Give one of " + words(Seen.all(question.approach())) + ".");
        }
        if (question.passesUnseen() < 0) {
            throw refused("/passes", "There are no negative passes.", "Count from 0.");
        }
        List<String> known = ladder.steps().stream().map(SightStep::id).toList();
        for (int at = 0; at < question.tried().size(); at++) {
            if (!known.contains(question.tried().get(at))) {
                throw refused(
                        "/tried/" + at,
                        "The ladder has no such step.",
                        "Give one of " + String.join(", ", known) + ".");
            }
        }
    }

    private static String words(List<Seen> all) {
        return String.join(", ", all.stream().map(Seen::word).toList());
    }

    private static Refusal refused(String pointer, String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue(pointer, detail, remedy));
    }
}
