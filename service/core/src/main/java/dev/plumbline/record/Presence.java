// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.AgentUse;
import dev.plumbline.needle.Needle;
import dev.plumbline.procedure.Complications;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureContext;
import dev.plumbline.procedure.ProcedureLog;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Which items of the completeness list a case holds. What cannot be told from the case is for a person to mark. */
public final class Presence {
    private static final String PERFORMER = "performer";

    private final Set<String> present = new TreeSet<>();

    private Presence() {}

    /**
     * Ids of the items that are there.
     *
     * @param patientKnown the frame or the worklist names the patient
     */
    public static Set<String> of(CaseDocument document, boolean patientKnown) {
        Presence presence = new Presence();
        presence.mark(patientKnown, "patient");
        presence.identity(document);
        presence.surroundings(document.bedside().surroundings());
        presence.injected(document.bedside());
        return presence.present;
    }

    private void identity(CaseDocument document) {
        Needle needle = document.needle();
        mark(document.context().block().isPresent(), "block");
        mark(document.context().laterality().isPresent(), "side");
        mark(
                document.context().operator().isPresent()
                        || performs(document.bedside().team()),
                PERFORMER);
        mark(needle.gauge().isPresent() && needle.lengthMm().isPresent(), "needle");
        mark(!document.bedside().checks().isEmpty(), "checklist");
    }

    private static boolean performs(List<TeamMember> team) {
        return team.stream()
                .anyMatch(member -> member.role().filter(PERFORMER::equals).isPresent());
    }

    private void surroundings(Surroundings around) {
        ProcedureContext said = around.said();
        mark(around.patient().weight().isPresent(), "weight");
        mark(around.heightCm().isPresent(), "height");
        mark(around.consent().isPresent(), "consent");
        mark(said.indication().isPresent(), "indication");
        mark(!said.localisation().isEmpty(), "localisation");
        mark(said.patientState().isPresent(), "patientState");
        mark(said.position().isPresent(), "position");
        mark(said.allergies().isPresent(), "allergies");
        mark(said.coagulation().isPresent(), "coagulation");
        mark(said.baselineNeurology().isPresent(), "baselineNeurology");
        mark(said.skinPreparation().isPresent(), "skinPreparation");
        mark(said.ivAccess().isPresent(), "ivAccess");
        mark(said.monitoring().isPresent(), "monitoring");
        mark(!said.lots().isEmpty(), "lots");
    }

    private void injected(Bedside bedside) {
        ProcedureLog log = bedside.log();
        List<Happening> happened =
                log.standing().stream().map(LoggedEvent::what).toList();
        List<Happening.Aliquot> aliquots =
                all(happened, Happening.Aliquot.class).toList();
        boolean aspirated = all(happened, Happening.Aspiration.class).findAny().isPresent();
        boolean nothing = bedside.surroundings().nothingGiven() && aliquots.isEmpty();
        mark(!happened.isEmpty(), "time");
        mark(stopMoments(happened), "stopMoment");
        mark(consentSeen(happened), "consent");
        mark(agents(bedside) || nothing, "agents");
        mark((aspirated && aliquots.stream().anyMatch(a -> a.spread().isPresent())) || nothing, "aspirationAndSpread");
        mark(aliquots.stream().anyMatch(a -> a.pain().isPresent()) || nothing, "pain");
        mark(aliquots.stream().anyMatch(a -> a.resistance().isPresent()) || nothing, "resistance");
        mark(!(Complications.of(log) instanceof Complications.NotRecorded), "complications");
        mark(uses(bedside).anyMatch(use -> use.agent().hasEpinephrine()), "epinephrine");
        mark(bedside.agents().stream().anyMatch(entry -> entry.packaging().lot().isPresent()), "lots");
    }

    /** Each agent has the volume that was given, entered or logged. */
    private static boolean agents(Bedside bedside) {
        var linked = CaseDoses.linked("", bedside);
        return !linked.uses().isEmpty()
                && linked.uses().stream().allMatch(use -> linked.given(use).isPresent());
    }

    private static Stream<AgentUse> uses(Bedside bedside) {
        return CaseDoses.linked("", bedside).uses().stream();
    }

    private static <T extends Happening> Stream<T> all(List<Happening> happened, Class<T> kind) {
        return happened.stream().filter(kind::isInstance).map(kind::cast);
    }

    private static boolean consentSeen(List<Happening> happened) {
        return all(happened, Happening.Stopped.class)
                .anyMatch(stopped -> stopped.moment().consentSeen());
    }

    /** Every puncture site has one, and there is at least one. */
    private static boolean stopMoments(List<Happening> happened) {
        Set<Integer> stopped = new HashSet<>();
        Set<Integer> punctured = new HashSet<>();
        all(happened, Happening.Stopped.class).forEach(stop -> stopped.add(stop.punctureSite()));
        all(happened, Happening.Puncture.class).forEach(puncture -> punctured.add(puncture.punctureSite()));
        return !stopped.isEmpty() && stopped.containsAll(punctured);
    }

    private void mark(boolean there, String id) {
        if (there) {
            present.add(id);
        }
    }
}
