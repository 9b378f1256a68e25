// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Found;
import dev.plumbline.archive.QueryAttribute;
import dev.plumbline.archive.QueryLevel;
import dev.plumbline.archive.Search;
import dev.plumbline.dicom.DicomJson;
import io.javalin.http.Context;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** QIDO-RS at study, series and instance level. Source: DICOM PS3.18 10.6, tables of the returned attributes. */
final class DicomWebSearch {
    private static final Map<QueryLevel, Set<Integer>> USUAL = usual();

    /** Answered without a value where an object lacks them. Source: required (R) in tables 10.6.3-3 to 10.6.3-5. */
    private static final Map<QueryLevel, Map<Integer, String>> REQUIRED = Map.of(
            QueryLevel.STUDY,
            Map.of(
                    0x00080020,
                    "DA",
                    0x00080030,
                    "TM",
                    0x00080050,
                    "SH",
                    0x00080090,
                    "PN",
                    0x00100010,
                    "PN",
                    0x00100020,
                    "LO",
                    0x00100030,
                    "DA",
                    0x00100040,
                    "CS",
                    0x00200010,
                    "SH"),
            QueryLevel.SERIES,
            Map.of(0x00080060, "CS", 0x00200011, "IS"),
            QueryLevel.INSTANCE,
            Map.of(0x00200013, "IS"));

    private static final int SPECIFIC_CHARACTER_SET = 0x00080005;
    private static final int FOUND = 200;
    private static final int FOUND_NONE = 204;

    private final Archive archive;

    DicomWebSearch(Archive archive) {
        this.archive = archive;
    }

    /** What is answered without being asked for. */
    private static Map<QueryLevel, Set<Integer>> usual() {
        Map<QueryLevel, Set<Integer>> usual = new EnumMap<>(QueryLevel.class);
        usual.put(
                QueryLevel.STUDY,
                Set.of(
                        SPECIFIC_CHARACTER_SET,
                        0x00080020,
                        0x00080030,
                        0x00080050,
                        0x00080090,
                        0x00080201,
                        0x00081030,
                        0x00100010,
                        0x00100020,
                        0x00100030,
                        0x00100040,
                        0x0020000D,
                        0x00200010));
        usual.put(
                QueryLevel.SERIES,
                Set.of(
                        SPECIFIC_CHARACTER_SET,
                        0x00080060,
                        0x00080201,
                        0x0008103E,
                        0x0020000D,
                        0x0020000E,
                        0x00200011,
                        0x00400244,
                        0x00400245,
                        0x00400275));
        usual.put(
                QueryLevel.INSTANCE,
                Set.of(
                        SPECIFIC_CHARACTER_SET,
                        0x00080016,
                        0x00080018,
                        0x00080201,
                        0x0020000D,
                        0x0020000E,
                        0x00200013,
                        0x00280008,
                        0x00280010,
                        0x00280011,
                        0x00280100));
        return usual;
    }

    void studies(Context ctx) {
        answer(ctx, DicomWebQuery.of(ctx, QueryLevel.STUDY));
    }

    void series(Context ctx) {
        answer(ctx, within(ctx, DicomWebQuery.of(ctx, QueryLevel.SERIES)));
    }

    void instances(Context ctx) {
        answer(ctx, within(ctx, DicomWebQuery.of(ctx, QueryLevel.INSTANCE)));
    }

    private static DicomWebQuery within(Context ctx, DicomWebQuery query) {
        Optional<String> study =
                ctx.pathParamMap().containsKey("study") ? Optional.of(DicomWebAddress.study(ctx)) : Optional.empty();
        return query.within(QueryAttribute.STUDY_INSTANCE_UID, study)
                .within(QueryAttribute.SERIES_INSTANCE_UID, DicomWebAddress.series(ctx));
    }

    private void answer(Context ctx, DicomWebQuery query) {
        Accepted.of(ctx).requireJson();
        List<Found> all = archive.store().search(query.search());
        List<Found> found = all.subList(0, Math.min(all.size(), Search.MOST));
        query.warnings().forEach(warning -> Warning299.add(ctx, warning));
        if (query.more() && all.size() > Search.MOST) {
            Warning299.add(
                    ctx,
                    "The number of results exceeded the maximum supported by the server. Additional results can be"
                            + " requested.");
        }
        ArrayNode answer = JsonNodeFactory.instance.arrayNode();
        found.forEach(line -> answer.add(line(ctx, query, line)));
        ctx.status(found.isEmpty() ? FOUND_NONE : FOUND);
        ctx.contentType("application/dicom+json");
        if (!found.isEmpty()) {
            Utf8.send(ctx, "application/dicom+json", answer.toString());
        }
    }

    private static ObjectNode line(Context ctx, DicomWebQuery query, Found found) {
        QueryLevel level = query.search().level();
        Map<String, JsonNode> line = new TreeMap<>();
        REQUIRED.forEach((of, attributes) -> attributes.forEach((tag, vr) -> {
            if (of == level || (of.compareTo(level) < 0 && !belowStudy(ctx))) {
                line.put(DicomJson.name(tag), values(vr, List.of()));
            }
        }));
        found.representative().attributeTree().properties().forEach(attribute -> {
            if (wanted(ctx, query, Integer.parseUnsignedInt(attribute.getKey(), 16))) {
                line.put(attribute.getKey(), attribute.getValue());
            }
        });
        if (level == QueryLevel.STUDY) {
            line.put("00080061", values("CS", found.contents().modalities()));
            line.put("00080062", values("UI", found.contents().sopClasses()));
            line.put("00201206", count(found.contents().series()));
            line.put("00201208", count(found.contents().instances()));
        } else if (level == QueryLevel.SERIES) {
            line.put("00201209", count(found.contents().instances()));
        } else {
            line.put("00083002", values("UI", List.of(found.representative().transferSyntaxUid())));
        }
        line.put("00080056", values("CS", List.of("ONLINE")));
        line.put("00081190", values("UR", List.of(DicomWebAddress.relative(ctx, place(level, found)))));
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        line.forEach(object::set);
        return object;
    }

    private static boolean wanted(Context ctx, DicomWebQuery query, int tag) {
        QueryLevel level = query.search().level();
        boolean ofLevel = QueryAttribute.of(tag)
                .map(attribute -> attribute.level().compareTo(level) <= 0)
                .orElse(level == QueryLevel.INSTANCE || query.fields().contains(tag));
        boolean usual = USUAL.getOrDefault(level, Set.of()).contains(tag);
        boolean ofParents = !belowStudy(ctx)
                && USUAL.entrySet().stream()
                        .anyMatch(parent -> parent.getKey().compareTo(level) < 0
                                && parent.getValue().contains(tag));
        return usual
                || ofParents
                || (ofLevel && (query.allFields() || query.fields().contains(tag)));
    }

    private static boolean belowStudy(Context ctx) {
        return ctx.pathParamMap().containsKey("study");
    }

    private static List<String> place(QueryLevel level, Found found) {
        return switch (level) {
            case STUDY -> DicomWebAddress.study(found.representative().identity());
            case SERIES -> DicomWebAddress.series(found.representative().identity());
            case INSTANCE -> DicomWebAddress.instance(found.representative().identity());
        };
    }

    private static ObjectNode values(String vr, List<String> texts) {
        ObjectNode attribute = JsonNodeFactory.instance.objectNode().put("vr", vr);
        if (!texts.isEmpty()) {
            ArrayNode values = attribute.putArray("Value");
            texts.forEach(values::add);
        }
        return attribute;
    }

    private static ObjectNode count(int number) {
        ObjectNode attribute = JsonNodeFactory.instance.objectNode().put("vr", "IS");
        attribute.putArray("Value").add(number);
        return attribute;
    }
}
