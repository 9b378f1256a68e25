// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coded;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.dicom.ItemValue.Unreadable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Matches the children of an item with the rows of a template, in their order: relation, value type, concept, how often,
 * value set and unit. An item that no row allows is a finding too: our templates say everything a record may hold.
 */
final class RowMatcher {
    private final Findings findings;

    RowMatcher(Findings findings) {
        this.findings = findings;
    }

    /** A row at the level being matched. */
    private record Slot(Templates.Node node, Relation relation, Block block) {
        TemplateRow row() {
            return node.row();
        }

        boolean repeats() {
            return block.repeats();
        }

        boolean matches(ContentItem item) {
            return row().hasType(item) && row().names(item) && item.relation() == relation;
        }
    }

    void match(ContentItem parent, List<Templates.Node> rows) {
        List<Slot> slots = new ArrayList<>();
        for (Templates.Node node : rows) {
            expand(node, Optional.empty(), new Block(slots.size(), slots.size(), false, true), slots);
        }
        int[] counts = new int[slots.size()];
        int last = 0;
        for (ContentItem child : parent.children()) {
            int index = find(child, slots, last);
            if (index < 0) {
                unmatched(child, slots);
                continue;
            }
            Slot slot = slots.get(index);
            if (index < last && !slot.block().goesRoundWith(slots.get(last).block())) {
                findings.at(child, "stands out of order; " + slot.row().title() + " comes earlier");
            }
            last = Math.max(index, slot.repeats() ? index : last);
            counts[index]++;
            findings.matched(child, slot.row());
            value(child, slot.row());
            match(child, slot.node().children());
        }
        multiplicities(parent, slots, counts);
    }

    /**
     * The included template a row comes from.
     *
     * @param include tells one include from another
     * @param round the outermost include around it that may repeat, and with it everything inside
     */
    private record Block(int include, int round, boolean repeats, boolean required) {
        boolean goesRoundWith(Block other) {
            return repeats && round == other.round;
        }
    }

    private void expand(Templates.Node node, Optional<Relation> outer, Block block, List<Slot> slots) {
        TemplateRow row = node.row();
        Optional<String> include = row.include();
        if (include.isEmpty()) {
            Relation relation = row.relation().or(() -> outer).orElse(Relation.NONE);
            slots.add(new Slot(node, relation, block));
            return;
        }
        boolean repeats = block.repeats() || row.times().most() > 1;
        boolean required = block.required() && row.isRequired();
        Block inner = new Block(slots.size(), block.repeats() ? block.round() : slots.size(), repeats, required);
        for (Templates.Node included : Templates.of(include.get())) {
            expand(included, row.relation().or(() -> outer), inner, slots);
        }
    }

    /** From where matching stands, else from the start, so that what is out of order is still known. */
    private static int find(ContentItem child, List<Slot> slots, int from) {
        for (int i = from; i < slots.size(); i++) {
            if (slots.get(i).matches(child)) {
                return i;
            }
        }
        for (int i = 0; i < from; i++) {
            if (slots.get(i).matches(child)) {
                return i;
            }
        }
        return -1;
    }

    private void unmatched(ContentItem child, List<Slot> slots) {
        if (child.value() instanceof Unreadable unreadable) {
            findings.at(child, "cannot be read: " + unreadable.why());
            return;
        }
        for (Slot slot : slots) {
            if (!slot.row().concepts().isEmpty() && slot.row().names(child)) {
                findings.at(
                        child,
                        slot.row().hasType(child)
                                ? "has the relationship " + child.relation().text() + "; "
                                        + slot.row().title() + " wants "
                                        + slot.relation().text()
                                : "is " + child.value().valueType() + "; "
                                        + slot.row().title() + " wants "
                                        + String.join(" or ", slot.row().types()));
                return;
            }
        }
        findings.at(child, child.value().valueType() + " is not in the template here");
    }

    private void multiplicities(ContentItem parent, List<Slot> slots, int[] counts) {
        for (int i = 0; i < counts.length; i++) {
            Slot slot = slots.get(i);
            TemplateRow row = slot.row();
            boolean wanted = slot.block().required()
                    || isUsed(slots, counts, slot.block().include());
            if (counts[i] == 0 && wanted && required(row, parent)) {
                findings.at(parent, "has no " + row.wanted() + " (" + row.title() + ")");
            }
            if (!slot.repeats() && counts[i] > row.times().most()) {
                findings.at(
                        parent,
                        "has " + counts[i] + " of " + row.wanted() + "; " + row.title() + " allows "
                                + row.times().most());
            }
            if (counts[i] > 0 && forbidden(row, parent)) {
                findings.at(parent, "must not have " + row.wanted() + " (" + row.title() + ")");
            }
        }
    }

    private static boolean isUsed(List<Slot> slots, int[] counts, int include) {
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0 && slots.get(i).block().include() == include) {
                return true;
            }
        }
        return false;
    }

    private static boolean required(TemplateRow row, ContentItem parent) {
        return row.isRequired()
                || row.times().test().filter(test -> holds(test, parent)).isPresent();
    }

    private static boolean forbidden(TemplateRow row, ContentItem parent) {
        return row.times().test().filter(test -> !holds(test, parent)).isPresent();
    }

    private static boolean holds(String test, ContentItem parent) {
        return switch (test) {
            case "without value" ->
                parent.value() instanceof Numeric numeric && numeric.measured().isEmpty();
            case "deviation" ->
                parent.codeOf(Concepts.EQUIVALENT_MEANING)
                        .flatMap(Codes::known)
                        .filter(entry -> entry.set().equals("deviations"))
                        .isPresent();
            default -> throw new IllegalStateException("No condition is called \"" + test + "\".");
        };
    }

    private void value(ContentItem item, TemplateRow row) {
        if (item.value() instanceof Coded coded && !row.values().isEmpty()) {
            boolean allowed = row.values().stream().anyMatch(value -> allows(value, coded.code()));
            if (!allowed) {
                findings.at(item, coded.code() + " is not a value of " + row.title());
            }
        }
        if (item.value() instanceof Numeric numeric && row.units().isPresent()) {
            numeric.measured()
                    .filter(measured -> !measured.unit().means(row.units().get()))
                    .ifPresent(measured -> findings.at(
                            item,
                            "is in " + measured.unit().value() + "; " + row.title() + " wants "
                                    + row.units().get().value()));
        }
    }

    private static boolean allows(String value, Code code) {
        if (!value.startsWith("set ")) {
            return Codes.named(value).means(code);
        }
        return Codes.set(value.substring(4)).entries().stream()
                .anyMatch(entry -> entry.code().means(code));
    }
}
