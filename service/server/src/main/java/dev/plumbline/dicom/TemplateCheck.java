// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.OptionalInt;

/**
 * Whether a structured report is as our templates say, row by row, and keeps the rules that no other program checks.
 *
 * <p>Reports of any origin can be checked; what is found is said, nothing is repaired.
 */
public final class TemplateCheck {
    /** How many frames an object has, where that is known. */
    @FunctionalInterface
    public interface FrameCounts {
        OptionalInt of(String sopInstanceUid);
    }

    private TemplateCheck() {}

    /**
     * Checks a report by itself.
     *
     * @throws dev.plumbline.problem.Refusal when the object has no content tree or one too large to read
     */
    public static CheckReport check(DataSet report) {
        return check(report, uid -> OptionalInt.empty());
    }

    /**
     * Checks a report together with what is known of the objects it names.
     *
     * @throws dev.plumbline.problem.Refusal when the object has no content tree or one too large to read
     */
    public static CheckReport check(DataSet report, FrameCounts counts) {
        ContentItem root = ContentReader.read(report);
        Findings findings = new Findings(root);
        rows(root, findings);
        new HeaderRules(report, root, findings).check();
        new CodeRules(findings).check(root);
        new CoordinateRules(root, counts, findings).check();
        List<ReadGroup> groups = RecordReader.groups(root);
        new GroupRules(groups, findings).check();
        new AgreementRules(root, groups, findings).check();
        return findings.report();
    }

    private static void rows(ContentItem root, Findings findings) {
        Templates.Node row = Templates.of("1500").get(0);
        if (!row.row().names(root) || !row.row().hasType(root)) {
            findings.at(root, "is not the root of a measurement report (TID 1500 row 1)");
            return;
        }
        new RowMatcher(findings).match(root, row.children());
    }
}
