// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Patient;
import dev.plumbline.agents.Stage;
import dev.plumbline.needle.Needle;
import dev.plumbline.record.Context;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Which items of the completeness list a case holds. What cannot be told from the case is for a person to mark. */
public final class Presence {
    private Presence() {}

    /**
     * Everything that is looked at.
     *
     * @param patientKnown the frame or the worklist names the patient
     * @param consentAnswered somebody said whether consent was given
     * @param noneGiven somebody stated that no agent was given
     */
    public record Facts(
            boolean patientKnown,
            boolean consentAnswered,
            boolean noneGiven,
            Context context,
            Patient patient,
            ProcedureContext surroundings,
            Needle needle,
            List<AgentUse> uses,
            ProcedureLog log,
            Complications complications) {}

    /** Ids of the items that are there. */
    public static Set<String> of(Facts facts) {
        Set<String> present = new TreeSet<>();
        mark(present, facts.patientKnown(), "patient");
        mark(present, facts.consentAnswered(), "consent");
        mark(present, facts.context().block().isPresent(), "block");
        mark(present, facts.context().laterality().isPresent(), "side");
        mark(present, facts.context().operator().isPresent(), "performer");
        mark(present, facts.patient().weight().isPresent(), "weight");
        mark(
                present,
                facts.needle().gauge().isPresent() && facts.needle().lengthMm().isPresent(),
                "needle");
        mark(present, !(facts.complications() instanceof Complications.NotRecorded), "complications");
        surroundings(present, facts.surroundings());
        injected(present, facts);
        return present;
    }

    private static void surroundings(Set<String> present, ProcedureContext said) {
        mark(present, said.indication().isPresent(), "indication");
        mark(present, !said.localisation().isEmpty(), "localisation");
        mark(present, said.patientState().isPresent(), "patientState");
        mark(present, said.position().isPresent(), "position");
        mark(present, said.allergies().isPresent(), "allergies");
        mark(present, said.coagulation().isPresent(), "coagulation");
        mark(present, said.baselineNeurology().isPresent(), "baselineNeurology");
        mark(present, said.skinPreparation().isPresent(), "skinPreparation");
        mark(present, said.ivAccess().isPresent(), "ivAccess");
        mark(present, said.monitoring().isPresent(), "monitoring");
        mark(present, !said.lots().isEmpty(), "lots");
    }

    private static void injected(Set<String> present, Facts facts) {
        List<Happening> happened =
                facts.log().standing().stream().map(LoggedEvent::what).toList();
        boolean aspirated = happened.stream().anyMatch(Happening.Aspiration.class::isInstance);
        boolean injected = happened.stream().anyMatch(Happening.Aliquot.class::isInstance);
        boolean nothing = facts.noneGiven() && !injected;
        boolean agents = !facts.uses().isEmpty()
                && facts.uses().stream().allMatch(use -> use.volume(Stage.GIVEN).isPresent());
        mark(present, !happened.isEmpty(), "time");
        mark(present, stopMoments(happened), "stopMoment");
        mark(present, agents || nothing, "agents");
        mark(present, (aspirated && injected) || nothing, "aspirationAndSpread");
        mark(present, injected || nothing, "pain");
        mark(present, injected || nothing, "resistance");
    }

    /** Every puncture site has one, and there is at least one. */
    private static boolean stopMoments(List<Happening> happened) {
        Set<Integer> stopped = new HashSet<>();
        Set<Integer> punctured = new HashSet<>();
        for (Happening what : happened) {
            if (what instanceof Happening.Stopped stop) {
                stopped.add(stop.punctureSite());
            } else if (what instanceof Happening.Puncture puncture) {
                punctured.add(puncture.punctureSite());
            }
        }
        return !stopped.isEmpty() && stopped.containsAll(punctured);
    }

    private static void mark(Set<String> present, boolean there, String id) {
        if (there) {
            present.add(id);
        }
    }
}
