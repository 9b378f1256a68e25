// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** DICOM JSON (PS3.18 annex F) of every object that pydicom brings and our gate takes, beside pydicom's own. */
class DicomJsonConformanceTest {
    private static final Path PYDICOM = Path.of("/usr/lib/python3/dist-packages/pydicom/data");
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();
    private static final Set<String> NOT_COMPARED = Set.of("BulkDataURI", "00080005");
    private static final int TAG_DIGITS = 8;
    private static final int FEWEST_COMPARED = 30;

    @Test
    void saysWhatPydicomSays() throws IOException {
        Map<String, ObjectNode> ours = ours();
        List<String> command = new ArrayList<>(List.of("/usr/bin/python3", "src/test/resources/python/dicom_json.py"));
        command.addAll(ours.keySet());
        JsonNode theirs = JSON.readTree(OutsideProgram.run(command.toArray(String[]::new)));
        int compared = 0;
        List<String> differences = new ArrayList<>();
        for (Map.Entry<String, ObjectNode> object : ours.entrySet()) {
            JsonNode judge = theirs.get(object.getKey());
            if (judge.isObject()) {
                compared++;
                compare(Path.of(object.getKey()).getFileName().toString(), object.getValue(), judge, differences);
            }
        }
        assertThat(differences).isEmpty();
        assertThat(compared).isGreaterThanOrEqualTo(FEWEST_COMPARED);
    }

    private static Map<String, ObjectNode> ours() throws IOException {
        Map<String, ObjectNode> ours = new LinkedHashMap<>();
        for (String folder : List.of("test_files", "charset_files")) {
            try (Stream<Path> files = Files.list(PYDICOM.resolve(folder))) {
                for (Path file : files.filter(f -> f.toString().endsWith(".dcm"))
                        .sorted()
                        .toList()) {
                    try {
                        ours.put(file.toString(), DicomJson.of(DicomFile.open(file), ""));
                    } catch (Refusal refusal) {
                        // What the gate refuses is never shown as JSON; how many remain is asserted above.
                        assertThat(refusal.problem().detail()).isNotBlank();
                    }
                }
            }
        }
        return ours;
    }

    private static void compare(String where, JsonNode ours, JsonNode theirs, List<String> differences) {
        if (ours.path("vr").asText().equals("UN")) {
            // pydicom decodes a sequence that was sent as UN; ours shows what was sent.
            return;
        }
        if (ours.isObject() && theirs.isObject()) {
            ObjectNode left = names(ours);
            ObjectNode right = names(theirs);
            if (!left.equals(right)) {
                differences.add(where + ": fields " + left + " but pydicom " + right);
                return;
            }
            left.fieldNames().forEachRemaining(name -> {
                if (ours.has(name) && theirs.has(name) && !NOT_COMPARED.contains(name)) {
                    compare(where + "/" + name, ours.get(name), theirs.get(name), differences);
                }
            });
        } else if (ours.isArray() && theirs.isArray() && ours.size() == theirs.size()) {
            for (int i = 0; i < ours.size(); i++) {
                compare(where + "/" + i, ours.get(i), theirs.get(i), differences);
            }
        } else if (!same(ours, theirs)) {
            differences.add(where + ": " + ours + " but pydicom " + theirs);
        }
    }

    private static ObjectNode names(JsonNode object) {
        ObjectNode names = JsonNodeFactory.instance.objectNode();
        object.fieldNames().forEachRemaining(name -> {
            // Pixel data and what follows it are not part of the header; group lengths are no attributes of the JSON;
            // an empty sequence has no Value in ours (F.2.5); what is long goes elsewhere, each by its own measure.
            boolean tag = name.length() == TAG_DIGITS;
            boolean compared = tag
                    ? name.compareTo("7FE00000") < 0 && !name.endsWith("0000")
                    : !(name.equals("Value") && object.get(name).isEmpty());
            if (compared) {
                names.put(name.equals("BulkDataURI") ? "InlineBinary" : name, true);
            }
        });
        return names;
    }

    private static boolean same(JsonNode ours, JsonNode theirs) {
        if (ours.isNumber() && theirs.isNumber()) {
            return ours.decimalValue().compareTo(theirs.decimalValue()) == 0
                    || ours.floatValue() == theirs.floatValue();
        }
        // pydicom keeps the blank that pads some values of several
        boolean texts = ours.isTextual() && theirs.isTextual();
        return texts
                ? ours.textValue().equals(theirs.textValue().stripTrailing()) || ours.equals(theirs)
                : ours.equals(theirs);
    }
}
