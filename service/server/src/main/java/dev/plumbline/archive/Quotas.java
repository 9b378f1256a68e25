// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How much senders may add to the archive within one day, so that none of them fills the disk for all. What was there
 * before costs nothing; what is put in quarantine counts.
 *
 * @param dailyBytes by sender; one that is not named has no quota
 * @param clock its zone's midnight begins a day
 */
public record Quotas(Map<Sender, Long> dailyBytes, Clock clock) {
    private static final long MEGABYTE = 1_000_000;

    public Quotas {
        dailyBytes = Map.copyOf(dailyBytes);
    }

    /** Nobody has one, so that nobody asks what day it is. */
    static Quotas none() {
        return new Quotas(Map.of(), Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
    }

    /** In bytes, today; empty for a sender without a quota. */
    OptionalLong left(Store store, Sender sender) {
        return applyTo(sender)
                ? OptionalLong.of(Math.max(0, quota(sender) - store.received(sender, today())))
                : OptionalLong.empty();
    }

    boolean applyTo(Sender sender) {
        return dailyBytes.containsKey(sender);
    }

    private long quota(Sender sender) {
        return Optional.ofNullable(dailyBytes.get(sender)).orElseThrow();
    }

    /** @throws Refusal {@link Problem.NoRoom} where this is more than the sender has left; then nothing is counted */
    void count(Store.Writing writing, Sender sender, long bytes) {
        if (applyTo(sender) && writing.received(sender, today(), bytes) > quota(sender)) {
            throw usedUp(sender);
        }
    }

    Refusal usedUp(Sender sender) {
        return new Refusal(new Problem.NoRoom(
                "",
                sentAll(sender),
                "Send it again after midnight, or let the site raise " + field(sender) + " in its configuration."));
    }

    private String sentAll(Sender sender) {
        return allowance(sender).replaceFirst("w", "W") + ", is used up.";
    }

    private String allowance(Sender sender) {
        return "what may come from " + sender.name().orElseThrow() + " in one day, " + quota(sender) / MEGABYTE + " MB";
    }

    private static String field(Sender sender) {
        return sender.equals(Sender.HTTP) ? "intake.httpDailyMegabytes" : "dailyMegabytes of this peer";
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }

    /** A sentence for each sender that has less than a tenth left today. */
    List<String> warnings(Store store) {
        return dailyBytes.keySet().stream()
                .sorted(Comparator.comparing(Sender::key))
                .flatMap(sender -> warning(sender, left(store, sender).orElseThrow()).stream())
                .toList();
    }

    private Optional<String> warning(Sender sender, long left) {
        if (left == 0) {
            return Optional.of(sentAll(sender) + " More is refused until midnight.");
        }
        return left < quota(sender) / 10
                ? Optional.of("Less than a tenth is left until midnight of " + allowance(sender) + ".")
                : Optional.empty();
    }
}
