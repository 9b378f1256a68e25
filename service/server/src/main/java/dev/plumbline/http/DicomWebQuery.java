// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.QueryAttribute;
import dev.plumbline.archive.QueryLevel;
import dev.plumbline.archive.Search;
import dev.plumbline.dicom.Keywords;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a query string asks for. Source: DICOM PS3.18 8.3.4 and 10.6.
 *
 * @param fields attributes wanted beyond the usual ones
 * @param allFields everything there is on the level
 * @param warnings what the answer leaves undone
 */
record DicomWebQuery(Search search, Set<Integer> fields, boolean allFields, List<String> warnings) {
    private static final Set<String> NO_CONDITIONS =
            Set.of("limit", "offset", "fuzzymatching", "includefield", "accept", "charset");
    private static final String NUMBER = "\\d{1,9}";

    static DicomWebQuery of(Context ctx, QueryLevel level) {
        Search search = Search.of(level);
        for (Map.Entry<String, List<String>> parameter : ctx.queryParamMap().entrySet()) {
            if (!NO_CONDITIONS.contains(parameter.getKey())) {
                QueryAttribute attribute = matched(parameter.getKey());
                search = search.where(attribute, value(attribute, parameter.getValue()));
            }
        }
        search = search.page(number(ctx, "limit", Search.MOST), number(ctx, "offset", 0));
        List<String> wanted = ctx.queryParams("includefield").stream()
                .flatMap(list -> Arrays.stream(list.split(",")))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        return new DicomWebQuery(search, tags(wanted), wanted.contains("all"), warnings(ctx));
    }

    DicomWebQuery within(QueryAttribute attribute, Optional<String> uid) {
        return uid.map(value -> new DicomWebQuery(search.where(attribute, value), fields, allFields, warnings))
                .orElse(this);
    }

    private static QueryAttribute matched(String name) {
        return QueryAttribute.of(tag(name))
                .orElseThrow(() -> unreadable(
                        "The query names an attribute that searches do not match on.",
                        "Match on attributes of patient, study, series or instance, such as PatientID or StudyDate."));
    }

    private static String value(QueryAttribute attribute, List<String> values) {
        if (values.size() > 1 && attribute.kind() != QueryAttribute.Kind.UID) {
            throw unreadable("The query states an attribute twice.", "State each attribute once.");
        }
        return String.join(",", values);
    }

    private static int number(Context ctx, String name, int otherwise) {
        String text = Optional.ofNullable(ctx.queryParam(name)).orElse("");
        if (!text.isEmpty() && !text.matches(NUMBER)) {
            throw unreadable("The query's " + name + " is no whole number.", "Write it in digits.");
        }
        return text.isEmpty() ? otherwise : Integer.parseInt(text);
    }

    private static Set<Integer> tags(List<String> names) {
        Set<Integer> tags = new LinkedHashSet<>();
        names.stream().filter(name -> !name.equals("all")).forEach(name -> tags.add(tag(name)));
        return tags;
    }

    private static int tag(String name) {
        return Keywords.tag(name)
                .orElseThrow(() -> unreadable(
                        "The query names something that is no DICOM attribute.",
                        "Name attributes by keyword, such as PatientID, or by eight digits, such as 00100020."));
    }

    private static List<String> warnings(Context ctx) {
        return "true".equals(ctx.queryParam("fuzzymatching"))
                ? List.of("The fuzzymatching parameter is not supported. Only literal matching has been performed.")
                : List.of();
    }

    private static Refusal unreadable(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("", detail, remedy));
    }
}
