// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** Concept names that the writer and the reader share. Meanings stand in the code master file. */
final class Concepts {
    /** CID 7021. */
    static final Code IMAGING_MEASUREMENT_REPORT = Codes.dcm("126000");

    static final Code LANGUAGE = Codes.dcm("121049");
    static final Code COUNTRY = Codes.dcm("121046");
    static final Code PROCEDURE_REPORTED = Codes.dcm("121058");
    /** CID 100. */
    static final Code IMAGING_PROCEDURE = Codes.sct("363679005");

    static final Code OBSERVER_TYPE = Codes.dcm("121005");
    /** CID 270. */
    static final Code PERSON = Codes.dcm("121006");
    /** CID 270. */
    static final Code DEVICE = Codes.dcm("121007");

    static final Code IMAGE_LIBRARY = Codes.dcm("111028");
    static final Code IMAGE_LIBRARY_GROUP = Codes.dcm("126200");
    static final Code IMAGING_MEASUREMENTS = Codes.dcm("126010");
    static final Code MEASUREMENT_GROUP = Codes.dcm("125007");
    static final Code TRACKING_IDENTIFIER = Codes.dcm("112039");
    static final Code TRACKING_UID = Codes.dcm("112040");
    static final Code FINDING = Codes.dcm("121071");
    static final Code MEASUREMENT_METHOD = Codes.sct("370129005");
    static final Code FINDING_SITE = Codes.sct("363698007");
    /** Values: CID 244. */
    static final Code LATERALITY = Codes.sct("272741003");

    static final Code ALGORITHM_NAME = Codes.dcm("111001");
    static final Code ALGORITHM_VERSION = Codes.dcm("111003");
    static final Code ALGORITHM_PARAMETERS = Codes.dcm("111002");
    static final Code EVALUATIONS = Codes.of("UMLS", "C0034375");
    static final Code IMPRESSION = Codes.dcm("121073");
    static final Code COMMENT = Codes.dcm("121106");

    static final Code EQUIVALENT_MEANING = Codes.dcm("121050");
    static final Code DERIVATION = Codes.dcm("121401");
    /** CID 225. */
    static final Code UNCERTAINTY = Codes.sct("371884006");

    static final Code COVERAGE_FACTOR = Codes.own("COVERAGE-K");
    static final Code WHY_ABSENT = Codes.own("WHY-ABSENT");
    static final Code COMPARED_PLAN = Codes.own("CMP-PLAN");

    static final Code PATH = Codes.dcm("121055");
    static final Code SKIN = Codes.own("M-SKIN");
    static final Code TARGET = Codes.own("M-TARGET");
    static final Code MIDPOINT = Codes.own("M-MIDPOINT");
    static final Code ENTRY = Codes.own("M-ENTRY");
    static final Code FIRST_SEEN = Codes.own("M-FIRSTSEEN");
    static final Code TIP = Codes.own("M-TIP");
    static final Code SEEN_END = Codes.own("M-SEENEND");
    static final Code CROSSING = Codes.own("M-CROSSING");
    static final Code CENTRE = Codes.own("M-CENTRE");

    /** Generic concepts of numbers, CID 7470 and 12304. */
    static final Code DISTANCE = Codes.dcm("121206");

    static final Code PATH_LENGTH = Codes.dcm("121211");
    static final Code DEPTH = Codes.sct("131197000");
    static final Code DIAMETER = Codes.sct("81827009");

    static final Code PLAN = Codes.own("F-PLAN");
    static final Code OBSERVATION = Codes.own("F-OBS");
    static final Code CARRIED_PLAN = Codes.own("F-PLANMAP");
    static final Code HAZARD = Codes.own("F-HAZARD");
    static final Code NERVE = Codes.own("F-NERVE");

    static final Code PROCEDURE = Codes.own("PROCEDURE");
    static final Code UNDRAWN = Codes.own("UNDRAWN");
    static final Code UNDRAWN_GROUP = Codes.own("GROUP-UNDRAWN");

    private Concepts() {}

    static Code yesOrNo(boolean yes) {
        return Codes.ofWord("answers", Boolean.toString(yes));
    }
}
