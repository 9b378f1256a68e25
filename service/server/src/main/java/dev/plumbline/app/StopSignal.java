// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import java.util.concurrent.CountDownLatch;

/** Waits until the program is told to stop, and holds its end back until everything is closed. */
final class StopSignal implements AutoCloseable {
    private final CountDownLatch stopped = new CountDownLatch(1);
    private final CountDownLatch closed = new CountDownLatch(1);

    StopSignal() {
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            stopped.countDown();
            await(closed);
        }));
    }

    /** Returns after Ctrl-C or a polite kill. */
    void await() throws InterruptedException {
        stopped.await();
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Lets the program end. */
    @Override
    public void close() {
        closed.countDown();
    }
}
