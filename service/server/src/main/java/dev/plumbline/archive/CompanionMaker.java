// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.ComposedObject;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes the companions of signed reports after the signature was answered for: nobody at the bedside waits for pictures to
 * be drawn. They are a function of what the signature kept, so they come out the same whenever that is, also after a crash;
 * nothing of a record is sent before it is whole.
 *
 * <p>Between {@link #start} and {@link #close} a thread of its own does this; otherwise it is done when a record is filed.
 * One record at a time, because pictures need memory.
 */
public final class CompanionMaker implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(CompanionMaker.class);

    /** What failed is tried again after so long. Source: design choice. */
    private static final Duration AFTER_FAILURE = Duration.ofSeconds(60);

    private final Records records;
    private final Archive archive;
    private final ReentrantLock one = new ReentrantLock(true);
    private final Semaphore signal = new Semaphore(0);
    private final Map<Key, Long> failedAt = new ConcurrentHashMap<>();
    private volatile Optional<Background> background = Optional.empty();

    private record Key(String caseId, int revision) {
        static Key of(DueCompanions due) {
            return new Key(due.caseId(), due.revision());
        }
    }

    CompanionMaker(Records records, Archive archive) {
        this.records = records;
        this.archive = archive;
    }

    /**
     * Goes on where an earlier process stopped, then with what is signed from now on.
     *
     * @param nanoTime a clock that nobody sets
     */
    public void start(LongSupplier nanoTime) {
        Background started = new Background(nanoTime);
        background = Optional.of(started);
        started.thread.start();
    }

    /** A record was signed. */
    void wake() {
        if (background.isPresent()) {
            signal.release();
        } else {
            composeAll();
        }
    }

    /** Composes what is due of a study now, so that who was answered for a signature finds the whole record. */
    public void finish(String studyInstanceUid) {
        archive.store().companionsDue(studyInstanceUid).forEach(this::compose);
    }

    /**
     * Composes what is due of a record's case now.
     *
     * @throws Refusal {@link Problem.Conflict} where that fails
     */
    void require(StoredRevision record) {
        String study = archive.held(record.reportUid()).identity().studyInstanceUid();
        finish(study);
        Optional<DueCompanions> failed = archive.store().companionsDue(study).stream()
                .filter(due -> due.caseId().equals(record.caseId()))
                .findFirst();
        if (failed.isPresent()) {
            throw new Refusal(new Problem.Conflict(
                    "",
                    "The record is not whole, as its companions cannot be composed: "
                            + failed.get().words(),
                    "Mend the cause and send the request again in a minute."));
        }
    }

    private void composeAll() {
        try {
            for (List<DueCompanions> due = ready(); !due.isEmpty(); due = ready()) {
                due.stream().filter(each -> !stopped()).forEach(this::compose);
            }
        } catch (RuntimeException e) {
            LOG.error("The store did not answer for the companions that are due; asked again later.", e);
        }
    }

    private List<DueCompanions> ready() {
        return stopped()
                ? List.of()
                : archive.store().companionsDue().stream()
                        .filter(due -> !isResting(due))
                        .toList();
    }

    private boolean stopped() {
        return background.isPresent() && !background.get().open;
    }

    private boolean isResting(DueCompanions due) {
        Long failed = failedAt.get(Key.of(due));
        return failed != null && now() - failed < AFTER_FAILURE.toNanos();
    }

    private long now() {
        return background.map(each -> each.nanoTime.getAsLong()).orElse(0L);
    }

    private void compose(DueCompanions due) {
        one.lock();
        try {
            boolean still = archive.store().companionsDue(due.studyInstanceUid()).stream()
                    .map(Key::of)
                    .anyMatch(Key.of(due)::equals);
            if (still && !isResting(due)) {
                composeOrNote(due);
            }
        } finally {
            one.unlock();
        }
    }

    private void composeOrNote(DueCompanions due) {
        try {
            List<byte[]> companions = records.companions(due.caseId(), due.revision()).stream()
                    .map(ComposedObject::bytes)
                    .toList();
            archive.complete(due, companions);
            failedAt.remove(Key.of(due));
        } catch (RuntimeException | OutOfMemoryError e) {
            LOG.error("The companions of a record could not be composed; tried again later.", e);
            failedAt.put(Key.of(due), now());
            archive.store().write(writing -> {
                writing.failed(due, words(e));
                return true;
            });
        }
    }

    private static String words(Throwable e) {
        if (e instanceof Refusal refusal) {
            return refusal.problem().detail();
        }
        return e instanceof StoreDamaged
                ? "The file of a frame or of the report is damaged; run doctor."
                : "Plumbline itself failed; its log says how.";
    }

    /** Stops after the record that is being composed. */
    @Override
    public void close() {
        background.ifPresent(Background::close);
    }

    private final class Background {
        private final LongSupplier nanoTime;
        private final Thread thread = new Thread(this::run, "companions");
        private volatile boolean open = true;

        Background(LongSupplier nanoTime) {
            this.nanoTime = nanoTime;
        }

        private void run() {
            try {
                while (open) {
                    composeAll();
                    if (signal.tryAcquire(AFTER_FAILURE.toMillis(), TimeUnit.MILLISECONDS)) {
                        signal.drainPermits();
                    }
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }

        /** Not interrupted, because that would close the store's file under its hands. */
        void close() {
            open = false;
            signal.release();
            try {
                thread.join();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
