// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.document.StrictJson;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * A stream of cases, one JSON document a line, to a stream of answers in the same order, on all cores and in constant
 * memory: lines travel in bundles, and only so many bundles are on their way at once.
 *
 * <p>A line that cannot be answered is answered by what is wrong with it; blank lines are passed over, but counted.
 */
final class Batch {
    private static final int BUNDLE_LINES = 64;
    private static final int BUNDLE_BYTES = StrictJson.LIMIT_BYTES;
    private static final long TELL_EVERY_NANOS = 2_000_000_000L;

    private final BatchAnswers answers;
    private final Terminal terminal;
    private final int threads = Runtime.getRuntime().availableProcessors();

    /** One thread fills it, another empties it; that bounds what is held at once. */
    private final BlockingQueue<Future<Answers>> underWay = new ArrayBlockingQueue<>(2 * threads + 2);

    private final AtomicBoolean readerGone = new AtomicBoolean();

    Batch(BatchAnswers answers, Terminal terminal) {
        this.answers = answers;
        this.terminal = terminal;
    }

    /** What became of a bundle; one without lines stands for the end of the input. */
    private record Answers(ByteArrayOutputStream text, int lines, int refused, int code) {
        static Answers end() {
            return new Answers(new ByteArrayOutputStream(0), 0, 0, ExitCode.YES);
        }

        boolean isEnd() {
            return lines == 0;
        }
    }

    /**
     * Reads to the end, or until nobody reads the answers any more.
     *
     * @return the worst exit code among the lines
     */
    int run(InputStream in, OutputStream out) throws IOException {
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        ExecutorService reading = Executors.newSingleThreadExecutor();
        try {
            Future<?> read = reading.submit(() -> {
                readAll(in, workers);
                return null;
            });
            int code = writeAll(out);
            if (!readerGone.get()) {
                read.get();
            }
            return code;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("The batch was interrupted.", e);
        } catch (ExecutionException e) {
            throw new IOException("The batch could not be read to its end.", e.getCause());
        } finally {
            reading.shutdownNow();
            workers.shutdownNow();
        }
    }

    /** The end is put in even when reading fails, so that the writer never waits for ever. */
    private void readAll(InputStream in, ExecutorService workers) throws IOException, InterruptedException {
        try {
            LineReader lines = new LineReader(in, StrictJson.LIMIT_BYTES);
            List<LineReader.Line> bundle = new ArrayList<>();
            int bytes = 0;
            for (Optional<LineReader.Line> line = lines.next(); line.isPresent(); line = lines.next()) {
                if (!line.get().isBlank()) {
                    bundle.add(line.get());
                    bytes += line.get().bytes().length;
                }
                if (bundle.size() == BUNDLE_LINES || bytes > BUNDLE_BYTES || lines.mayWait()) {
                    send(bundle, workers);
                    bundle = new ArrayList<>();
                    bytes = 0;
                }
            }
            send(bundle, workers);
        } finally {
            underWay.put(workers.submit(Answers::end));
        }
    }

    private void send(List<LineReader.Line> bundle, ExecutorService workers) throws InterruptedException {
        if (!bundle.isEmpty()) {
            underWay.put(workers.submit(() -> answer(bundle)));
        }
    }

    private Answers answer(List<LineReader.Line> bundle) throws IOException {
        ByteArrayOutputStream text = new ByteArrayOutputStream(bundle.size() << 14);
        int refused = 0;
        int code = ExitCode.YES;
        for (LineReader.Line line : bundle) {
            int one = answers.answer(line, text);
            refused += one == ExitCode.YES ? 0 : 1;
            code = Math.max(code, one);
        }
        return new Answers(text, bundle.size(), refused, code);
    }

    private int writeAll(OutputStream out) throws InterruptedException, ExecutionException {
        long lines = 0;
        long refused = 0;
        int code = ExitCode.YES;
        long told = System.nanoTime();
        for (Answers done = underWay.take().get();
                !done.isEnd();
                done = underWay.take().get()) {
            try {
                done.text().writeTo(out);
                if (underWay.isEmpty()) {
                    out.flush();
                }
            } catch (IOException e) { // whoever read the answers has gone: nothing is left to do, and no fault
                readerGone.set(true);
                return code;
            }
            lines += done.lines();
            refused += done.refused();
            code = Math.max(code, done.code());
            if (System.nanoTime() - told > TELL_EVERY_NANOS) {
                told = System.nanoTime();
                tell(lines, refused);
            }
        }
        tell(lines, refused);
        return code;
    }

    private void tell(long lines, long refused) {
        terminal.note("plumbline: " + lines + " cases read, " + refused + " refused");
    }
}
