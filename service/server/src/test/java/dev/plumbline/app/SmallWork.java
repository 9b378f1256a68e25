// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.io.IOException;

/** A plan on a frame of a few thousand pixels: a record that takes little time, for tests that want many. */
final class SmallWork {
    private static final int ROWS = 120;
    private static final int COLUMNS = 160;

    /** So many pixels of the sample frame are one of the small frame. */
    private static final double SHRUNK = 5;

    /** Of the sample frame. */
    private static final double MM_PER_PIXEL = 0.08;

    private SmallWork() {}

    /** Sends the frame. */
    static void frame(ServiceProcess service) throws IOException, InterruptedException {
        DataSet image = InventedObjects.image(1, 1, 1)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.PIXEL_DATA, new byte[ROWS * COLUMNS]);
        int status = service.postDicom(DicomFile.encode(image)).status();
        if (status != 201 && status != 200) {
            throw new IOException("The frame was answered with " + status);
        }
    }

    /** The sample case, shrunk, without what makes it long. */
    static String signed(String caseId) {
        ObjectNode document = SampleWork.signed().put("caseId", caseId);
        document.remove("observations");
        document.withObjectProperty("frame").put("sopInstanceUid", InventedObjects.instanceUid(1, 1, 1));
        ObjectNode scale = document.withObjectProperty("frame").putObject("scale");
        scale.putObject("from").put("column", 10).put("row", 10);
        scale.putObject("to").put("column", 10).put("row", 110);
        scale.put("distanceMm", 100 * SHRUNK * MM_PER_PIXEL);
        ObjectNode marks = document.withObjectProperty("marks");
        marks.remove("nerves");
        marks.remove("hazards");
        document.findParents("column").forEach(point -> {
            if (!scale.findParents("column").contains(point)) {
                shrink((ObjectNode) point);
            }
        });
        return document.toString();
    }

    private static void shrink(ObjectNode point) {
        point.put("column", point.path("column").asDouble() / SHRUNK)
                .put("row", point.path("row").asDouble() / SHRUNK);
    }
}
