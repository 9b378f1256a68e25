// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.QueryAttribute;
import dev.plumbline.archive.QueryLevel;
import dev.plumbline.archive.Search;
import dev.plumbline.dicom.Keywords;
import dev.plumbline.dicom.Tag;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a query string asks for. A parameter that is not supported is ignored, which a warning says; one with a value that
 * cannot be read is refused. Source: DICOM PS3.18 8.3, 8.3.4 and 10.6.
 *
 * @param fields attributes wanted beyond the usual ones
 * @param allFields everything there is on the level
 * @param more whether lines beyond the most that are answered were asked for
 * @param warnings what the answer leaves undone
 */
record DicomWebQuery(Search search, Set<Integer> fields, boolean allFields, boolean more, List<String> warnings) {
    private static final Set<String> NO_CONDITIONS = Set.of("limit", "offset", "includefield", "accept", "charset");

    /** Ways of matching that are told by a parameter of their own, none of which is supported. */
    private static final List<String> WAYS = List.of("fuzzymatching", "emptyvaluematching", "multiplevaluematching");

    private static final String NUMBER = "\\d{1,18}";
    private static final String NAME = "[0-9A-Za-z]{1,64}(\\.[0-9A-Za-z]{1,64}){0,8}";
    private static final Set<Integer> IN_REQUEST = Set.of(Tag.SCHEDULED_PROCEDURE_STEP_ID, Tag.REQUESTED_PROCEDURE_ID);

    static DicomWebQuery of(Context ctx, QueryLevel level) {
        List<String> warnings = new ArrayList<>(ways(ctx));
        List<String> names = new ArrayList<>(included(ctx));
        Search search = Search.of(level);
        for (Map.Entry<String, List<String>> parameter : ctx.queryParamMap().entrySet()) {
            String name = parameter.getKey();
            if (NO_CONDITIONS.contains(name) || WAYS.contains(name)) {
                continue;
            }
            String value = String.join(",", parameter.getValue());
            Optional<Search> narrowed = narrowed(search, Path.of(name), parameter.getValue());
            if (narrowed.isEmpty() && !value.isBlank()) {
                warnings.add(ignored(name));
            }
            search = narrowed.orElse(search);
            // Whatever is matched on is answered too, also where the value matches everything.
            names.add(name);
        }
        long limit = number(ctx, "limit", Search.MOST + 1L);
        search = search.page(
                (int) Math.min(limit, Search.MOST + 1), (int) Math.min(number(ctx, "offset", 0), Integer.MAX_VALUE));
        return new DicomWebQuery(search, tags(names), names.contains("all"), limit > Search.MOST, warnings);
    }

    DicomWebQuery within(QueryAttribute attribute, Optional<String> uid) {
        return uid.map(value -> new DicomWebQuery(search.where(attribute, value), fields, allFields, more, warnings))
                .orElse(this);
    }

    /** Empty where searches do not match on what the path names. */
    private static Optional<Search> narrowed(Search search, Path path, List<String> values) {
        if (path.isOf(Tag.MODALITIES_IN_STUDY)) {
            return Optional.of(search.whereStudyHolds(String.join(",", values)));
        }
        if (path.isInRequest() && IN_REQUEST.contains(path.last())) {
            return Optional.of(search.whereRequested(path.last(), once(values)));
        }
        Optional<QueryAttribute> attribute =
                path.tags().size() == 1 ? QueryAttribute.of(path.last()) : Optional.empty();
        return attribute.map(known -> search.where(known, listed(known) ? String.join(",", values) : once(values)));
    }

    private static boolean listed(QueryAttribute attribute) {
        return attribute.kind() == QueryAttribute.Kind.UID || attribute.kind() == QueryAttribute.Kind.CODE;
    }

    private static String once(List<String> values) {
        if (values.size() > 1) {
            throw unreadable("The query states an attribute twice.", "State each attribute once.");
        }
        return values.get(0);
    }

    /** An attribute, or one in the items of a sequence; empty where the name is no attribute's. */
    private record Path(List<Integer> tags) {
        static Path of(String name) {
            List<Integer> tags = new ArrayList<>();
            List<String> steps = List.of(name.split("\\.", -1));
            for (String step : steps) {
                Keywords.tag(step).ifPresent(tags::add);
            }
            return new Path(tags.size() == steps.size() ? tags : List.of());
        }

        int last() {
            return tags.get(tags.size() - 1);
        }

        boolean isOf(int tag) {
            return tags.equals(List.of(tag));
        }

        boolean isInRequest() {
            return tags.size() == 2 && tags.get(0) == Tag.REQUEST_ATTRIBUTES_SEQUENCE;
        }
    }

    private static long number(Context ctx, String name, long otherwise) {
        String text = Optional.ofNullable(ctx.queryParam(name)).orElse("");
        if (!text.isEmpty() && !text.matches(NUMBER)) {
            throw unreadable("The query's " + name + " is no whole number.", "Write it in digits.");
        }
        return text.isEmpty() ? otherwise : Long.parseLong(text);
    }

    private static List<String> included(Context ctx) {
        List<String> wanted = ctx.queryParams("includefield").stream()
                .flatMap(list -> Arrays.stream(list.split(",")))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        if (!wanted.stream().allMatch(name -> name.matches(NAME))) {
            throw unreadable(
                    "An includefield is no name of an attribute.",
                    "Name attributes by keyword, such as PatientID, or by eight digits, such as 00100020.");
        }
        return wanted;
    }

    /** Of an attribute in a sequence the whole sequence is answered, as far as it is known. */
    private static Set<Integer> tags(List<String> names) {
        Set<Integer> tags = new LinkedHashSet<>();
        names.stream()
                .map(Path::of)
                .flatMap(path -> path.tags().stream().limit(1))
                .forEach(tags::add);
        return tags;
    }

    private static List<String> ways(Context ctx) {
        return WAYS.stream()
                .flatMap(way -> Stream.ofNullable(ctx.queryParam(way))
                        .filter(value -> isTrue(way, value))
                        .map(value -> "The " + way
                                + " parameter is not supported. Only literal matching has been performed."))
                .toList();
    }

    private static boolean isTrue(String way, String value) {
        if (!value.equals("true") && !value.equals("false")) {
            throw unreadable("The query's " + way + " is neither true nor false.", "Write true or false.");
        }
        return value.equals("true");
    }

    private static String ignored(String name) {
        return name.matches(NAME)
                ? "The " + name + " parameter is not supported. It has been ignored."
                : "A parameter is not supported. It has been ignored.";
    }

    private static Refusal unreadable(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("", detail, remedy));
    }
}
