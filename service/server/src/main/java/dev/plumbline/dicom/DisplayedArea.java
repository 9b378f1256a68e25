// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;

/**
 * The part of an image that a presentation state displays, and how points in fractions of it lie on the image. Corners are
 * numbers of pixels, the first being 1\1; both belong to the area.
 *
 * <p>{@code column = left - 1 + fx * (right - left + 1)}, rows likewise, (0, 0) being the outer corner of the top-left pixel.
 * Source: DICOM PS3.3 C.10.4 and C.10.5.1.2 (graphic annotation units DISPLAY).
 */
record DisplayedArea(double left, double top, double right, double bottom) {
    /**
     * The area of an image in a state.
     *
     * @param image SOP Instance UID
     * @return empty where the state has none, or turns or mirrors the image so that its fractions run otherwise
     */
    static Optional<DisplayedArea> of(DataSet state, String image) {
        boolean turned = state.integer(Tag.IMAGE_ROTATION).orElse(0) != 0
                || state.string(Tag.IMAGE_HORIZONTAL_FLIP).filter("Y"::equals).isPresent();
        return turned
                ? Optional.empty()
                : state.items(Tag.DISPLAYED_AREA_SELECTION_SEQUENCE).stream()
                        .filter(area -> isOf(area, image))
                        .findFirst()
                        .flatMap(DisplayedArea::of);
    }

    /** An area that names no images is that of all. */
    private static boolean isOf(DataSet area, String image) {
        List<DataSet> named = area.items(Tag.REFERENCED_IMAGE_SEQUENCE);
        return named.isEmpty()
                || named.stream()
                        .anyMatch(each -> each.string(Tag.REFERENCED_SOP_INSTANCE_UID)
                                .filter(image::equals)
                                .isPresent());
    }

    private static Optional<DisplayedArea> of(DataSet area) {
        double[] from = area.numbers(Tag.DISPLAYED_AREA_TOP_LEFT_HAND_CORNER);
        double[] to = area.numbers(Tag.DISPLAYED_AREA_BOTTOM_RIGHT_HAND_CORNER);
        boolean whole = from.length == 2 && to.length == 2 && from[0] <= to[0] && from[1] <= to[1];
        return whole ? Optional.of(new DisplayedArea(from[0], from[1], to[0], to[1])) : Optional.empty();
    }

    /** @param fraction column and row from 0 to 1 */
    PointPx onImage(PointPx fraction) {
        return new PointPx(
                left - 1 + fraction.column() * (right - left + 1), top - 1 + fraction.row() * (bottom - top + 1));
    }
}
