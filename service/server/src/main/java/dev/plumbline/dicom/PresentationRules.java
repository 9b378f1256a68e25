// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What no other program looks at in a presentation state: that every layer used is defined and in order, that points lie on
 * the displayed area, which counts from 1\1, that frames are named where there are several, and that a colour state carries
 * an input profile.
 */
final class PresentationRules {
    private static final String GREY = ObjectHeader.Kind.GREY_PRESENTATION.sopClassUid();
    private static final Set<Integer> OBJECTS = Set.of(Tag.GRAPHIC_OBJECT_SEQUENCE, Tag.TEXT_OBJECT_SEQUENCE);

    private final DataSet state;
    private final TemplateCheck.FrameCounts counts;
    private final Findings findings;

    PresentationRules(DataSet state, TemplateCheck.FrameCounts counts, Findings findings) {
        this.state = state;
        this.counts = counts;
        this.findings = findings;
    }

    /** The largest column and row of the displayed areas, which hold for the images of the state. */
    private record Area(double columns, double rows) {
        boolean holds(double column, double row) {
            return 0 <= column && column <= columns && 0 <= row && row <= rows;
        }
    }

    void check() {
        output();
        references();
        Optional<Area> area = displayedArea();
        Set<String> layers = layers();
        List<DataSet> annotations = state.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE);
        if (annotations.isEmpty()) {
            findings.at(Tag.GRAPHIC_ANNOTATION_SEQUENCE, "draws nothing");
        }
        for (int i = 0; i < annotations.size(); i++) {
            annotation(annotations.get(i), ItemPath.of(Tag.GRAPHIC_ANNOTATION_SEQUENCE, i), layers, area);
        }
    }

    private void output() {
        if (state.string(Tag.SOP_CLASS_UID).filter(GREY::equals).isPresent()) {
            String shape = state.string(Tag.PRESENTATION_LUT_SHAPE).orElse("");
            if (!Set.of("IDENTITY", "INVERSE").contains(shape)) {
                findings.at(Tag.PRESENTATION_LUT_SHAPE, "is neither IDENTITY nor INVERSE");
            }
            return;
        }
        byte[] profile = state.bytes(Tag.ICC_PROFILE);
        String deviceClass = ColourProfile.deviceClass(profile);
        if (!deviceClass.equals(ColourProfile.INPUT)) {
            findings.at(
                    Tag.ICC_PROFILE,
                    profile.length == 0
                            ? "is missing"
                            : "is a profile of class \"" + deviceClass.replaceAll("[^ -~]", "?")
                                    + "\"; a presentation state needs an input profile, scnr");
        }
    }

    private void references() {
        List<DataSet> images = state.items(Tag.REFERENCED_SERIES_SEQUENCE).stream()
                .flatMap(series -> series.items(Tag.REFERENCED_IMAGE_SEQUENCE).stream())
                .toList();
        if (images.isEmpty()) {
            findings.at(Tag.REFERENCED_SERIES_SEQUENCE, "names no image");
        }
        images.forEach(image -> frame(image, Fault.name(Tag.REFERENCED_SERIES_SEQUENCE)));
    }

    private void frame(DataSet image, String place) {
        boolean several = image.string(Tag.REFERENCED_SOP_CLASS_UID)
                .filter(CoordinateRules.MULTI_FRAME::equals)
                .isPresent();
        List<String> frames = image.strings(Tag.REFERENCED_FRAME_NUMBER);
        if (several && frames.isEmpty()) {
            findings.at(place, "names an object with frames and no frame of it");
        }
        int most = image.string(Tag.REFERENCED_SOP_INSTANCE_UID).map(counts::of).stream()
                .flatMapToInt(OptionalInt::stream)
                .findFirst()
                .orElse(Integer.MAX_VALUE);
        if (frames.stream().anyMatch(number -> !number.matches("0*[1-9]\\d{0,8}") || Integer.parseInt(number) > most)) {
            findings.at(place, "names a frame that does not exist");
        }
    }

    private Optional<Area> displayedArea() {
        double columns = 0;
        double rows = 0;
        List<DataSet> areas = state.items(Tag.DISPLAYED_AREA_SELECTION_SEQUENCE);
        for (int i = 0; i < areas.size(); i++) {
            String place = ItemPath.of(Tag.DISPLAYED_AREA_SELECTION_SEQUENCE, i);
            double[] from = areas.get(i).numbers(Tag.DISPLAYED_AREA_TOP_LEFT_HAND_CORNER);
            double[] to = areas.get(i).numbers(Tag.DISPLAYED_AREA_BOTTOM_RIGHT_HAND_CORNER);
            if (from.length != 2 || to.length != 2) {
                findings.at(place, "has not two corners of two numbers each");
                continue;
            }
            if (from[0] < 1 || from[1] < 1) {
                findings.at(place, "begins before 1\\1; the first pixel of an image is 1\\1");
            }
            if (to[0] < from[0] || to[1] < from[1]) {
                findings.at(place, "ends before it begins");
            }
            areas.get(i).items(Tag.REFERENCED_IMAGE_SEQUENCE).forEach(image -> frame(image, place));
            columns = Math.max(columns, to[0]);
            rows = Math.max(rows, to[1]);
        }
        return areas.isEmpty() ? Optional.empty() : Optional.of(new Area(columns, rows));
    }

    private Set<String> layers() {
        List<DataSet> layers = state.items(Tag.GRAPHIC_LAYER_SEQUENCE);
        Set<String> orders = layers.stream()
                .map(layer -> layer.string(Tag.GRAPHIC_LAYER_ORDER).orElse(""))
                .collect(Collectors.toSet());
        if (orders.size() < layers.size()) {
            findings.at(Tag.GRAPHIC_LAYER_SEQUENCE, "gives two layers the same place");
        }
        return layers.stream()
                .flatMap(layer -> layer.string(Tag.GRAPHIC_LAYER).stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private void annotation(DataSet annotation, String place, Set<String> layers, Optional<Area> area) {
        String layer = annotation.string(Tag.GRAPHIC_LAYER).orElse("");
        if (!layers.contains(layer)) {
            findings.at(place, "stands on the layer \"" + layer + "\", which is not defined");
        }
        annotation.items(Tag.REFERENCED_IMAGE_SEQUENCE).forEach(image -> frame(image, place));
        for (int tag : OBJECTS) {
            List<DataSet> objects = annotation.items(tag);
            for (int i = 0; i < objects.size(); i++) {
                object(objects.get(i), place + " > " + ItemPath.of(tag, i), area);
            }
        }
    }

    private void object(DataSet object, String place, Optional<Area> area) {
        if (object.string(Tag.TRACKING_ID).isPresent()
                != object.string(Tag.TRACKING_UID).isPresent()) {
            findings.at(place, "has a tracking identifier without its UID, or the other way round");
        }
        if (object.holds(Tag.GRAPHIC_TYPE)) {
            graphic(object, place, area);
        } else if (object.holds(Tag.ANCHOR_POINT)) {
            points(object, Tag.ANCHOR_POINT, Tag.ANCHOR_POINT_ANNOTATION_UNITS, new Seen(place, area));
        } else if (!object.holds(Tag.BOUNDING_BOX_TOP_LEFT_HAND_CORNER)) {
            findings.at(place, "has words and no place for them");
        }
    }

    private void graphic(DataSet object, String place, Optional<Area> area) {
        int numbers = object.numbers(Tag.GRAPHIC_DATA).length;
        int stated = object.integer(Tag.NUMBER_OF_GRAPHIC_POINTS).orElse(0)
                * object.integer(Tag.GRAPHIC_DIMENSIONS).orElse(0);
        if (numbers == 0 || numbers != stated) {
            findings.at(place, "states " + stated + " coordinates and has " + numbers);
        }
        boolean line =
                object.string(Tag.GRAPHIC_TYPE).filter("POLYLINE"::equals).isPresent();
        if (line && numbers < 4) {
            findings.at(place, "is a POLYLINE of one point");
        }
        points(object, Tag.GRAPHIC_DATA, Tag.GRAPHIC_ANNOTATION_UNITS, new Seen(place, area));
    }

    private record Seen(String place, Optional<Area> area) {}

    private void points(DataSet object, int tag, int unitsTag, Seen seen) {
        double[] data = object.numbers(tag);
        boolean pixels = object.string(unitsTag).filter("PIXEL"::equals).isPresent();
        Optional<Area> limit = pixels ? seen.area() : Optional.of(new Area(1, 1));
        for (int i = 0; i + 1 < data.length; i += 2) {
            double column = data[i];
            double row = data[i + 1];
            if (limit.filter(area -> !area.holds(column, row)).isPresent()) {
                findings.at(seen.place(), "has a point outside the image");
                return;
            }
        }
    }
}
