// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/**
 * A fault of ours as it is told: a number that is the same for the same fault at the same place, and that place. What the
 * fault says of itself is left out, as it may repeat what was in the input.
 */
record Incident(String number, String place) {
    private static final int FRAMES = 8;

    static Incident of(Throwable fault) {
        CRC32 sum = new CRC32();
        StackTraceElement[] trace = fault.getStackTrace();
        sum.update(fault.getClass().getName().getBytes(StandardCharsets.UTF_8));
        for (int i = 0; i < Math.min(FRAMES, trace.length); i++) {
            sum.update(trace[i].toString().getBytes(StandardCharsets.UTF_8));
        }
        String where = trace.length == 0 ? "" : " at " + trace[0];
        return new Incident(
                String.format("%08x", sum.getValue()), fault.getClass().getSimpleName() + where);
    }

    /** One sentence. */
    String words() {
        return "Plumbline itself failed: incident " + number + " (" + place + ").";
    }
}
