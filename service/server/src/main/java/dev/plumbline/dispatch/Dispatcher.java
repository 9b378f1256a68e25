// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.dispatch.Courier.Times;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.DoubleSupplier;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One courier on a thread of its own for each destination, from {@link #start} to {@link #close}. */
public final class Dispatcher implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Dispatcher.class);

    /** After a fault of ours nothing is tried for so long. Source: design choice. */
    private static final Duration AFTER_FAULT = Duration.ofSeconds(30);

    private final List<Round> rounds = new ArrayList<>();
    private volatile boolean open = true;

    /**
     * What the dispatcher may not make itself.
     *
     * @param nanoTime a clock that nobody sets
     * @param chance from 0 to 1, evenly
     * @param uids new ones, for transactions
     */
    public record Given(Clock clock, LongSupplier nanoTime, DoubleSupplier chance, Supplier<String> uids) {}

    private Dispatcher() {}

    /** Starts to carry what waits in the store. */
    public static Dispatcher start(Archive archive, List<Destination> destinations, Given given) {
        Dispatcher dispatcher = new Dispatcher();
        Times times = new Times(given.clock(), given.nanoTime(), new Backoff(given.chance()), given.uids());
        for (Destination destination : destinations) {
            dispatcher.rounds.add(dispatcher.new Round(destination.name(), new Courier(destination, archive, times)));
        }
        dispatcher.rounds.forEach(round -> round.thread.start());
        return dispatcher;
    }

    /** There is something new to carry. */
    public void wake() {
        rounds.forEach(round -> round.signal.release());
    }

    /** An operator wants this one to be tried now. */
    void hurry(long id) {
        rounds.forEach(round -> round.hurried.add(id));
        wake();
    }

    private final class Round {
        private final Courier courier;
        private final Semaphore signal = new Semaphore(0);
        private final Queue<Long> hurried = new ConcurrentLinkedQueue<>();
        private final Thread thread;

        Round(String name, Courier courier) {
            this.courier = courier;
            this.thread = new Thread(this::run, "dispatch-" + name);
        }

        private void run() {
            try {
                while (open) {
                    for (Long id = hurried.poll(); id != null; id = hurried.poll()) {
                        courier.hurry(id);
                    }
                    Duration wait = once();
                    if (!wait.isZero()) {
                        courier.rest();
                        await(wait);
                    }
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            } finally {
                courier.rest();
            }
        }

        private void await(Duration wait) throws InterruptedException {
            if (signal.tryAcquire(wait.toMillis() + 1, TimeUnit.MILLISECONDS)) {
                signal.drainPermits();
            }
        }

        private Duration once() {
            try {
                return courier.round();
            } catch (RuntimeException e) {
                if (open) {
                    LOG.error("The dispatch failed and is tried again in " + AFTER_FAULT.toSeconds() + " s.", e);
                }
                return AFTER_FAULT;
            }
        }
    }

    @Override
    public void close() {
        open = false;
        rounds.forEach(round -> round.thread.interrupt());
        try {
            for (Round round : rounds) {
                round.thread.join(TimeUnit.SECONDS.toMillis(10));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
