// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What this origin server offers, for programs: OPTIONS of its base address. Source: DICOM PS3.18 8.9 and annex H (WADL);
 * the members of the JSON form are the elements and attributes of the WADL one.
 */
final class DicomWebCapabilities {
    private static final String WADL = "application/vnd.sun.wadl+xml";
    private static final String JSON = "application/json";
    private static final String DICOM_JSON = "application/dicom+json";
    private static final String DICOM_PARTS = "multipart/related; type=application/dicom";
    private static final String OCTET_PARTS = "multipart/related; type=application/octet-stream";

    private static final String STUDY = "studies/{study}";
    private static final String SERIES = STUDY + "/series/{series}";
    private static final String INSTANCE = SERIES + "/instances/{instance}";
    private static final String FRAMES = INSTANCE + "/frames/{frames}";
    private static final List<Resource> RESOURCES = List.of(
            store("studies", "StoreInstances"),
            store(STUDY, "StoreStudyInstances"),
            search("studies", "SearchForStudies"),
            search("series", "SearchForSeries"),
            search(STUDY + "/series", "SearchForStudySeries"),
            search("instances", "SearchForInstances"),
            search(STUDY + "/instances", "SearchForStudyInstances"),
            search(SERIES + "/instances", "SearchForStudySeriesInstances"),
            get(STUDY, "RetrieveStudy", DICOM_PARTS),
            get(SERIES, "RetrieveSeries", DICOM_PARTS),
            get(INSTANCE, "RetrieveInstance", DICOM_PARTS, "application/dicom"),
            get(STUDY + "/metadata", "RetrieveStudyMetadata", DICOM_JSON),
            get(SERIES + "/metadata", "RetrieveSeriesMetadata", DICOM_JSON),
            get(INSTANCE + "/metadata", "RetrieveInstanceMetadata", DICOM_JSON),
            get(FRAMES, "RetrieveFrames", OCTET_PARTS),
            get(INSTANCE + "/bulkdata/{place}", "RetrieveBulkdata", OCTET_PARTS),
            pictures(STUDY + "/rendered", "RetrieveRenderedStudy"),
            pictures(SERIES + "/rendered", "RetrieveRenderedSeries"),
            pictures(INSTANCE + "/rendered", "RetrieveRenderedInstance"),
            pictures(FRAMES + "/rendered", "RetrieveRenderedFrames"),
            pictures(STUDY + "/thumbnail", "RetrieveStudyThumbnail"),
            pictures(SERIES + "/thumbnail", "RetrieveSeriesThumbnail"),
            pictures(INSTANCE + "/thumbnail", "RetrieveInstanceThumbnail"),
            pictures(FRAMES + "/thumbnail", "RetrieveFrameThumbnail"));

    private DicomWebCapabilities() {}

    /** A method of an address below the base. */
    private record Resource(String path, String method, String id, List<String> takes, List<String> gives) {}

    private static Resource store(String path, String id) {
        return new Resource(path, "POST", id, List.of(DICOM_PARTS, "application/dicom"), List.of(DICOM_JSON));
    }

    private static Resource search(String path, String id) {
        return get(path, id, DICOM_JSON);
    }

    private static Resource pictures(String path, String id) {
        return get(path, id, Pictures.JPEG, Pictures.PNG, Pictures.GIF);
    }

    private static Resource get(String path, String id, String... gives) {
        return new Resource(path, "GET", id, List.of(), List.of(gives));
    }

    /** Method and address of everything described, such as {@code GET studies/{study}}. */
    static List<String> described() {
        return RESOURCES.stream().map(each -> each.method() + " " + each.path()).toList();
    }

    static void answer(Context ctx) {
        String type = Accepted.of(ctx).single(WADL, JSON).orElseThrow(() -> Accepted.notAcceptable(WADL, JSON));
        String base = ctx.scheme() + "://" + Optional.ofNullable(ctx.host()).orElse("") + DicomWebAddress.ROOT + "/";
        ctx.header("Allow", "OPTIONS");
        Utf8.send(ctx, type, type.equals(WADL) ? wadl(base) : json(base).toString());
    }

    private static Map<String, List<Resource>> byPath() {
        Map<String, List<Resource>> paths = new LinkedHashMap<>();
        RESOURCES.forEach(each ->
                paths.computeIfAbsent(each.path(), path -> new ArrayList<>()).add(each));
        return paths;
    }

    private static String wadl(String base) {
        StringBuilder text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<application xmlns=\"http://wadl.dev.java.net/2009/02\">\n<resources base=\"" + escaped(base)
                + "\">\n");
        byPath().forEach((path, methods) -> {
            text.append("<resource path=\"").append(path).append("\">\n");
            methods.forEach(each -> text.append("<method name=\"")
                    .append(each.method())
                    .append("\" id=\"")
                    .append(each.id())
                    .append("\">\n")
                    .append(representations("request", each.takes()))
                    .append(representations("response", each.gives()))
                    .append("</method>\n"));
            text.append("</resource>\n");
        });
        return text.append("</resources>\n</application>\n").toString();
    }

    private static String representations(String element, List<String> types) {
        StringBuilder text = new StringBuilder();
        types.forEach(type -> text.append("<representation mediaType=\"")
                .append(escaped(type))
                .append("\"/>\n"));
        return types.isEmpty() ? "" : "<" + element + ">\n" + text + "</" + element + ">\n";
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }

    private static ObjectNode json(String base) {
        ObjectNode resources = JsonNodeFactory.instance.objectNode().put("base", base);
        ArrayNode list = resources.putArray("resource");
        byPath().forEach((path, methods) -> {
            ArrayNode offered = list.addObject().put("path", path).putArray("method");
            methods.forEach(each -> {
                ObjectNode method =
                        offered.addObject().put("name", each.method()).put("id", each.id());
                each.takes().forEach(method.withObject("/request").withArray("representation")::add);
                each.gives().forEach(method.withObject("/response").withArray("representation")::add);
            });
        });
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.putObject("application").set("resources", resources);
        return root;
    }
}
