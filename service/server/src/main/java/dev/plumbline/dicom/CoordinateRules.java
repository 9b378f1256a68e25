// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.geometry.PointPx;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Points lie on the image they name, lines have two of them, and frames are named exactly where there are several. */
final class CoordinateRules {
    private static final Code ROWS = Codes.dcm("110910");
    private static final Code COLUMNS = Codes.dcm("110911");
    static final String MULTI_FRAME = "1.2.840.10008.5.1.4.1.1.3.1";
    private static final String SINGLE_FRAME = "1.2.840.10008.5.1.4.1.1.6.1";

    private final ContentItem root;
    private final TemplateCheck.FrameCounts counts;
    private final Findings findings;
    private final Map<Instance, Size> sizes = new HashMap<>();
    private final Map<String, Integer> stated = new HashMap<>();

    CoordinateRules(ContentItem root, TemplateCheck.FrameCounts counts, Findings findings) {
        this.root = root;
        this.counts = counts;
        this.findings = findings;
    }

    private record Size(double columns, double rows) {
        boolean holds(PointPx at) {
            return 0 <= at.column() && at.column() <= columns && 0 <= at.row() && at.row() <= rows;
        }
    }

    void check() {
        root.named(Concepts.IMAGE_LIBRARY)
                .flatMap(library -> library.named(Concepts.IMAGE_LIBRARY_GROUP))
                .flatMap(group -> group.children().stream())
                .forEach(this::remember);
        root.walk().forEach(item -> {
            if (item.value() instanceof Image image) {
                frame(item, image.instance());
            } else if (item.value() instanceof Coordinates coordinates) {
                coordinates(item, coordinates);
            }
        });
    }

    private void remember(ContentItem entry) {
        if (entry.value() instanceof Image image) {
            Optional<Double> columns = number(entry, COLUMNS);
            Optional<Double> rows = number(entry, ROWS);
            if (columns.isPresent() && rows.isPresent()) {
                sizes.put(image.instance(), new Size(columns.get(), rows.get()));
            }
            number(entry, ImageLibrary.FRAMES).ifPresent(count -> frames(entry, image.instance(), count));
        }
    }

    private void frames(ContentItem entry, Instance instance, double count) {
        OptionalInt known = counts.of(instance.sopInstanceUid());
        Integer before = stated.put(instance.sopInstanceUid(), (int) count);
        if (count != known.orElse((int) count) || (before != null && before != count)) {
            findings.at(entry, "says of an object that it has " + (int) count + " frames, which it has not");
        }
    }

    /** As the object itself has it, else as the image library says. */
    private OptionalInt count(Instance instance) {
        OptionalInt known = counts.of(instance.sopInstanceUid());
        Integer said = stated.get(instance.sopInstanceUid());
        return known.isPresent() || said == null ? known : OptionalInt.of(said);
    }

    private static Optional<Double> number(ContentItem entry, Code concept) {
        return entry.first(concept)
                .flatMap(item -> item.value() instanceof Numeric numeric ? numeric.measured() : Optional.empty())
                .map(ItemValue.Measured::value);
    }

    private void frame(ContentItem item, Instance instance) {
        OptionalInt number = instance.frameNumber();
        OptionalInt count = count(instance);
        boolean several = instance.sopClassUid().equals(MULTI_FRAME) || count.orElse(0) > 1;
        if (number.isEmpty() && several) {
            findings.at(item, "names an object with frames and no frame of it");
        }
        if (number.isPresent() && instance.sopClassUid().equals(SINGLE_FRAME)) {
            findings.at(item, "names a frame of an object that has no frames");
        }
        if (number.isPresent() && (number.getAsInt() < 1 || number.getAsInt() > count.orElse(Integer.MAX_VALUE))) {
            findings.at(item, "names frame " + number.getAsInt() + ", which does not exist");
        }
    }

    private void coordinates(ContentItem item, Coordinates coordinates) {
        int points = coordinates.points().size();
        if (coordinates.type() == GraphicType.POINT && points != 1) {
            findings.at(item, "is a POINT of " + points + " points");
        }
        if (coordinates.type() == GraphicType.POLYLINE && points < 2) {
            findings.at(item, "is a POLYLINE of one point");
        }
        for (ContentItem child : item.children()) {
            if (child.value() instanceof Image image) {
                Size size = sizes.get(image.instance());
                if (size == null) {
                    findings.at(child, "is not in the image library");
                } else if (!coordinates.points().stream().allMatch(size::holds)) {
                    findings.at(item, "lies outside the image");
                }
            }
        }
    }
}
