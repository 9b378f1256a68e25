// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ObjectHeader.Kind;
import java.util.OptionalInt;

/**
 * Whether an object of a record, of whatever kind, is as it should be: the report and the key objects row by row, the others
 * in what no other program looks at.
 */
public final class ObjectCheck {
    private ObjectCheck() {}

    /** What a check is made of: a report or key objects by templates, another object by rules. */
    public record Result(String kind, CheckReport report) {}

    /**
     * Checks one object.
     *
     * @throws dev.plumbline.problem.Refusal when it is of no kind that a record consists of
     */
    public static Result check(DataSet object) {
        return check(object, uid -> OptionalInt.empty());
    }

    /**
     * Checks one object together with what is known of the objects it names.
     *
     * @throws dev.plumbline.problem.Refusal when it is of no kind that a record consists of
     */
    public static Result check(DataSet object, TemplateCheck.FrameCounts counts) {
        String sopClass = object.string(Tag.SOP_CLASS_UID).orElse("");
        Findings findings = new Findings();
        if (sopClass.equals(Kind.GREY_PRESENTATION.sopClassUid())
                || sopClass.equals(Kind.COLOUR_PRESENTATION.sopClassUid())) {
            new PresentationRules(object, counts, findings).check();
            return new Result("presentation state", findings.report());
        }
        if (sopClass.equals(Kind.ANNOTATED_FRAME.sopClassUid())) {
            new CompanionRules(object, findings).annotatedFrame();
            return new Result("annotated frame", findings.report());
        }
        if (sopClass.equals(Kind.PDF.sopClassUid())) {
            new CompanionRules(object, findings).pdf();
            return new Result("encapsulated PDF", findings.report());
        }
        if (sopClass.equals(Kind.KEY_OBJECTS.sopClassUid())) {
            return new Result("key object selection", TemplateCheck.keyObjects(object, counts));
        }
        return new Result("report", TemplateCheck.check(object, counts));
    }
}
