// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark;
import dev.plumbline.intake.ForeignMark.Form;
import dev.plumbline.intake.ForeignMark.Kind;
import dev.plumbline.intake.ForeignMark.Label;
import dev.plumbline.intake.ForeignObject;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The coordinates in a structured report of other software, with everything said of them nearby.
 *
 * <p>Every SCOORD is a candidate, by value or by reference, whatever template the report follows. Its image is the one
 * selected from it; where none is, the only image the report names.
 */
final class ForeignReport {
    private static final Code FINDING = new Code("121071", "DCM", "Finding");
    private static final Code TRACKING = new Code("112039", "DCM", "Tracking Identifier");
    private static final Code COMMENT = new Code("121106", "DCM", "Comment");
    private static final Code EQUIVALENT_MEANING = new Code("121050", "DCM", "Equivalent Meaning of Concept Name");
    private static final Code CENTRE = new Code("111010", "DCM", "Center");
    private static final List<Code> SITES =
            List.of(new Code("363698007", "SCT", "Finding Site"), new Code("G-C0E3", "SRT", "Finding Site"));
    /** Within a group these say something of the coordinates beside them. */
    private static final List<Said> NEARBY = List.of(
            new Said(COMMENT, Kind.COMMENT), new Said(FINDING, Kind.FINDING), new Said(TRACKING, Kind.TRACKING));

    private record Said(Code name, Kind kind) {}

    private final ForeignTree tree;
    private final DataSet document;

    private ForeignReport(DataSet document) {
        this.document = document;
        tree = ForeignTree.of(document);
    }

    /**
     * Reads a report.
     *
     * @throws dev.plumbline.problem.Refusal when the tree is too large, refers to itself, or holds coordinates that are no
     *     plane points
     */
    static ForeignObject read(DataSet document) {
        return new ForeignReport(document).read();
    }

    private ForeignObject read() {
        Set<ForeignMark> marks = new LinkedHashSet<>();
        for (ForeignTree.Node node : tree.nodes()) {
            String type = node.item().string(Tag.VALUE_TYPE).orElse("");
            if (type.equals("SCOORD3D")) {
                throw Fault.unsupported(
                        "Item " + node.place()
                                + " holds coordinates in space (SCOORD3D), which no frame of ultrasound has",
                        "Draw on the frame, so that coordinates are in pixels (SCOORD).");
            }
            if (type.equals("SCOORD")) {
                marks.add(mark(node));
            }
        }
        List<String> predecessors = document.items(Tag.PREDECESSOR_DOCUMENTS_SEQUENCE).stream()
                .flatMap(study -> study.items(Tag.REFERENCED_SERIES_SEQUENCE).stream())
                .flatMap(series -> series.items(Tag.REFERENCED_SOP_SEQUENCE).stream())
                .flatMap(reference -> reference.string(Tag.REFERENCED_SOP_INSTANCE_UID).stream())
                .toList();
        return new ForeignObject(document.string(Tag.SOP_INSTANCE_UID).orElseThrow(), predecessors, List.copyOf(marks));
    }

    private ForeignMark mark(ForeignTree.Node node) {
        ItemValue value = ItemReader.value(node.item());
        if (!(value instanceof Coordinates coordinates)) {
            String why = value instanceof ItemValue.Unreadable unreadable ? unreadable.why() : "it cannot be read";
            throw Fault.unsupported(
                    "Item " + node.place() + " is refused: " + why, "Send the report again from its source.");
        }
        Optional<Measured> measured = measurement(node);
        Optional<Instance> own = selected(node);
        Instance image = own.orElseGet(() -> onlyImage(node));
        return new ForeignMark(
                "item " + node.place(),
                image.sopInstanceUid(),
                image.frameNumber().stream().boxed().toList(),
                form(node, coordinates, measured),
                points(node, coordinates),
                labels(node),
                measured.map(number ->
                        new ForeignMark.Stated(number.value(), number.unit().value())),
                own.isEmpty());
    }

    /** Nodes that use these coordinates: the parent, and those that refer to them. */
    private List<ForeignTree.Node> users(ForeignTree.Node node) {
        List<ForeignTree.Node> users = new ArrayList<>(tree.referrers(node));
        node.parent().ifPresent(parent -> users.add(0, parent));
        return users;
    }

    private Optional<Measured> measurement(ForeignTree.Node node) {
        for (ForeignTree.Node user : users(node)) {
            if (user.item().string(Tag.VALUE_TYPE).filter("NUM"::equals).isPresent()
                    && ItemReader.value(user.item()) instanceof Numeric number
                    && number.measured().isPresent()) {
                return number.measured();
            }
        }
        return Optional.empty();
    }

    private Form form(ForeignTree.Node node, Coordinates coordinates, Optional<Measured> measured) {
        int count = coordinates.points().size();
        if (coordinates.type() == GraphicType.POINT || isCentre(node)) {
            return Form.POINT;
        }
        if (coordinates.type() == GraphicType.CIRCLE || coordinates.type() == GraphicType.ELLIPSE) {
            int needed = coordinates.type() == GraphicType.CIRCLE ? 2 : 4;
            require(node, count == needed, coordinates.type() + " has " + needed + " points");
            return coordinates.type() == GraphicType.CIRCLE ? Form.CIRCLE : Form.ELLIPSE;
        }
        require(node, count >= 2, "a line has two points or more");
        boolean degrees =
                measured.filter(number -> number.unit().value().equals("deg")).isPresent();
        if (degrees && (count == 3 || count == 4)) {
            return Form.ANGLE;
        }
        return count == 2 ? Form.LINE : isClosed(coordinates.points()) ? Form.OUTLINE : Form.POLYLINE;
    }

    /** An arrow or probe: the number is a placeholder, the first point is what is meant. */
    private boolean isCentre(ForeignTree.Node node) {
        return users(node).stream()
                .flatMap(user -> ItemReader.code(user.item(), Tag.CONCEPT_NAME_CODE_SEQUENCE).stream())
                .anyMatch(CENTRE::means);
    }

    private static boolean isClosed(List<PointPx> points) {
        return points.size() > 3 && points.get(0).equals(points.get(points.size() - 1));
    }

    private static List<PointPx> points(ForeignTree.Node node, Coordinates coordinates) {
        List<PointPx> points = coordinates.points();
        require(node, !points.isEmpty(), "it has at least one point");
        return isClosed(points) && coordinates.type() == GraphicType.POLYLINE
                ? points.subList(0, points.size() - 1)
                : points;
    }

    private static void require(ForeignTree.Node node, boolean holds, String rule) {
        if (!holds) {
            throw Fault.unsupported(
                    "Item " + node.place() + " is refused: " + rule, "Send the report again from its source.");
        }
    }

    private Optional<Instance> selected(ForeignTree.Node node) {
        for (ForeignTree.Node child : tree.children(node)) {
            if (ItemReader.value(tree.resolved(child).item()) instanceof Image image) {
                return Optional.of(image.instance());
            }
        }
        return Optional.empty();
    }

    private Instance onlyImage(ForeignTree.Node node) {
        Set<Instance> named = new HashSet<>();
        for (ForeignTree.Node any : tree.nodes()) {
            if (any.item().string(Tag.VALUE_TYPE).filter("IMAGE"::equals).isPresent()
                    && ItemReader.value(any.item()) instanceof Image image) {
                named.add(image.instance());
            }
        }
        if (named.size() != 1) {
            throw Fault.unsupported(
                    "Item " + node.place() + " does not say on which image it is drawn",
                    "Draw the mark on an image and send the report again.");
        }
        return named.iterator().next();
    }

    private List<Label> labels(ForeignTree.Node node) {
        Set<Label> labels = new LinkedHashSet<>();
        concept(node).ifPresent(labels::add);
        for (ForeignTree.Node user : users(node)) {
            for (Optional<ForeignTree.Node> at = Optional.of(user);
                    at.isPresent();
                    at = at.get().parent()) {
                concept(at.get()).ifPresent(labels::add);
                exact(at.get(), labels);
                around(at.get(), labels);
                if (isContainer(at.get())) {
                    break; // what is farther away speaks of other things too
                }
            }
        }
        return List.copyOf(labels);
    }

    private static boolean isContainer(ForeignTree.Node node) {
        return node.item().string(Tag.VALUE_TYPE).filter("CONTAINER"::equals).isPresent();
    }

    private Optional<Label> concept(ForeignTree.Node node) {
        Kind kind = isContainer(node) ? Kind.CONTAINER : Kind.CONCEPT;
        return ItemReader.code(node.item(), Tag.CONCEPT_NAME_CODE_SEQUENCE).map(code -> coded(kind, code));
    }

    /** What a number with a general concept is exactly. */
    private void exact(ForeignTree.Node node, Set<Label> labels) {
        for (ForeignTree.Node child : tree.children(node)) {
            if (isNamed(child, EQUIVALENT_MEANING)) {
                label(child, Kind.CONCEPT).ifPresent(labels::add);
            }
        }
    }

    private void around(ForeignTree.Node node, Set<Label> labels) {
        for (Said said : NEARBY) {
            for (ForeignTree.Node child : tree.children(node)) {
                if (isNamed(child, said.name())) {
                    label(child, said.kind()).ifPresent(labels::add);
                }
            }
        }
        for (ForeignTree.Node child : tree.children(node)) {
            if (SITES.stream().anyMatch(site -> isNamed(child, site))) {
                label(child, Kind.SITE).ifPresent(labels::add);
            }
        }
    }

    private static boolean isNamed(ForeignTree.Node node, Code name) {
        return ItemReader.code(node.item(), Tag.CONCEPT_NAME_CODE_SEQUENCE)
                .filter(name::means)
                .isPresent();
    }

    private static Optional<Label> label(ForeignTree.Node node, Kind kind) {
        ItemValue value = ItemReader.value(node.item());
        if (value instanceof ItemValue.Text text) {
            return Optional.of(Label.words(kind, text.text()));
        }
        return value instanceof ItemValue.Coded coded ? Optional.of(coded(kind, coded.code())) : Optional.empty();
    }

    private static Label coded(Kind kind, Code code) {
        return new Label(kind, code.meaning(), Optional.of(new ForeignMark.Coded(code.value(), code.scheme())));
    }
}
