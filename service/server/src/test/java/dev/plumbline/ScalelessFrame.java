// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.RecordReader;
import dev.plumbline.dicom.Tag;
import dev.plumbline.document.CaseJson;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** A grey picture of 640 x 480 whose grey is the column, modulo 256; nothing tells its scale, or one region does. */
public final class ScalelessFrame {
    private static final int COLUMNS = 640;
    private static final int ROWS = 480;

    public static final String UID = InventedObjects.instanceUid(7, 1, 1);
    public static final String REGION_UID = InventedObjects.instanceUid(7, 1, 2);

    /** Its path on the DICOMweb route. */
    public static final String SERIES =
            "/dicomweb/studies/" + InventedObjects.studyUid(7) + "/series/" + InventedObjects.seriesUid(7, 1);

    public static final byte[] PLAIN = DicomFile.encode(picture(1));

    /** Columns 100 to 599 and rows 50 to 449 at 0.1 mm. */
    public static final byte[] WITH_REGION = DicomFile.encode(picture(2)
            .put(
                    Tag.SEQUENCE_OF_ULTRASOUND_REGIONS,
                    List.of(new DataSet()
                            .put(Tag.REGION_SPATIAL_FORMAT, 1)
                            .put(Tag.REGION_DATA_TYPE, 1)
                            .put(Tag.REGION_FLAGS, 0)
                            .put(Tag.REGION_LOCATION_MIN_X0, 100)
                            .put(Tag.REGION_LOCATION_MIN_Y0, 50)
                            .put(Tag.REGION_LOCATION_MAX_X1, 599)
                            .put(Tag.REGION_LOCATION_MAX_Y1, 449)
                            .put(Tag.PHYSICAL_UNITS_X_DIRECTION, 3)
                            .put(Tag.PHYSICAL_UNITS_Y_DIRECTION, 3)
                            .put(Tag.PHYSICAL_DELTA_X, 0.01)
                            .put(Tag.PHYSICAL_DELTA_Y, 0.01))));

    private ScalelessFrame() {}

    private static DataSet picture(int instance) {
        byte[] pixels = new byte[ROWS * COLUMNS];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = (byte) (i % COLUMNS);
        }
        return InventedObjects.image(7, 1, instance)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.PIXEL_DATA, pixels);
    }

    /** The case document that a record gives back. */
    public static JsonNode caseOf(Path record) throws IOException {
        return CaseJson.write(RecordReader.read(DicomFile.open(record).header()));
    }
}
