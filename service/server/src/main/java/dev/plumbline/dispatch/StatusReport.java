// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.DueCompanions;
import dev.plumbline.archive.Findings;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

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

    /** Sentences that can be read out. */
    public String text() {
        StringBuilder text = new StringBuilder();
        if (desk.destinations().isEmpty()) {
            text.append("Records are kept in the embedded archive; no other archive is configured.");
        } else {
            text.append(desk.oldestUnproved().map(this::oldest).orElse("No record waits to be proved."));
        }
        List<DueCompanions> due = desk.companionsDue();
        if (!due.isEmpty()) {
            text.append('\n').append(unwhole(due));
        }
        int held = desk.counts().stream()
                .filter(count -> count.state() == State.HELD && !count.released())
                .mapToInt(Dispatch.Count::dispatches)
                .sum();
        if (held > 0) {
            text.append(held == 1 ? "\n1 record is held" : "\n" + held + " records are held")
                    .append(" and wait for a person: plumbline dispatch list --state held.");
        }
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
