// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.record.FrameRef;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Size and scale of the frames of a record as the record itself tells them, for a reader who has no frames. */
final class RecordedFrames {
    private static final int TISSUE_2D = 1;
    private static final int CM = 3;
    private static final double MM_PER_CM = 10;

    private final ContentItem root;
    private final List<ReadGroup> groups;

    RecordedFrames(ContentItem root) {
        this.root = root;
        groups = RecordReader.groups(root);
    }

    /**
     * One frame that the record names.
     *
     * @throws dev.plumbline.problem.Refusal when its image library does not say how large it is
     */
    FrameGeometry geometry(FrameRef ref) {
        FrameRef.Held held = (FrameRef.Held) ref;
        ContentItem entry = root.named(Concepts.IMAGE_LIBRARY)
                .flatMap(library -> library.named(Concepts.IMAGE_LIBRARY_GROUP))
                .flatMap(group -> group.children().stream())
                .filter(item -> item.value() instanceof Image image && isOf(image.instance(), held))
                .findFirst()
                .orElseThrow(RecordedFrames::unknownSize);
        JsonNode scale = groups.stream()
                .filter(group ->
                        group.frame().filter(instance -> isOf(instance, held)).isPresent())
                .map(group -> group.parameters().path("calibration"))
                .filter(JsonNode::isObject)
                .findFirst()
                .orElse(ReadGroup.emptyObject());
        return geometry(pixels(entry, "110911"), pixels(entry, "110910"), scale);
    }

    private static boolean isOf(Instance instance, FrameRef.Held held) {
        return instance.sopInstanceUid().equals(held.sopInstanceUid())
                && instance.frameNumber().orElse(1) == held.frameNumber();
    }

    private static int pixels(ContentItem entry, String concept) {
        return entry.named(Codes.dcm(concept))
                .flatMap(item -> item.value() instanceof Numeric number ? number.measured().stream() : Stream.of())
                .mapToInt(measured -> (int) measured.value())
                .findFirst()
                .orElseThrow(RecordedFrames::unknownSize);
    }

    private static RuntimeException unknownSize() {
        return Fault.unsupported(
                "The image library does not say how large every frame is", "Give a record that this program wrote");
    }

    private static FrameGeometry geometry(int columns, int rows, JsonNode scale) {
        Optional<PixelSize> pixel = scale.has("mmPerColumn")
                ? Optional.of(new PixelSize(
                        scale.path("mmPerColumn").doubleValue(),
                        scale.path("mmPerRow").doubleValue()))
                : Optional.empty();
        List<UltrasoundRegion> regions = pixel.filter(size -> scale.has("region")).stream()
                .map(size -> region(scale.get("region"), size))
                .toList();
        return new FrameGeometry(
                columns, rows, regions, Optional.empty(), regions.isEmpty() ? pixel : Optional.empty(), "recorded");
    }

    private static UltrasoundRegion region(JsonNode region, PixelSize pixel) {
        return new UltrasoundRegion(
                new Region(
                        0,
                        region.path("minColumn").intValue(),
                        region.path("minRow").intValue(),
                        region.path("maxColumn").intValue(),
                        region.path("maxRow").intValue()),
                TISSUE_2D,
                TISSUE_2D,
                OptionalInt.empty(),
                CM,
                CM,
                pixel.mmPerColumn() / MM_PER_CM,
                pixel.mmPerRow() / MM_PER_CM,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }
}
