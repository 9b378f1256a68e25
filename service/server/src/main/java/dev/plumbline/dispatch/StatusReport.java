// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatches;
import dev.plumbline.archive.DueCompanions;
import dev.plumbline.archive.Findings;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How things stand, for a machine and for a telephone call.
 *
 * @param freeBytes on the disk of the data folder
 * @param found what the checks at the start found
 * @param warnings of what will soon stop working, such as certificates that end
 */
public record StatusReport(DispatchDesk desk, long freeBytes, Findings found, List<String> warnings) {
    private static final double GIB = 1 << 30;

    public StatusReport {
        warnings = List.copyOf(warnings);
    }

    /** Everything, with the words under {@code text}. */
    public ObjectNode json() {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("state", found.damages().isEmpty() ? "ok" : "degraded");
        answer.set("dispatch", DispatchJson.counts(desk));
        answer.set(
                "destinations",
                JsonNodeFactory.instance
                        .arrayNode()
                        .addAll(desk.destinations().stream()
                                .map(JsonNodeFactory.instance::textNode)
                                .toList()));
        ObjectNode stranded = answer.putObject("withoutPeer");
        stranded().forEach(stranded::put);
        answer.put("altered", desk.remarks().altered());
        answer.put("unconfirmed", desk.remarks().unconfirmed());
        answer.put("personNeeded", personNeeded());
        Optional<Dispatch> oldest = desk.oldestUnproved();
        answer.putNull("oldestUnproved");
        oldest.ifPresent(dispatch -> answer.set("oldestUnproved", DispatchJson.whole(desk, dispatch)));
        answer.set("companionsDue", uncomposed());
        answer.put("freeBytes", freeBytes);
        var list = answer.putArray("damages");
        found.damages().forEach(damage -> list.add(damage.toString()));
        answer.put("unindexedFiles", found.unindexed());
        var soon = answer.putArray("warnings");
        warnings.forEach(soon::add);
        return answer.put("text", text());
    }

    /** Whether something does not go on by itself. */
    private boolean personNeeded() {
        return !found.damages().isEmpty()
                || desk.companionsDue().stream().anyMatch(due -> !due.words().isBlank())
                || count(State.HELD) > 0
                || desk.remarks().unconfirmed() > 0
                || !stranded().isEmpty();
    }

    /** Sentences that can be read out. */
    public String text() {
        StringBuilder text = new StringBuilder();
        Optional<Dispatch> oldest = desk.oldestUnproved();
        if (oldest.isPresent()) {
            text.append(oldest(oldest.get()));
        } else if (desk.destinations().isEmpty()) {
            text.append("Records are kept in the embedded archive; no other archive is configured.");
        } else {
            text.append("No record waits to be proved.");
        }
        List<DueCompanions> due = desk.companionsDue();
        if (!due.isEmpty()) {
            text.append('\n').append(unwhole(due));
        }
        sentences().forEach(sentence -> text.append('\n').append(sentence));
        text.append(String.format("%nFree disk space: %.1f GiB.", freeBytes / GIB));
        int damages = found.damages().size();
        if (damages > 0) {
            text.append("\nDamaged or missing files: ").append(damages).append("; plumbline doctor names them.");
        }
        if (found.unindexed() > 0) {
            text.append("\nObject files that the index does not know: ")
                    .append(found.unindexed())
                    .append(
                            "; after a crash they were never acknowledged, after a damage plumbline reindex takes them in.");
        }
        warnings.forEach(warning -> text.append('\n').append(warning));
        return text.toString();
    }

    /** How many are queued and held, and where nobody carries them. */
    private List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        int queued = count(State.QUEUED);
        if (queued > 0) {
            sentences.add(records(queued, "is", "are") + " queued.");
        }
        int held = count(State.HELD);
        if (held > 0) {
            sentences.add(records(held, "is", "are") + " held and " + (held == 1 ? "waits" : "wait")
                    + " for a person: plumbline dispatch list --state held.");
        }
        Dispatches.Remarks remarks = desk.remarks();
        if (remarks.unconfirmed() > 0) {
            sentences.add(records(remarks.unconfirmed(), "is", "are")
                    + " sent and unconfirmed: every way to prove that was tried. Look in the archive, then release, or"
                    + " retry.");
        }
        if (remarks.altered() > 0) {
            sentences.add(records(remarks.altered(), "was", "were")
                    + " altered by the archive: plumbline dispatch show names the attributes.");
        }
        for (Map.Entry<String, Integer> each : stranded().entrySet()) {
            sentences.add(records(each.getValue(), "goes", "go") + " to " + each.getKey()
                    + ", which is no peer any more: configure it again, or release "
                    + (each.getValue() == 1 ? "it." : "them."));
        }
        return sentences;
    }

    private Map<String, Integer> stranded() {
        Map<String, Integer> stranded = new TreeMap<>();
        desk.stranded().forEach(each -> stranded.merge(each.destination(), each.dispatches(), Integer::sum));
        return stranded;
    }

    private int count(State state) {
        return DispatchJson.count(desk, state);
    }

    private static String records(int count, String one, String many) {
        return count == 1 ? "1 record " + one : count + " records " + many;
    }

    private String unwhole(List<DueCompanions> due) {
        String since =
                Ages.words(Duration.between(due.get(0).since(), desk.clock().instant()));
        String why = due.stream()
                .map(DueCompanions::words)
                .filter(words -> !words.isBlank())
                .findFirst()
                .map(words -> " " + words)
                .orElse("");
        return due.size() == 1
                ? "1 signed record waits for its companions, since " + since + "." + why
                : due.size() + " signed records wait for their companions, the oldest since " + since + "." + why;
    }

    private ObjectNode uncomposed() {
        List<DueCompanions> due = desk.companionsDue();
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("records", due.size());
        node.putNull("oldest");
        due.stream()
                .findFirst()
                .ifPresent(oldest -> node.put("oldest", oldest.since().toString()));
        node.putNull("reason");
        due.stream()
                .map(DueCompanions::words)
                .filter(words -> !words.isBlank())
                .findFirst()
                .ifPresent(words -> node.put("reason", words));
        return node;
    }

    private String oldest(Dispatch dispatch) {
        Instant now = desk.clock().instant();
        String since = Ages.words(Duration.between(dispatch.created(), now));
        String answer = (dispatch.lastAnswer().code() + " " + DispatchJson.reason(dispatch)).strip();
        String next = dispatch.progress()
                .nextAttempt()
                .filter(time -> dispatch.state() != State.HELD && time.isAfter(now))
                .map(time -> " Next attempt in " + Ages.words(Duration.between(now, time)) + ".")
                .orElse("");
        return "The oldest record not yet proved was signed " + since + " ago: dispatch " + dispatch.id() + " to "
                + dispatch.addressed().destination() + ", " + dispatch.state().word() + "."
                + (answer.isEmpty() ? "" : " Last answer: " + answer) + next;
    }
}
