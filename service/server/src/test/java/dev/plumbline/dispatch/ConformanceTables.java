// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.QueryAttribute;
import dev.plumbline.archive.QueryLevel;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Timeouts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The tables of docs/conformance.md that are made from what the program itself uses; run to make them again. */
final class ConformanceTables {
    private static final Pattern TABLE =
            Pattern.compile("(?s)(<!-- table: (?<name>[a-z -]+) -->\n).*?(?=<!-- end -->)");

    /** Not a status of an answer, so that the program has no row of its own for it. */
    private static final int DUPLICATE_TRANSACTION = 0x0131;

    /** Source: DICOM PS3.3, C.14.1.1. */
    private static final List<Integer> COMMITMENT_REASONS =
            List.of(0x0110, 0x0112, 0x0119, 0x0122, DUPLICATE_TRANSACTION, 0x0213);

    /** Each is provoked in InboxFlowTest or FullDiskFlowTest. */
    private static final Map<Status, String> STORE_ANSWERS = ordered(
            Status.SUCCESS, "the object is on disk, synced, and in the index",
            Status.DUPLICATE_INSTANCE,
                    "another object is held under this SOP Instance UID; the new one is put in quarantine",
            Status.INVALID_INSTANCE, "the SOP Instance UID is missing or no UID",
            Status.PROCESSING_FAILURE, "Plumbline itself failed",
            Status.CLASS_NOT_SUPPORTED, "the SOP class is not kept, or not the one of the presentation context",
            Status.MISTYPED_ARGUMENT, "there is no data set",
            Status.OUT_OF_RESOURCES,
                    "the disk takes nothing more, the quota of the day is used up, or the object is larger than the site takes, at most 4 GiB - 1",
            Status.DATA_SET_DOES_NOT_MATCH, "the SOP class or instance of the data set is not the one of the command",
            Status.CANNOT_UNDERSTAND, "the object is not whole and well formed");

    private static final Map<Status, String> REPORT_ANSWERS = ordered(
            Status.SUCCESS, "it is taken",
            Status.INVALID_ARGUMENT, "nobody asked in this transaction, or success comes with failed instances",
            Status.PROCESSING_FAILURE, "its data set cannot be read");

    private static Map<Status, String> ordered(Object... pairs) {
        Map<Status, String> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put((Status) pairs[i], (String) pairs[i + 1]);
        }
        return map;
    }

    private static String answers(String when, Map<Status, String> answers) {
        return table(
                List.of("status", "the standard's words", when),
                answers.entrySet().stream()
                        .map(each ->
                                List.of(each.getKey().pattern(), each.getKey().words(), each.getValue())));
    }

    private ConformanceTables() {}

    public static void main(String[] arguments) throws IOException {
        Path page = page();
        Files.writeString(page, made(Files.readString(page)));
    }

    static Path page() {
        return Stream.iterate(Path.of("").toAbsolutePath(), Path::getParent)
                .takeWhile(folder -> folder != null)
                .map(folder -> folder.resolve("docs/conformance.md"))
                .filter(Files::isRegularFile)
                .findFirst()
                .orElseThrow();
    }

    /** The page with every table made anew. */
    static String made(String page) {
        Map<String, String> tables = tables();
        return TABLE.matcher(page)
                .replaceAll(place -> Matcher.quoteReplacement(
                        place.group(1) + tables.getOrDefault(place.group(2), "no such table\n")));
    }

    static Map<String, String> tables() {
        Map<String, String> tables = new LinkedHashMap<>();
        tables.put("services", services());
        tables.put(
                "record objects",
                table(
                        List.of("object", "SOP class"),
                        PeerCheck.RECORD_CLASSES.entrySet().stream()
                                .sorted(Map.Entry.comparingByKey())
                                .map(each -> List.of(each.getValue(), each.getKey()))));
        tables.put("limits", limits());
        tables.put(
                "c-store statuses",
                table(
                        List.of("C-STORE status", "the standard's words", "then"),
                        Arrays.stream(Status.values())
                                .map(status -> List.of(
                                        status.pattern(),
                                        status.words(),
                                        Verdicts.of(status).words()))));
        tables.put(
                "failures",
                table(
                        List.of("instead of an answer", "then"),
                        Arrays.stream(PeerFailure.Kind.values())
                                .map(kind ->
                                        List.of(words(kind), Verdicts.of(kind).words()))));
        tables.put("store answers", answers("what a peer that stores here is answered when", STORE_ANSWERS));
        tables.put(
                "commitment reasons",
                table(
                        List.of("Failure Reason (0008,1197)", "the standard's words", "then"),
                        COMMITMENT_REASONS.stream()
                                .map(reason -> List.of(
                                        String.format("%04X", reason),
                                        reason == DUPLICATE_TRANSACTION
                                                ? "duplicate transaction UID"
                                                : Status.of(reason).words(),
                                        Commitments.isMissing(reason) ? "the object is sent again" : "asked anew"))));
        tables.put("report answers", answers("when", REPORT_ANSWERS));
        tables.put(
                "search attributes",
                table(
                        List.of("attribute", "tag", "from which level on", "compared"),
                        Arrays.stream(QueryAttribute.values()).map(ConformanceTables::row)));
        return tables;
    }

    private static String services() {
        return table(
                List.of("service", "SOP class", "as user", "as provider"),
                Stream.of(
                        List.of("Verification", SopClass.VERIFICATION, "yes", "yes"),
                        List.of("Storage, the [objects of a record](#51-sop-classes)", "listed there", "yes", ""),
                        List.of(
                                "Storage, all under this root",
                                SopClass.STORAGE_ROOT.replaceFirst("\\.$", ""),
                                "",
                                "yes"),
                        List.of("Study Root Query/Retrieve FIND", SopClass.STUDY_ROOT_FIND, "yes", "no"),
                        List.of("Study Root Query/Retrieve GET", SopClass.STUDY_ROOT_GET, "yes", "no"),
                        List.of("Storage Commitment Push Model", SopClass.STORAGE_COMMITMENT, "yes", "no"),
                        List.of("Modality Worklist FIND", SopClass.MODALITY_WORKLIST, "yes", "no")));
    }

    private static String limits() {
        Timeouts waits = Timeouts.USUAL;
        Listener.Limits limits = Listener.Limits.USUAL;
        return table(
                List.of("limit", "usual"),
                Stream.of(
                        List.of("associations accepted at once", Integer.toString(limits.associations())),
                        List.of("of them from one AE title", Integer.toString(limits.perPeer())),
                        List.of(
                                "wait for the association request, and for the connection to end",
                                waits.artim().toSeconds() + " s"),
                        List.of(
                                "wait for the next message or the rest of a PDU",
                                waits.idle().toSeconds() + " s"),
                        List.of(
                                "wait for a connection, its handshake, its association",
                                waits.connect().toSeconds() + " s each"),
                        List.of(
                                "wait for the answer to a message",
                                waits.response().toSeconds() + " s"),
                        List.of("longest P-DATA-TF taken", "131072 bytes"),
                        List.of("longest association request read", "65536 bytes")));
    }

    private static String words(PeerFailure.Kind kind) {
        return switch (kind) {
            case UNREACHABLE -> "nothing listens, or the host is not known";
            case TIMEOUT -> "no answer in time";
            case TLS -> "the TLS handshake failed";
            case REJECTED_TRANSIENT -> "association rejected for now";
            case REJECTED -> "association rejected";
            case ABORTED -> "aborted, released or closed instead of an answer";
            case PROTOCOL -> "another message answered, an answer without a status, a broken PDU";
            case CONTEXT_REFUSED -> "presentation context refused";
        };
    }

    private static List<String> row(QueryAttribute attribute) {
        String name = Arrays.stream(attribute.name().split("_"))
                .map(word -> List.of("UID", "SOP", "ID").contains(word)
                        ? word
                        : word.charAt(0) + word.substring(1).toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" "));
        String tag = String.format("(%04X,%04X)", attribute.tag() >>> 16, attribute.tag() & 0xffff);
        return List.of(name, tag, level(attribute.level()), words(attribute.kind()));
    }

    private static String level(QueryLevel level) {
        return level.name().toLowerCase(Locale.ROOT);
    }

    private static String words(QueryAttribute.Kind kind) {
        return switch (kind) {
            case TEXT -> "as it is, with wildcards";
            case NAME -> "without regard to case, with wildcards";
            case UID -> "one or a list";
            case CODE -> "one or a list, as they are, with wildcards";
            case DATE, TIME -> "one or a range";
            case NUMBER -> "as a number";
        };
    }

    private static String table(List<String> head, Stream<List<String>> rows) {
        return row(head)
                + "|"
                + "---|".repeat(head.size())
                + "\n"
                + rows.map(ConformanceTables::row).collect(Collectors.joining());
    }

    private static String row(List<String> cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }
}
