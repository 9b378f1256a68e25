// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.agents.Volume;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads a log once from its first event to its last and notes every contradiction beside the event that shows it. */
public final class LogCheck {
    /** A contradiction and the event at which it shows. */
    public record Flag(Contradiction what, String eventId) {}

    /**
     * What the log is read beside.
     *
     * @param block of the case
     * @param side of the case
     * @param stopMomentHolds how long a stop moment holds before a puncture
     * @param drawnUp by agent id
     */
    public record Beside(
            Optional<String> block, Optional<Laterality> side, Duration stopMomentHolds, Map<String, Volume> drawnUp) {
        public Beside {
            drawnUp = Map.copyOf(drawnUp);
        }
    }

    private final Beside beside;
    private final List<Flag> flags = new ArrayList<>();
    private final Map<Integer, LoggedEvent> stopMoments = new HashMap<>();
    private final Set<Integer> stale = new HashSet<>();
    private final Map<String, Volume> injected = new HashMap<>();
    private boolean needleIn;
    private boolean everIn;
    private boolean blood;
    private boolean halted;
    private boolean ended;

    private LogCheck(Beside beside) {
        this.beside = beside;
    }

    /** All contradictions of what stands in a log, in the order of the events. */
    public static List<Flag> flags(ProcedureLog log, Beside beside) {
        LogCheck check = new LogCheck(beside);
        log.standing().forEach(check::read);
        return List.copyOf(check.flags);
    }

    private void read(LoggedEvent event) {
        Happening what = event.what();
        if (what instanceof Happening.Stopped stopped) {
            stopMoments.put(stopped.punctureSite(), event);
            stale.remove(stopped.punctureSite());
        } else if (what instanceof Happening.ContextChanged) {
            stale.addAll(stopMoments.keySet());
        } else if (what instanceof Happening.Puncture puncture) {
            puncture(event, puncture.punctureSite());
        } else if (what instanceof Happening.NeedleOut) {
            flagIf(!needleIn, Contradiction.NEEDLE_OUT_WITHOUT_PUNCTURE, event);
            needleIn = false;
        } else if (what instanceof Happening.Halt halt) {
            halted = true;
            ended = ended || halt.endsTheSearch();
        } else if (what instanceof Happening.Aspiration aspiration) {
            blood = aspiration.blood();
        } else if (what instanceof Happening.Aliquot aliquot) {
            injection(event, aliquot);
        } else if (goesOn(what)) {
            halted = ended;
        }
    }

    /** After a stop one of these says that something was changed before going on; blood and toxicity end the matter. */
    private static boolean goesOn(Happening what) {
        return what instanceof Happening.Redirection
                || what instanceof Happening.Pass
                || what instanceof Happening.PlanChanged
                || what instanceof Happening.HandOver
                || (what instanceof Happening.Sight sight && sight.seen().tipKnown());
    }

    private void puncture(LoggedEvent event, int site) {
        flagIf(needleIn, Contradiction.PUNCTURE_WHILE_NEEDLE_IN, event);
        needleIn = true;
        everIn = true;
        blood = false;
        halted = ended;
        LoggedEvent stop = stopMoments.get(site);
        if (stop == null || !(stop.what() instanceof Happening.Stopped stopped)) {
            flag(Contradiction.PUNCTURE_WITHOUT_STOP_MOMENT, event);
            return;
        }
        Duration age = Duration.between(stop.happenedAt(), event.happenedAt());
        StopMoment moment = stopped.moment();
        flagIf(age.compareTo(beside.stopMomentHolds()) > 0, Contradiction.STOP_MOMENT_TOO_OLD, event);
        flagIf(stale.contains(site), Contradiction.CHANGED_SINCE_STOP_MOMENT, event);
        flagIf(
                beside.side().filter(side -> side != moment.side()).isPresent(),
                Contradiction.STOP_MOMENT_FOR_OTHER_SIDE,
                event);
        flagIf(
                beside.block().filter(block -> !block.equals(moment.block())).isPresent(),
                Contradiction.STOP_MOMENT_FOR_OTHER_BLOCK,
                event);
    }

    private void injection(LoggedEvent event, Happening.Aliquot aliquot) {
        flagIf(!everIn, Contradiction.INJECTED_BEFORE_PUNCTURE, event);
        flagIf(everIn && !needleIn, Contradiction.INJECTED_AFTER_NEEDLE_OUT, event);
        flagIf(halted, Contradiction.INJECTED_AFTER_STOP, event);
        flagIf(blood, Contradiction.INJECTED_AFTER_BLOOD, event);
        aliquot.agentId().ifPresent(agent -> {
            Volume sum = injected.merge(agent, aliquot.volume(), Volume::plus);
            Volume most = beside.drawnUp().get(agent);
            flagIf(most != null && sum.compareTo(most) > 0, Contradiction.MORE_THAN_DRAWN_UP, event);
        });
    }

    private void flagIf(boolean found, Contradiction what, LoggedEvent event) {
        if (found) {
            flag(what, event);
        }
    }

    private void flag(Contradiction what, LoggedEvent event) {
        flags.add(new Flag(what, event.id()));
    }
}
