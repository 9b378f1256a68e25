// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.record.CaseDocument;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A structured report of this program as the case document it was made from: parameters, marks, image references, procedure
 * details and signature give back exactly what was stated. Computed numbers are not read; they are computed again.
 */
public final class RecordReader {
    private static final Pattern LAST_NUMBER = Pattern.compile("(\\d+)$");

    private final DataSet report;
    private final ContentItem root;
    private final List<ReadGroup> groups;

    private RecordReader(DataSet report) {
        this.report = report;
        root = ContentReader.read(report);
        groups = groups(root);
    }

    /**
     * The case document of a record.
     *
     * @throws dev.plumbline.problem.Refusal when the object is no record of this program, or its parts do not make a case
     *     document
     */
    public static CaseDocument read(DataSet report) {
        return new RecordReader(report).read();
    }

    /** Every measurement group of a report, those with nothing to draw included. */
    static List<ReadGroup> groups(ContentItem root) {
        Stream<ContentItem> drawn = root.named(Concepts.IMAGING_MEASUREMENTS)
                .flatMap(container -> container.named(Concepts.MEASUREMENT_GROUP));
        Stream<ContentItem> undrawn = root.named(Concepts.PROCEDURE)
                .flatMap(details -> details.named(Concepts.UNDRAWN))
                .flatMap(container -> container.named(Concepts.UNDRAWN_GROUP));
        return Stream.concat(drawn, undrawn).map(ReadGroup::new).toList();
    }

    private CaseDocument read() {
        ReadGroup plan = groups.stream()
                .filter(group -> group.is(Concepts.PLAN))
                .findFirst()
                .orElseThrow(() -> Fault.unsupported(
                        "The report has no planned needle path, so it is no record of this program",
                        "Give a record that this program wrote"));
        ContentItem details = root.first(Concepts.PROCEDURE)
                .orElseThrow(() -> Fault.unsupported(
                        "The report has no procedure details, so it is no record of this program",
                        "Give a record that this program wrote"));
        ObjectNode json = planned(plan);
        json.set("observations", observations());
        root.first(Concepts.EVALUATIONS)
                .flatMap(evaluations -> evaluations.textOf(Concepts.IMPRESSION))
                .ifPresent(text -> json.put("impression", text));
        new ReadDetails(report, details).into(json);
        OrderAttributes.restore(report, json);
        ImageLibrary.read(root, json);
        return CaseJson.read(json, Door.HTTP);
    }

    /** The frame is referenced; the parameters hold the scale that a person stated for it, if any. */
    private static void putFrame(ReadGroup group, ObjectNode json) {
        JsonNode stated = json.path("frame").path("scale");
        json.remove("frame");
        group.frame().ifPresent(instance -> {
            ObjectNode frame = ReadGroup.frame(instance);
            if (!stated.isMissingNode()) {
                frame.set("scale", stated);
            }
            json.set("frame", frame);
        });
    }

    private ObjectNode planned(ReadGroup plan) {
        ObjectNode json = plan.parameters();
        json.remove("calibration");
        ObjectNode marks = json.putObject("marks");
        plan.points(Concepts.TARGET).stream().findFirst().ifPresent(at -> marks.set("target", ReadGroup.point(at)));
        Optional.ofNullable(json.remove("targetKind")).ifPresent(kind -> marks.set("targetKind", kind));
        marks.set("skin", ReadGroup.array(plan.points(Concepts.SKIN)));
        marks.set("hazards", structures(json.remove("hazards"), Concepts.HAZARD, Codes.own("M-HAZARD")));
        marks.set("nerves", structures(json.remove("nerves"), Concepts.NERVE, Codes.own("M-NERVE")));
        plan.points(Concepts.MIDPOINT).stream()
                .findFirst()
                .ifPresent(at -> json.withObjectProperty("probe").set("midpoint", ReadGroup.point(at)));
        putFrame(plan, json);
        Repeats.restore(json);
        return json;
    }

    /** Names and margins stand in the plan's parameters, shapes in groups of their own, in the same order. */
    private ArrayNode structures(@org.jspecify.annotations.Nullable JsonNode stated, Code finding, Code outline) {
        ArrayNode structures = ReadGroup.array(List.of());
        if (stated == null) {
            return structures;
        }
        List<ReadGroup> drawn =
                groups.stream().filter(group -> group.is(finding)).toList();
        for (int i = 0; i < stated.size() && i < drawn.size(); i++) {
            ObjectNode structure = stated.get(i).deepCopy();
            JsonNode radius = structure.remove("radiusMm");
            if (radius == null) {
                List<PointPx> closed = drawn.get(i).points(outline);
                structure.set("outline", ReadGroup.array(closed.subList(0, Math.max(0, closed.size() - 1))));
            } else {
                ObjectNode disc = structure.putObject("disc");
                disc.set("radiusMm", radius);
                drawn.get(i).points(Concepts.CENTRE).stream()
                        .findFirst()
                        .ifPresent(at -> disc.set("center", ReadGroup.point(at)));
            }
            structures.add(structure);
        }
        return structures;
    }

    private ArrayNode observations() {
        ArrayNode observations = ReadGroup.array(List.of());
        groups.stream()
                .filter(group -> group.is(Concepts.OBSERVATION))
                .sorted(Comparator.comparingInt(group -> number(group.label())))
                .forEach(group -> observations.add(observation(group)));
        return observations;
    }

    /** Undrawn observations stand elsewhere; the number in the label keeps the order of the case. */
    private static int number(String label) {
        Matcher matcher = LAST_NUMBER.matcher(label);
        return matcher.find() && matcher.group().length() < 9 ? Integer.parseInt(matcher.group()) : Integer.MAX_VALUE;
    }

    private static ObjectNode observation(ReadGroup group) {
        ObjectNode json = group.parameters();
        json.remove("calibration");
        putFrame(group, json);
        json.set("shaft", ReadGroup.array(group.points(Quantity.of("Q-ANGSKIN"), Concepts.PATH)));
        json.set("skin", ReadGroup.array(group.points(Concepts.SKIN)));
        Stream.of(Concepts.CROSSING, Concepts.TIP, Concepts.SEEN_END)
                .flatMap(name -> group.points(name).stream())
                .findFirst()
                .ifPresent(at -> json.set("tip", ReadGroup.point(at)));
        group.points(Concepts.MIDPOINT).stream().findFirst().ifPresent(at -> json.set("midpoint", ReadGroup.point(at)));
        group.points(Concepts.TARGET).stream().findFirst().ifPresent(at -> json.set("target", ReadGroup.point(at)));
        Repeats.restore(json);
        return json;
    }
}
