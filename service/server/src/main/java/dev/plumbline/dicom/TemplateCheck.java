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
        rows(root, "1500", findings);
        new HeaderRules(report, root, findings).report();
        new CodeRules(findings).check(root);
        new CoordinateRules(root, counts, findings).check();
        List<ReadGroup> groups = RecordReader.groups(root);
        new GroupRules(groups, findings).check();
        new AgreementRules(root, groups, findings).check();
        return findings.report();
    }

    /** Checks a key object selection of a record. */
    static CheckReport keyObjects(DataSet selection, FrameCounts counts) {
        ContentItem root = ContentReader.read(selection);
        Findings findings = new Findings(root);
        rows(root, KeyObjects.TEMPLATE.identifier(), findings);
        new HeaderRules(selection, root, findings).keyObjects();
        new CodeRules(findings).check(root);
        new CoordinateRules(root, counts, findings).check();
        return findings.report();
    }

    private static void rows(ContentItem root, String template, Findings findings) {
        Templates.Node row = Templates.of(template).get(0);
        if (!row.row().names(root) || !row.row().hasType(root)) {
            findings.at(
                    root, "is not what the template begins with (" + row.row().title() + ")");
            return;
        }
        findings.matched(root, row.row());
        new RowMatcher(findings).match(root, row.children());
    }
}
