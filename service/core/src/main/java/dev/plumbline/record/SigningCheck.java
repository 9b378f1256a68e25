// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.DoseShares;
import dev.plumbline.agents.Stage;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Completeness;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.SideCheck;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What must be there, or excused with a reason, before somebody signs. */
public final class SigningCheck {
    /** Where in the case document an item is said. */
    private static final Map<String, String> PLACES = Map.ofEntries(
            Map.entry("patient", "/frame"),
            Map.entry("block", "/context/block"),
            Map.entry("side", "/context/laterality"),
            Map.entry("performer", "/context/operator"),
            Map.entry("consent", "/context/consent"),
            Map.entry("patientState", "/context/patientState"),
            Map.entry("needle", "/needle"),
            Map.entry("agents", "/agents"),
            Map.entry("weight", "/context/weight"),
            Map.entry("height", "/context/heightCm"),
            Map.entry("allergies", "/context/allergiesAsked"),
            Map.entry("coagulation", "/context/coagulation"),
            Map.entry("indication", "/context/indication"),
            Map.entry("checklist", "/checks"),
            Map.entry("ivAccess", "/context/ivAccess"),
            Map.entry("monitoring", "/context/monitoring"),
            Map.entry("position", "/context/position"),
            Map.entry("skinPreparation", "/context/skinPreparation"),
            Map.entry("localisation", "/context/localisation"),
            Map.entry("epinephrine", "/agents"),
            Map.entry("baselineNeurology", "/context/baselineNeurology"),
            Map.entry("lots", "/context/lots"));

    private SigningCheck() {}

    /**
     * What signing is judged beside.
     *
     * @param patientKnown the frame names the patient
     * @param imageSide the side that the frame itself states
     * @param session all cases of the session as they stand, this one included
     */
    public record Beside(
            SiteRules site,
            boolean patientKnown,
            Optional<Laterality> imageSide,
            List<CaseDocument> session,
            OffsetDateTime now) {
        public Beside {
            session = List.copyOf(session);
        }
    }

    /** Pointer to where an item is said, the log where it happens. */
    public static String place(String item) {
        return PLACES.getOrDefault(item, "/events");
    }

    /** Everything of the site's list that a case lacks, with the reasons that its signature gives. */
    public static List<Completeness.Missing> missing(CaseDocument document, Completeness list, boolean patientKnown) {
        return list.missing(
                Presence.of(document, patientKnown),
                document.signature().map(Signature::incompleteBecause).orElse(Map.of()));
    }

    /**
     * Whether the required items are asked of a case: when something of the bedside was kept in it, or the site asks always.
     */
    public static boolean applies(CaseDocument document, SiteRules site) {
        return site.signing().always() || document.bedside().kept();
    }

    /**
     * Refuses a signature under a record that lacks something without a reason.
     *
     * @throws Refusal {@link Problem.Incomplete} with everything that is missing
     */
    public static void require(CaseDocument document, Beside beside) {
        List<Problem.Incomplete.Item> lacking = new ArrayList<>();
        if (applies(document, beside.site())) {
            for (Completeness.Missing missing :
                    missing(document, beside.site().completeness(), beside.patientKnown())) {
                if (missing.blocks()) {
                    lacking.add(new Problem.Incomplete.Item(
                            missing.item().id(),
                            missing.item().text(),
                            place(missing.item().id())));
                }
            }
        }
        if (side(document, beside.imageSide()).open()) {
            lacking.add(new Problem.Incomplete.Item(
                    "sideAnswered", "Order, case and image name different sides", "/context/sideAnswered"));
        }
        if (exceeds(beside) && noReason(beside)) {
            lacking.add(new Problem.Incomplete.Item(
                    "exceeding", "The reason for going on beyond the site's limit", "/agents"));
        }
        if (!lacking.isEmpty()) {
            throw new Refusal(new Problem.Incomplete(lacking));
        }
    }

    /** The sides as order, case and image say them. */
    public static SideCheck side(CaseDocument document, Optional<Laterality> image) {
        Surroundings around = document.bedside().surroundings();
        return new SideCheck(around.orderSide(), document.context().laterality(), image, around.sideAnswered());
    }

    private static boolean exceeds(Beside beside) {
        Sitting sitting = sitting(beside);
        DoseShares shares = sitting.session()
                .budget(Stage.GIVEN, beside.now())
                .shares(beside.site().formulary(), sitting.patient(), beside.now());
        return shares.exceeds();
    }

    private static boolean noReason(Beside beside) {
        return sitting(beside).exceeding().isEmpty();
    }

    private static Sitting sitting(Beside beside) {
        return Sitting.of("", beside.session(), beside.site().drugs());
    }
}
