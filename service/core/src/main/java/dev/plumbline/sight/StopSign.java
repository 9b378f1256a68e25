// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

/**
 * Signs at which everything stops, gravest first. They come before any step of any ladder and no file can take one away.
 *
 * <p>Source: common practice; that blood or toxicity end the search is a design choice on the side of caution.
 */
public enum StopSign {
    TOXICITY("signOfToxicity", true),
    BLOOD("blood", true),
    NERVE_SWELLS("nerveSwells", false),
    PAIN("painParaesthesiaOrWithdrawal", false),
    FIRM_RESISTANCE("firmResistance", false),
    NO_SPREAD("noSpreadSeen", false),
    PATIENT_MOVES("patientMoves", false),
    PAST_LEAD_IN("pastLeadInNothingSeen", false),
    TIP_LOST("tipLost", false);

    private final String word;
    private final boolean endsTheSearch;

    StopSign(String word, boolean endsTheSearch) {
        this.word = word;
        this.endsTheSearch = endsTheSearch;
    }

    public String word() {
        return word;
    }

    /** The patient is treated; nobody looks for the needle any more. */
    public boolean endsTheSearch() {
        return endsTheSearch;
    }
}
