// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Frames that are well-formed but unfit for a measurement, and cases on them, for tests at every door. */
public final class UnfitFrames {
    private static final int ROWS = 300;
    private static final int COLUMNS = 400;

    private UnfitFrames() {}

    /** A picture that nothing tells the scale of. */
    public static byte[] withoutScale() {
        return DicomFile.encode(picture(1));
    }

    /** Two views side by side, each 0.02 cm per pixel; columns 0 to 199 and 200 to 399. */
    public static byte[] dualView() {
        return DicomFile.encode(
                picture(2).put(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS, List.of(region(0, 199), region(200, 399))));
    }

    /** What describes a picture, and no pixels. */
    public static byte[] withoutPixels() {
        return DicomFile.encode(InventedObjects.document(3, 1, 1, new byte[10])
                .put(Tag.SOP_CLASS_UID, InventedObjects.ULTRASOUND)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS));
    }

    private static DataSet picture(int study) {
        byte[] pixels = new byte[ROWS * COLUMNS];
        Arrays.fill(pixels, (byte) 60);
        return InventedObjects.image(study, 1, 1)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.PIXEL_DATA, pixels);
    }

    private static DataSet region(int minColumn, int maxColumn) {
        return new DataSet()
                .put(Tag.REGION_SPATIAL_FORMAT, 1)
                .put(Tag.REGION_DATA_TYPE, 1)
                .put(Tag.REGION_FLAGS, 0)
                .put(Tag.REGION_LOCATION_MIN_X0, minColumn)
                .put(Tag.REGION_LOCATION_MIN_Y0, 0)
                .put(Tag.REGION_LOCATION_MAX_X1, maxColumn)
                .put(Tag.REGION_LOCATION_MAX_Y1, ROWS - 1)
                .put(Tag.PHYSICAL_UNITS_X_DIRECTION, 3)
                .put(Tag.PHYSICAL_UNITS_Y_DIRECTION, 3)
                .put(Tag.PHYSICAL_DELTA_X, 0.02)
                .put(Tag.PHYSICAL_DELTA_Y, 0.02);
    }

    /** SOP Instance UID of the dual view; {@link #withoutScale} has the study 1. */
    public static String uid(int study) {
        return InventedObjects.instanceUid(study, 1, 1);
    }

    /**
     * A case whose target lies in the left half and whose shaft begins at a column.
     *
     * @param frame as the case names it
     */
    public static String caseOn(String frame, double targetRow, double shaftColumn, double shaftLength) {
        String form = """
                {"schema":"plumbline-case/1","approach":"inPlane","frame":%s,
                 "probe":{"kind":"linear","footprintMm":30,"midpoint":{"column":100,"row":10},"needleSide":"right"},
                 "marks":{"target":{"column":100,"row":%s},"skin":[{"column":10,"row":10},{"column":190,"row":10}]},
                 "intent":{"angleToSkinDeg":40},
                 "observations":[{"id":"obs-1","shaft":[{"column":%s,"row":100},{"column":%s,"row":130}]}]}""";
        return String.format(Locale.ROOT, form, frame, targetRow, shaftColumn, shaftColumn - shaftLength);
    }

    /** The case of {@link #caseOn} with a shaft of one point given twice. */
    public static String caseWithCoincidentShaft(String frame) {
        return caseOn(frame, 150, 150, 1).replace("\"row\":130", "\"row\":100.5");
    }
}
