// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What surrounds the block, as stated and nothing added; what is absent was not said.
 *
 * @param allergies asked or not; what they are stands in {@code allergyText}
 * @param monitoring words of what was applied
 * @param lots lot numbers of needle and agents
 */
public record ProcedureContext(
        Optional<String> indication,
        Set<Localisation> localisation,
        Optional<PatientState> patientState,
        Optional<String> position,
        Optional<Allergies> allergies,
        Optional<String> allergyText,
        Optional<Coagulation> coagulation,
        Optional<Neurology> baselineNeurology,
        Optional<String> skinPreparation,
        Optional<String> ivAccess,
        Optional<String> monitoring,
        List<String> lots) {
    public static final ProcedureContext NOTHING_STATED = new ProcedureContext(
            Optional.empty(),
            Set.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of());

    public ProcedureContext {
        localisation = Set.copyOf(localisation);
        lots = List.copyOf(lots);
    }

    /** How the target was found; several may be true. */
    public enum Localisation {
        ULTRASOUND("ultrasound"),
        STIMULATOR("stimulator"),
        LANDMARK("landmark");

        private final String word;

        Localisation(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** The patient during the block. */
    public enum PatientState {
        AWAKE("awake"),
        LIGHT_SEDATION("lightSedation"),
        DEEP_SEDATION("deepSedation"),
        GENERAL_ANAESTHESIA("generalAnaesthesia");

        private final String word;

        PatientState(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** Whether somebody asked for allergies. */
    public enum Allergies {
        NONE("none"),
        KNOWN("known"),
        NOT_ASKED("notAsked");

        private final String word;

        Allergies(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** Whether somebody considered coagulation; no interval is ever computed. */
    public enum Coagulation {
        NO_CONCERN("consideredNoConcern"),
        CONCERN("consideredConcern"),
        NOT_ASSESSED("notAssessed");

        private final String word;

        Coagulation(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** The nerves before the block. */
    public enum Neurology {
        NORMAL("normal"),
        DEFICIT("deficit"),
        NOT_ASSESSED("notAssessed");

        private final String word;

        Neurology(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
