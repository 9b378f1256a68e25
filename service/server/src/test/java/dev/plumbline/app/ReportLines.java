// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * What a viewer draws of a report, as it is stored: coordinates that are the only thing under a number, read from DICOM JSON
 * without a viewer or a toolkit.
 *
 * <p>Source: DICOM PS3.18 F.2 (JSON), PS3.3 C.17.3 and C.18.6 (content tree, spatial coordinates).
 */
final class ReportLines {
    private static final String COMMENT = "121106"; // DCM

    /**
     * One item of spatial coordinates.
     *
     * @param label first comment of its group
     * @param image instance it is drawn on
     * @param data column and row in turns, from the outer corner of the first pixel
     */
    record Line(String label, String type, String image, double[] data) {}

    private final List<Line> lines = new ArrayList<>();

    private ReportLines() {}

    /** @param instance metadata of one report, an object by tags */
    static List<Line> of(JsonNode instance) {
        ReportLines found = new ReportLines();
        found.walk(instance, "", false);
        return found.lines;
    }

    private void walk(JsonNode item, String label, boolean alone) {
        String nearest = children(item)
                .filter(child ->
                        child.at("/0040A043/Value/0/00080100/Value/0").asText().equals(COMMENT))
                .map(child -> child.at("/0040A160/Value/0").asText())
                .findFirst()
                .orElse(label);
        if (alone && isOf(item, "SCOORD")) {
            lines.add(new Line(
                    nearest,
                    item.at("/00700023/Value/0").asText(),
                    item.at("/0040A730/Value/0/00081199/Value/0/00081155/Value/0")
                            .asText(),
                    stream(item.at("/00700022/Value"))
                            .mapToDouble(JsonNode::asDouble)
                            .toArray()));
        }
        boolean single = isOf(item, "NUM") && children(item).count() == 1;
        children(item).forEach(child -> walk(child, nearest, single));
    }

    private static boolean isOf(JsonNode item, String valueType) {
        return item.at("/0040A040/Value/0").asText().equals(valueType);
    }

    private static Stream<JsonNode> children(JsonNode item) {
        return stream(item.at("/0040A730/Value"));
    }

    private static Stream<JsonNode> stream(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false);
    }
}
