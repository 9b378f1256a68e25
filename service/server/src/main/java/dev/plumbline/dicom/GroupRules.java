// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The layout that viewers load: in every drawn group a thin number with a value, each thin number a twin of a rich one,
 * nothing spatial directly in a group, one frame, a tracking UID of its own, short labels.
 */
final class GroupRules {
    private static final int LONGEST_LABEL = 16;
    /** Viewers of this library make such groups their own measurements. Source: seen in one, with wrong lengths stored. */
    private static final String TAKEN_OVER = "Cornerstone";

    private final List<ReadGroup> groups;
    private final Findings findings;

    GroupRules(List<ReadGroup> groups, Findings findings) {
        this.groups = groups;
        this.findings = findings;
    }

    void check() {
        Set<String> tracked = new HashSet<>();
        for (ReadGroup group : groups) {
            tracking(group, tracked);
            boolean drawn = group.item().isNamed(Concepts.MEASUREMENT_GROUP);
            if (drawn) {
                drawn(group);
            }
            direct(group, drawn);
            labels(group);
            frames(group);
            marks(group);
            group.richNumbers().forEach(this::rich);
            QuantitiesWritten.check(group, findings);
        }
        new GroupOrder(findings)
                .check(groups.stream()
                        .filter(group -> group.item().isNamed(Concepts.MEASUREMENT_GROUP))
                        .toList());
        new EvaluationRules(findings).check(groups);
    }

    private void tracking(ReadGroup group, Set<String> tracked) {
        if (group.label().startsWith(TAKEN_OVER)) {
            group.item()
                    .first(Concepts.TRACKING_IDENTIFIER)
                    .ifPresent(
                            item -> findings.at(item, "lets a viewer take the group over and store its own numbers"));
        }
        group.item()
                .first(Concepts.TRACKING_UID)
                .filter(item -> item.value() instanceof ItemValue.Uid uid && !tracked.add(uid.uid()))
                .ifPresent(item -> findings.at(item, "is the tracking UID of another group too"));
    }

    private Stream<ContentItem> thinNumbers(ReadGroup group) {
        return group.item().children().stream()
                .filter(child -> child.value() instanceof Numeric)
                .filter(child -> child.codeOf(Concepts.EQUIVALENT_MEANING).isEmpty());
    }

    private void drawn(ReadGroup group) {
        List<ContentItem> thin = thinNumbers(group).toList();
        if (thin.isEmpty()) {
            findings.at(group.item(), "has nothing that a viewer draws: no number with coordinates alone under it");
        }
        thin.forEach(number -> thin(group, number));
    }

    private void thin(ReadGroup group, ContentItem number) {
        Optional<Measured> measured = ((Numeric) number.value()).measured();
        if (measured.isEmpty()) {
            findings.at(number, "is drawn and has no value");
        }
        boolean alone = number.children().size() == 1
                && number.children().get(0).value() instanceof Coordinates
                && number.children().get(0).children().size() == 1
                && number.children().get(0).children().get(0).value() instanceof Image;
        if (!alone) {
            findings.at(
                    number,
                    "says neither what it is (121050) nor has it exactly one SCOORD with exactly one IMAGE under it");
        }
        if (!group.is(Concepts.CARRIED_PLAN) && measured.isPresent() && !hasTwin(group, number, measured.get())) {
            findings.at(number, "has no rich number of the same concept, value and unit in its group");
        }
    }

    private static boolean hasTwin(ReadGroup group, ContentItem number, Measured thin) {
        return group.richNumbers()
                .filter(rich -> rich.isNamed(number.name().orElseThrow()))
                .flatMap(rich -> ((Numeric) rich.value()).measured().stream())
                .anyMatch(twin -> twin.value() == thin.value() && twin.unit().means(thin.unit()));
    }

    private void direct(ReadGroup group, boolean drawn) {
        for (ContentItem child : group.item().children()) {
            if (child.value() instanceof Coordinates || (drawn && child.value() instanceof Image)) {
                findings.at(child, "stands directly in a group; a viewer would draw only this one");
            }
        }
    }

    private void labels(ReadGroup group) {
        group.item().named(Concepts.COMMENT).forEach(comment -> {
            if (comment.value() instanceof ItemValue.Text text && text.text().length() > LONGEST_LABEL) {
                findings.at(comment, "is longer than " + LONGEST_LABEL + " characters");
            }
        });
    }

    private void frames(ReadGroup group) {
        Set<Instance> frames = new HashSet<>();
        group.item().walk().forEach(item -> {
            if (item.value() instanceof Image image) {
                frames.add(image.instance());
            }
        });
        if (frames.size() > 1) {
            findings.at(group.item(), "names " + frames.size() + " frames; a viewer draws all on the first");
        }
    }

    /** A mark that stands in several places is the same everywhere; an observation's drawn line is not its shaft marks. */
    private void marks(ReadGroup group) {
        Map<String, Coordinates> seen = new HashMap<>();
        Stream<ContentItem> numbers =
                group.is(Concepts.OBSERVATION) ? group.richNumbers() : group.item().children().stream();
        List<ContentItem> items = new ArrayList<>(
                numbers.flatMap(number -> number.children().stream()).toList());
        for (ContentItem item : items) {
            if (item.value() instanceof Coordinates coordinates && item.name().isPresent() && !drawnLine(group, item)) {
                Coordinates first = seen.putIfAbsent(item.name().get().value(), coordinates);
                if (first != null && !first.equals(coordinates)) {
                    findings.at(item, "differs from the same mark elsewhere in the group");
                }
            }
        }
    }

    private static boolean drawnLine(ReadGroup group, ContentItem item) {
        return group.is(Concepts.OBSERVATION) && item.isNamed(Concepts.PATH);
    }

    private void rich(ContentItem number) {
        Code exact = number.codeOf(Concepts.EQUIVALENT_MEANING).orElseThrow();
        Optional<Quantity> quantity = Quantity.known(exact);
        if (quantity.isEmpty()) {
            return; // the row's value set has said so
        }
        if (!number.isNamed(quantity.get().concept())) {
            findings.at(
                    number,
                    exact + " is not a " + number.name().map(Code::meaning).orElse("number without name"));
        }
        Numeric numeric = (Numeric) number.value();
        numeric.measured().ifPresent(measured -> unit(number, measured, quantity.get()));
        number.first(Concepts.UNCERTAINTY)
                .flatMap(item -> item.value() instanceof Numeric u ? u.measured() : Optional.empty())
                .ifPresent(measured -> unit(number, measured, quantity.get()));
        if (numeric.measured().isPresent() == numeric.qualifier().isPresent()) {
            findings.at(number, "has both a value and a qualifier, or neither");
        }
        number.codeOf(Concepts.WHY_ABSENT)
                .flatMap(Codes::known)
                .flatMap(entry -> entry.text("qualifier"))
                .map(Codes::named)
                .filter(wanted -> numeric.qualifier().filter(wanted::means).isEmpty())
                .ifPresent(wanted -> findings.at(number, "has not the qualifier " + wanted + " of its reason"));
    }

    private void unit(ContentItem number, Measured measured, Quantity quantity) {
        if (!measured.unit().means(quantity.unit())) {
            findings.at(
                    number,
                    "is in " + measured.unit().value() + "; " + quantity.code() + " is in "
                            + quantity.unit().value());
        }
    }
}
