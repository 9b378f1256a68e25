// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One item of the Sequence of Ultrasound Regions (0018,6011) as it stands in the object, DICOM PS3.3 C.8.5.5.
 *
 * @param spatialFormat (0018,6012); 1 is 2D
 * @param dataType (0018,6014); 1 is tissue
 * @param flags (0018,6016); bit 0 clear means this region has priority over others it overlaps
 * @param unitsX (0018,6024); 3 is cm
 * @param unitsY (0018,6026); 3 is cm
 * @param deltaX signed physical extent of a pixel (0018,602C), in {@code unitsX}
 * @param deltaY signed physical extent of a pixel (0018,602E), in {@code unitsY}
 * @param referenceColumn (0018,6020) relative to the region's left edge
 * @param referenceRow (0018,6022) relative to the region's top edge
 * @param referenceX physical value at the reference column (0018,6028)
 * @param referenceY physical value at the reference row (0018,602A)
 */
public record UltrasoundRegion(
        Region bounds,
        int spatialFormat,
        int dataType,
        OptionalInt flags,
        int unitsX,
        int unitsY,
        double deltaX,
        double deltaY,
        OptionalInt referenceColumn,
        OptionalInt referenceRow,
        OptionalDouble referenceX,
        OptionalDouble referenceY) {
    private static final int FORMAT_2D = 1;
    private static final int TISSUE = 1;
    private static final int CM = 3;
    private static final double MM_PER_CM = 10;

    /** Why lengths cannot be measured in this region, in words; empty when they can. */
    public Optional<String> whyUnusable() {
        if (spatialFormat != FORMAT_2D) {
            return Optional.of("its spatial format (0018,6012) is " + spatialFormat + ", not 1 (2D)");
        }
        if (dataType != TISSUE) {
            return Optional.of("its data type (0018,6014) is " + dataType + ", not 1 (tissue)");
        }
        if (unitsX != CM || unitsY != CM) {
            return Optional.of(
                    "its physical units (0018,6024) and (0018,6026) are " + unitsX + " and " + unitsY + ", not 3 (cm)");
        }
        if (deltaX == 0 || deltaY == 0 || !Double.isFinite(deltaX) || !Double.isFinite(deltaY)) {
            return Optional.of("a physical delta (0018,602C) or (0018,602E) is zero or not a number");
        }
        return Optional.empty();
    }

    /** Size of a pixel in millimetres on the display's axes; signs only say which way the physical axes run. */
    public PixelSize pixelSize() {
        return new PixelSize(Math.abs(deltaX) * MM_PER_CM, Math.abs(deltaY) * MM_PER_CM);
    }

    /** A region with priority wins where two overlap; without flags there is none. */
    public boolean hasPriority() {
        return flags.isPresent() && (flags.getAsInt() & 1) == 0;
    }
}
