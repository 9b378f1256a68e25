// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** PL1 and the verifying observer read back: which case, which block and side, and who. */
final class ReadDetails {
    private static final Code PERSON_NAME = Codes.dcm("113870");
    private static final Code PERSON_ROLE = Codes.dcm("113875");

    private final DataSet report;
    private final ContentItem details;

    ReadDetails(DataSet report, ContentItem details) {
        this.report = report;
        this.details = details;
    }

    /** Puts {@code caseId}, {@code context} and {@code signature}. */
    void into(ObjectNode json) {
        details.textOf(Codes.own("CASE-ID")).ifPresent(id -> json.put("caseId", id));
        ObjectNode context = json.putObject("context");
        details.codeOf(Codes.own("BLOCK"))
                .flatMap(code -> Codes.wordOf("blocks", code))
                .ifPresent(word -> context.put("block", word));
        side().ifPresent(word -> context.put("laterality", word));
        people().filter(person -> !signs(person)).findFirst().ifPresent(person -> operator(context, person));
        for (DataSet verifier : report.items(Tag.VERIFYING_OBSERVER_SEQUENCE)) {
            signature(json, verifier);
        }
        BedsideDetails.read(report, details, json, context);
    }

    private Optional<String> side() {
        ContentItem holder = details.first(Codes.own("BLOCK")).orElse(details);
        return holder.codeOf(Concepts.LATERALITY)
                .or(() -> holder.codeOf(Codes.own("SIDE")))
                .flatMap(code -> Codes.wordOf("laterality", code).or(() -> Codes.wordOf("sides", code)));
    }

    private Stream<ContentItem> people() {
        return details.named(Codes.own("TEAM"))
                .flatMap(team -> team.named(PERSON_NAME))
                .filter(person -> !TeamItems.isMember(person));
    }

    private static List<Code> roles(ContentItem person) {
        return person.named(PERSON_ROLE)
                .flatMap(item -> item.value() instanceof ItemValue.Coded coded ? Stream.of(coded.code()) : Stream.of())
                .toList();
    }

    private static boolean signs(ContentItem person) {
        return roles(person).stream()
                .findFirst()
                .filter(Observers.VERIFYING::means)
                .isPresent();
    }

    private static void operator(ObjectNode context, ContentItem person) {
        ObjectNode operator = context.putObject("operator");
        if (person.value() instanceof ItemValue.Person name) {
            operator.put("name", name.name());
        }
        roles(person).stream()
                .findFirst()
                .flatMap(code -> Codes.wordOf("roles", code))
                .ifPresent(word -> operator.put("role", word));
    }

    private void signature(ObjectNode json, DataSet verifier) {
        ObjectNode signature = json.putObject("signature");
        verifier.string(Tag.VERIFYING_OBSERVER_NAME).ifPresent(name -> signature.put("name", name));
        verifier.string(Tag.VERIFICATION_DATE_TIME).ifPresent(time -> signature.put("time", time(time)));
        Optional<ContentItem> signer = people().filter(ReadDetails::signs).findFirst();
        signer.flatMap(person -> person.textOf(Observers.ORGANIZATION))
                .ifPresent(name -> signature.put("organization", name));
        signer.flatMap(person -> roles(person).stream().skip(1).findFirst())
                .flatMap(code -> Codes.wordOf("roles", code))
                .ifPresent(word -> signature.put("role", word));
    }

    private String time(String dateTime) {
        try {
            ZoneOffset zone = report.string(Tag.TIMEZONE_OFFSET_FROM_UTC)
                    .map(ZoneOffset::of)
                    .orElse(ZoneOffset.UTC);
            return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(Timestamp.parse(dateTime, zone));
        } catch (DateTimeException e) {
            throw Fault.malformed("The verification time (0040,a030) is no date and time");
        }
    }
}
