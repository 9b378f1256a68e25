// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.Dose;
import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Patient;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.ProcedureContext;
import dev.plumbline.procedure.SetUpChecks;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What of the case's context the bedside needs beside block, side and operator.
 *
 * @param patient what a limit may depend on
 * @param heightCm to question a weight with
 * @param consent answered as a check is
 * @param nothingGiven somebody states that no agent was given, as after a block that was abandoned
 * @param orderSide the side that the order names, as somebody states it; never made out of free text
 * @param sideAnswered what a person says to order, case and image naming different sides
 */
public record Surroundings(
        ProcedureContext said,
        Patient patient,
        Optional<BigDecimal> heightCm,
        Optional<SetUpChecks.Answered> consent,
        OtherToday otherToday,
        boolean nothingGiven,
        Optional<Laterality> orderSide,
        Optional<String> sideAnswered) {
    public static final Surroundings NOTHING_STATED = new Surroundings(
            ProcedureContext.NOTHING_STATED,
            Patient.UNKNOWN,
            Optional.empty(),
            Optional.empty(),
            OtherToday.NOT_ASKED,
            false,
            Optional.empty(),
            Optional.empty());

    /** Local anaesthetic given elsewhere today: whether somebody asked, and what was found. */
    public record OtherToday(OtherDoses answer, List<OtherDose> doses) {
        public static final OtherToday NOT_ASKED = new OtherToday(OtherDoses.NOT_ASKED, List.of());

        /**
         * Checks that answer and doses agree.
         *
         * @throws Refusal {@link Problem.ContradictoryFields}
         */
        public OtherToday {
            doses = List.copyOf(doses);
            if (doses.isEmpty() == (answer == OtherDoses.ASKED_GIVEN)) {
                throw new Refusal(new Problem.ContradictoryFields(
                        "",
                        "The answer about other doses and the doses listed contradict each other.",
                        "List what was given with askedGiven, or answer askedNone."));
            }
        }
    }

    /**
     * A dose given elsewhere.
     *
     * @param id the same in every case of the session that names this dose
     */
    public record OtherDose(String id, Dose dose) {}
}
