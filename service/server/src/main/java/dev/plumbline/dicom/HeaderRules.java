// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Composite;
import dev.plumbline.dicom.ItemValue.Container;
import dev.plumbline.dicom.ItemValue.Image;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the header must say for the tree under it: template, coding scheme, state, observers and evidence. */
final class HeaderRules {
    private final DataSet report;
    private final ContentItem root;
    private final Findings findings;

    /** @param report any document with a content tree */
    HeaderRules(DataSet report, ContentItem root, Findings findings) {
        this.report = report;
        this.root = root;
        this.findings = findings;
    }

    /** A record: drafted or signed, by template 1500. */
    void report() {
        template(MeasurementReport.TEMPLATE);
        codingScheme();
        state();
        amendment();
        observers();
        evidence();
    }

    /** Key objects, which are neither complete nor verified. */
    void keyObjects() {
        template(KeyObjects.TEMPLATE);
        codingScheme();
        evidence();
        for (int flag : new int[] {Tag.COMPLETION_FLAG, Tag.VERIFICATION_FLAG}) {
            if (report.holds(flag)) {
                findings.at(flag, "has no place in a key object selection");
            }
        }
    }

    private void template(ItemValue.Template wanted) {
        Optional<ItemValue.Template> template =
                root.value() instanceof Container container ? container.template() : Optional.empty();
        if (!template.equals(Optional.of(wanted))) {
            findings.at(
                    Tag.CONTENT_TEMPLATE_SEQUENCE,
                    "the root does not say that it follows DCMR template " + wanted.identifier());
        }
    }

    private void codingScheme() {
        boolean used = root.walk()
                .flatMap(CodeRules::codes)
                .anyMatch(code -> code.scheme().equals(Codes.OWN_SCHEME));
        boolean identified = report.items(Tag.CODING_SCHEME_IDENTIFICATION_SEQUENCE).stream()
                .anyMatch(item -> item.string(Tag.CODING_SCHEME_DESIGNATOR)
                                .filter(Codes.OWN_SCHEME::equals)
                                .isPresent()
                        && item.string(Tag.CODING_SCHEME_UID)
                                .filter(Codes.ownScheme("uid")::equals)
                                .isPresent());
        if (used && !identified) {
            findings.at(
                    Tag.CODING_SCHEME_IDENTIFICATION_SEQUENCE,
                    "codes of " + Codes.OWN_SCHEME + " are used and their scheme is not identified");
        }
    }

    /** Draft or signed, and nothing between: the flags go together. */
    private void state() {
        String flags = Stream.of(Tag.COMPLETION_FLAG, Tag.VERIFICATION_FLAG, Tag.PRELIMINARY_FLAG)
                .map(tag -> report.string(tag).orElse("-"))
                .collect(Collectors.joining(" "));
        boolean verified = !report.items(Tag.VERIFYING_OBSERVER_SEQUENCE).isEmpty();
        boolean signed = flags.equals("COMPLETE VERIFIED FINAL") && verified;
        boolean draft = flags.equals("PARTIAL UNVERIFIED PRELIMINARY") && !verified;
        if (!signed && !draft) {
            findings.at(
                    Tag.COMPLETION_FLAG,
                    "the flags " + flags + (verified ? " with" : " without")
                            + " a verifying observer are neither a draft nor a signed record");
        }
        if (signed
                && root.walk()
                        .anyMatch(item -> item.value() instanceof ItemValue.Coded coded
                                && coded.code().means(Codes.own("SRC-PROPOSED")))) {
            findings.at(Tag.COMPLETION_FLAG, "a signed record has a plan that was only proposed");
        }
    }

    /** What replaces a report says why, and nothing else does. */
    private void amendment() {
        boolean replaces = WrittenLife.predecessor(report).isPresent();
        boolean says = Evaluations.amendment(root).isPresent();
        if (replaces != says) {
            findings.at(
                    Tag.PREDECESSOR_DOCUMENTS_SEQUENCE,
                    replaces
                            ? "names a report that is replaced, and nothing says why"
                            : "names no report, though an amendment is described");
        }
    }

    private void observers() {
        List<Code> types = root.named(Concepts.OBSERVER_TYPE)
                .flatMap(item -> item.value() instanceof ItemValue.Coded coded ? Stream.of(coded.code()) : Stream.of())
                .toList();
        boolean person = types.stream().anyMatch(Concepts.PERSON::means);
        boolean device = types.stream().anyMatch(Concepts.DEVICE::means);
        if (person && root.first(Codes.dcm("121008")).isEmpty()) {
            findings.at(root, "has a person observer without a name (TID 1003 row 1)");
        }
        if (!person && !report.items(Tag.VERIFYING_OBSERVER_SEQUENCE).isEmpty()) {
            findings.at(root, "is signed and has no person observer (TID 1002 row 1)");
        }
        if (!device || root.first(Codes.dcm("121012")).isEmpty()) {
            findings.at(root, "has no device observer with a UID (TID 1004 row 1)");
        }
    }

    private static Stream<String> references(ContentItem item) {
        if (item.value() instanceof Composite composite) {
            return Stream.of(composite.instance().sopInstanceUid());
        }
        return item.value() instanceof Image image ? Stream.of(image.instance().sopInstanceUid()) : Stream.of();
    }

    /** Every object that the tree names stands in the evidence, and nothing else does. */
    private void evidence() {
        Set<String> named = root.walk().flatMap(HeaderRules::references).collect(Collectors.toCollection(TreeSet::new));
        Set<String> listed = Stream.of(
                        Tag.CURRENT_REQUESTED_PROCEDURE_EVIDENCE_SEQUENCE, Tag.PERTINENT_OTHER_EVIDENCE_SEQUENCE)
                .flatMap(tag -> report.items(tag).stream())
                .flatMap(study -> study.items(Tag.REFERENCED_SERIES_SEQUENCE).stream())
                .flatMap(series -> series.items(Tag.REFERENCED_SOP_SEQUENCE).stream())
                .flatMap(instance -> instance.string(Tag.REFERENCED_SOP_INSTANCE_UID).stream())
                .collect(Collectors.toCollection(TreeSet::new));
        if (!named.equals(listed)) {
            findings.at(
                    Tag.CURRENT_REQUESTED_PROCEDURE_EVIDENCE_SEQUENCE,
                    "the evidence lists " + listed.size() + " objects, the tree names " + named.size()
                            + (named.containsAll(listed) || listed.containsAll(named) ? "" : ", and they differ"));
        }
    }
}
