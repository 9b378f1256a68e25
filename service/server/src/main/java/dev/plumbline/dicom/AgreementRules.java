// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.record.Cautions;
import java.util.List;
import java.util.Optional;

/** Codes and numbers that repeat what the algorithm parameters (111002) say agree with them. */
final class AgreementRules {
    private final ContentItem root;
    private final List<ReadGroup> groups;
    private final Findings findings;

    AgreementRules(ContentItem root, List<ReadGroup> groups, Findings findings) {
        this.root = root;
        this.groups = groups;
        this.findings = findings;
    }

    void check() {
        groups.stream().filter(group -> group.is(Concepts.PLAN)).forEach(this::plan);
        groups.stream().filter(group -> group.is(Concepts.OBSERVATION)).forEach(this::observation);
        root.first(Concepts.PROCEDURE)
                .flatMap(details -> details.first(Codes.own("BLOCK")))
                .ifPresent(this::sides);
        root.named(Concepts.PROCEDURE)
                .flatMap(details -> details.named(Codes.own("CAUTIONS")))
                .filter(item -> !(item.value() instanceof ItemValue.Text text
                        && text.text().equals(Cautions.text())))
                .forEach(item -> findings.at(item, "is not word for word the product's cautions"));
    }

    /** The side of the block is the side of every finding site; the midline has none. */
    private void sides(ContentItem block) {
        Optional<Code> stated = block.codeOf(Concepts.LATERALITY);
        for (ReadGroup group : groups) {
            group.item()
                    .first(Concepts.FINDING_SITE)
                    .filter(site -> !site.codeOf(Concepts.LATERALITY).equals(stated))
                    .ifPresent(site -> findings.at(
                            site,
                            "is on another side than the block: " + meaning(site.codeOf(Concepts.LATERALITY))
                                    + " here, " + meaning(stated) + " there"));
        }
    }

    private static String meaning(Optional<Code> side) {
        return side.map(Code::meaning).orElse("no side");
    }

    private void plan(ReadGroup plan) {
        JsonNode stated = plan.parameters();
        code(plan.item(), "TARGET-KIND", "target kinds", stated.path("targetKind"));
        structures(stated.path("hazards"), Concepts.HAZARD);
        structures(stated.path("nerves"), Concepts.NERVE);
        root.first(Concepts.PROCEDURE).ifPresent(details -> details(details, stated));
    }

    private void details(ContentItem details, JsonNode stated) {
        code(details, "APPROACH", "approaches", stated.path("approach"));
        code(details, "TRANSDUCER", "transducers", stated.path("probe").path("kind"));
        details.first(Codes.own("TRANSDUCER"))
                .ifPresent(item -> number(
                        item, Codes.own("FOOTPRINT"), stated.path("probe").path("footprintMm")));
        details.first(Codes.sct("57134006")).ifPresent(needle -> {
            JsonNode said = stated.path("needle");
            number(needle, Codes.dcm("111465"), said.path("gauge"));
            number(needle, Codes.dcm("111467"), said.path("lengthMm"));
            code(needle, "ECHOGENIC", "answers", said.path("echogenic"));
        });
    }

    private void observation(ReadGroup group) {
        JsonNode stated = group.parameters();
        code(group.item(), "OBS-PHASE", "phases", stated.path("phase"));
        code(group.item(), "TIP-CONFIRMED", "answers", stated.path("tipIsTip"));
        boolean tip = !group.points(Concepts.TIP).isEmpty();
        if (tip != stated.path("tipIsTip").asBoolean(false)
                && (tip || !group.points(Concepts.SEEN_END).isEmpty())) {
            findings.at(group.item(), "marks a tip otherwise than its parameters (111002) confirm it");
        }
    }

    private void structures(JsonNode stated, Code finding) {
        List<ReadGroup> drawn =
                groups.stream().filter(group -> group.is(finding)).toList();
        if (drawn.size() != stated.size()) {
            findings.at(
                    root,
                    "has " + drawn.size() + " groups of " + finding + ", the plan's parameters (111002) "
                            + stated.size());
            return;
        }
        for (int i = 0; i < drawn.size(); i++) {
            ContentItem group = drawn.get(i).item();
            String name = stated.get(i).path("name").asText();
            if (!group.textOf(Codes.own("STRUCTURE-NAME")).equals(Optional.of(name))) {
                findings.at(group, "has not the name that the plan's parameters (111002) give it");
            }
            code(group, "HAZARD-KIND", "hazard kinds", stated.get(i).path("kind"));
        }
    }

    private void code(ContentItem parent, String concept, String set, JsonNode stated) {
        Optional<String> said = stated.isMissingNode() ? Optional.empty() : Optional.of(stated.asText());
        Optional<String> coded = parent.codeOf(Codes.own(concept)).flatMap(code -> Codes.wordOf(set, code));
        if (!said.equals(coded)) {
            findings.at(
                    parent,
                    Codes.own(concept) + " says " + coded.orElse("nothing") + ", the parameters (111002) "
                            + said.orElse("nothing"));
        }
    }

    private void number(ContentItem parent, Code concept, JsonNode stated) {
        Optional<String> coded = parent.first(concept)
                .flatMap(item -> item.value() instanceof Numeric numeric ? numeric.measured() : Optional.empty())
                .map(ItemValue.Measured::decimal);
        Optional<String> said =
                stated.isNumber() ? Optional.of(DecimalText.of(stated.doubleValue())) : Optional.empty();
        if (!said.equals(coded)) {
            findings.at(parent, concept + " differs from the parameters (111002)");
        }
    }
}
