// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.plan.Approach;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureLog;
import dev.plumbline.sight.NeedleInside;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.SightQuestion;
import dev.plumbline.sight.StopSign;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Where the search for the needle stands by the log of a case. */
public final class SightSoFar {
    private Optional<Seen> seen = Optional.empty();
    private final List<String> tried = new ArrayList<>();
    private final Set<StopSign> signs = EnumSet.noneOf(StopSign.class);
    private int passesUnseen;
    private boolean inPass;
    private boolean tipSeen;

    private SightSoFar() {}

    /**
     * The question that a log asks: the last view noted, the steps tried in this pass, the passes in which the tip was never
     * seen, and every sign to stop since something was changed. Without a note of the view nobody is sure.
     */
    public static SightQuestion question(ProcedureLog log, Approach approach, NeedleInside inside) {
        SightSoFar so = new SightSoFar();
        log.standing().forEach(event -> so.read(event));
        return new SightQuestion(
                approach, so.seen.orElse(Seen.NOT_SURE), so.signs, so.tried, so.passesUnseen, false, false, inside);
    }

    private void read(LoggedEvent event) {
        Happening what = event.what();
        if (what instanceof Happening.Puncture || what instanceof Happening.Pass) {
            endPass();
            inPass = true;
        } else if (what instanceof Happening.Sight sight) {
            seen = Optional.of(sight.seen());
            sight.step().ifPresent(tried::add);
            tipSeen = tipSeen || sight.seen().tipKnown();
            if (sight.seen().tipKnown()) {
                signs.remove(StopSign.TIP_LOST);
            }
        } else if (what instanceof Happening.Aspiration aspiration && aspiration.blood()) {
            signs.add(StopSign.BLOOD);
        } else if (what instanceof Happening.Halt halt) {
            halt.sign().ifPresent(signs::add);
        } else if (what instanceof Happening.Redirection || what instanceof Happening.PlanChanged) {
            goOn();
        }
    }

    private void endPass() {
        if (inPass && !tipSeen) {
            passesUnseen++;
        }
        tried.clear();
        seen = Optional.empty();
        tipSeen = false;
        goOn();
    }

    /** Something was changed, so what had stopped it may be gone; blood and toxicity stay. */
    private void goOn() {
        signs.removeIf(sign -> !sign.endsTheSearch());
    }
}
