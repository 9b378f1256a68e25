// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.util.concurrent.Semaphore;

/**
 * Keeps the memory that frames take while they are decoded within three quarters of the heap, however many are asked for at
 * once: a frame waits until others are done.
 */
final class DecodingMemory {
    private static final int UNIT = 1 << 10;
    private static final long SHARE_UNITS = Runtime.getRuntime().maxMemory() / 4 * 3 / UNIT;
    private static final int UNITS = (int) Math.min(Integer.MAX_VALUE, SHARE_UNITS);
    private static final Semaphore FREE = new Semaphore(UNITS, true);
    private static final int MEGABYTE = 1 << 20;

    private DecodingMemory() {}

    /** What takes the memory. */
    interface Work<T> {
        T run() throws IOException;
    }

    /**
     * Runs the work when there is room for it.
     *
     * @throws dev.plumbline.problem.Refusal where there can never be
     */
    static <T> T within(long bytes, Work<T> work) throws IOException {
        long units = bytes / UNIT + 1;
        if (units > UNITS) {
            throw Fault.unsupported(
                    "One frame needs " + bytes / MEGABYTE + " MB of memory to be decoded; there are "
                            + (long) UNITS * UNIT / MEGABYTE,
                    "Give the program more memory (-Xmx), or send a smaller image.");
        }
        FREE.acquireUninterruptibly((int) units);
        try {
            return work.run();
        } finally {
            FREE.release((int) units);
        }
    }
}
