// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.time.Duration;

/** How long ago, in words that can be said over the telephone. */
final class Ages {
    private Ages() {}

    static String words(Duration age) {
        long minutes = Math.max(0, age.toMinutes());
        if (minutes < 1) {
            return "less than a minute";
        }
        if (minutes < 60) {
            return count(minutes, "minute");
        }
        long hours = age.toHours();
        if (hours < 48) {
            long rest = minutes % 60;
            return count(hours, "hour") + (rest == 0 ? "" : " " + count(rest, "minute"));
        }
        long days = age.toDays();
        long rest = hours % 24;
        return count(days, "day") + (rest == 0 ? "" : " " + count(rest, "hour"));
    }

    private static String count(long number, String unit) {
        return number + " " + unit + (number == 1 ? "" : "s");
    }
}
