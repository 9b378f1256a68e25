// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads what an object states about the scale of one frame; what the frame itself states goes before what all frames
 * share. Source: DICOM PS3.3, C.8.5.5 (regions), 10.7 (pixel spacing), C.7.6.16 (functional groups).
 */
final class FrameGeometryReader {
    private static final List<Integer> SPACINGS =
            List.of(Tag.PIXEL_SPACING, Tag.IMAGER_PIXEL_SPACING, Tag.NOMINAL_SCANNED_PIXEL_SPACING);

    private final DataSet header;
    private final List<DataSet> sources;

    /** @param frameNumber from 1 */
    FrameGeometryReader(DataSet header, int frameNumber) {
        this.header = header;
        this.sources = sources(header, frameNumber);
    }

    FrameGeometry read(PixelShape shape) {
        return new FrameGeometry(
                shape.columns(),
                shape.rows(),
                regions(shape),
                pixelSpacing(),
                Optional.empty(),
                equipment(),
                heightToWidth(),
                Optional.empty());
    }

    /** Vertical size of a pixel over its horizontal size. Source: DICOM PS3.3, C.7.6.3.1.7. */
    private OptionalDouble heightToWidth() {
        double[] ratio = header.numbers(Tag.PIXEL_ASPECT_RATIO);
        return ratio.length == 2 && usable(ratio[0]) && usable(ratio[1])
                ? OptionalDouble.of(ratio[0] / ratio[1])
                : OptionalDouble.empty();
    }

    /** The functional groups of the frame, those shared by all frames, the object itself. */
    static List<DataSet> sources(DataSet header, int frameNumber) {
        List<DataSet> sources = new ArrayList<>();
        List<DataSet> perFrame = header.items(Tag.PER_FRAME_FUNCTIONAL_GROUPS_SEQUENCE);
        if (frameNumber <= perFrame.size()) {
            addGroups(perFrame.get(frameNumber - 1), sources);
        }
        header.items(Tag.SHARED_FUNCTIONAL_GROUPS_SEQUENCE).forEach(shared -> addGroups(shared, sources));
        sources.add(header);
        return sources;
    }

    private static void addGroups(DataSet groups, List<DataSet> sources) {
        sources.add(groups);
        for (int tag : groups.tags()) {
            sources.addAll(groups.items(tag));
        }
    }

    private List<UltrasoundRegion> regions(PixelShape shape) {
        for (DataSet source : sources) {
            List<DataSet> items = source.items(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS);
            if (!items.isEmpty()) {
                List<UltrasoundRegion> regions = new ArrayList<>(items.size());
                for (int i = 0; i < items.size(); i++) {
                    regions.add(region(items.get(i), i, shape));
                }
                return regions;
            }
        }
        return List.of();
    }

    private static UltrasoundRegion region(DataSet item, int index, PixelShape shape) {
        return new UltrasoundRegion(
                bounds(item, index, shape),
                item.integer(Tag.REGION_SPATIAL_FORMAT).orElse(0),
                item.integer(Tag.REGION_DATA_TYPE).orElse(0),
                item.integer(Tag.REGION_FLAGS),
                item.integer(Tag.PHYSICAL_UNITS_X_DIRECTION).orElse(0),
                item.integer(Tag.PHYSICAL_UNITS_Y_DIRECTION).orElse(0),
                item.number(Tag.PHYSICAL_DELTA_X).orElse(0),
                item.number(Tag.PHYSICAL_DELTA_Y).orElse(0),
                item.integer(Tag.REFERENCE_PIXEL_X0),
                item.integer(Tag.REFERENCE_PIXEL_Y0),
                finite(item, Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_X),
                finite(item, Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_Y));
    }

    private static OptionalDouble finite(DataSet item, int tag) {
        OptionalDouble value = item.number(tag);
        return value.isPresent() && Double.isFinite(value.getAsDouble()) ? value : OptionalDouble.empty();
    }

    private static Region bounds(DataSet item, int index, PixelShape shape) {
        Region bounds = new Region(
                index,
                side(item, Tag.REGION_LOCATION_MIN_X0, index),
                side(item, Tag.REGION_LOCATION_MIN_Y0, index),
                side(item, Tag.REGION_LOCATION_MAX_X1, index),
                side(item, Tag.REGION_LOCATION_MAX_Y1, index));
        boolean empty = bounds.minColumn() > bounds.maxColumn() || bounds.minRow() > bounds.maxRow();
        boolean outside = bounds.minColumn() >= shape.columns() || bounds.minRow() >= shape.rows();
        if (empty || outside) {
            throw faulty(
                    index,
                    empty
                            ? "has its right or lower edge before its left or upper one"
                            : "lies outside the image of " + shape.columns() + " x " + shape.rows() + " pixels");
        }
        return bounds;
    }

    private static int side(DataSet item, int tag, int index) {
        OptionalInt side = item.integer(tag);
        if (side.isEmpty() || side.getAsInt() < 0) {
            throw faulty(index, "has no proper " + Fault.name(tag));
        }
        return side.getAsInt();
    }

    private static RuntimeException faulty(int index, String what) {
        return Fault.malformed(
                "Item " + (index + 1) + " of " + Fault.name(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS) + " " + what);
    }

    /** Rows first in the standard: the first value is the distance between rows. Source: DICOM PS3.3, 10.7.1.3. */
    private Optional<PixelSize> pixelSpacing() {
        for (DataSet source : sources) {
            for (int tag : SPACINGS) {
                double[] spacing = source.numbers(tag);
                if (spacing.length == 2 && usable(spacing[0]) && usable(spacing[1])) {
                    return Optional.of(new PixelSize(spacing[1], spacing[0]));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean usable(double spacing) {
        return spacing > 0 && Double.isFinite(spacing);
    }

    /** Without anything that names a device, the series: it comes from one scanner. */
    private String equipment() {
        List<String> names = new ArrayList<>();
        for (int tag :
                List.of(Tag.MANUFACTURER, Tag.MANUFACTURER_MODEL_NAME, Tag.DEVICE_SERIAL_NUMBER, Tag.TRANSDUCER_DATA)) {
            names.add(String.join("/", header.strings(tag)));
        }
        boolean named = header.string(Tag.DEVICE_SERIAL_NUMBER).isPresent()
                || header.string(Tag.MANUFACTURER_MODEL_NAME).isPresent();
        return named
                ? String.join("|", names)
                : "series|" + header.string(Tag.SERIES_INSTANCE_UID).orElse("");
    }
}
