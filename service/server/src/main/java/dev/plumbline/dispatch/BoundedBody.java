// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpResponse.BodySubscriber;
import java.net.http.HttpTimeoutException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow.Subscription;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * The body of an answer, which has to come to its end in time. The time-out of a request is over with the answer's headers
 * ({@link java.net.http.HttpRequest.Builder#timeout}); without a bound of its own a body that stops or drips would be read
 * for ever. Read by one thread.
 */
final class BoundedBody extends InputStream implements BodySubscriber<InputStream> {
    private final BlockingQueue<Arrival> arrivals = new LinkedBlockingQueue<>();
    private final CompletableFuture<Subscription> subscription = new CompletableFuture<>();
    private final long deadline;
    private Arrival current = new Arrival(List.of(), false, Optional.empty());
    private int next;
    private volatile boolean closed;

    /** Bytes that came; or no bytes, because that was the last of them or because they broke off. */
    private record Arrival(List<ByteBuffer> bytes, boolean end, Optional<Throwable> broken) {}

    /** @param whole from the headers to the last byte */
    BoundedBody(Duration whole) {
        this.deadline = System.nanoTime() + whole.toNanos();
    }

    @Override
    public CompletionStage<InputStream> getBody() {
        return CompletableFuture.completedStage(this);
    }

    @Override
    public void onSubscribe(Subscription begun) {
        subscription.complete(begun);
        if (closed) {
            begun.cancel();
        } else {
            begun.request(1);
        }
    }

    @Override
    public void onNext(List<ByteBuffer> bytes) {
        arrivals.add(new Arrival(bytes, false, Optional.empty()));
    }

    @Override
    public void onError(Throwable why) {
        arrivals.add(new Arrival(List.of(), false, Optional.of(why)));
    }

    @Override
    public void onComplete() {
        arrivals.add(new Arrival(List.of(), true, Optional.empty()));
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        while (!current.end()) {
            if (next < current.bytes().size()) {
                ByteBuffer bytes = current.bytes().get(next);
                int count = Math.min(length, bytes.remaining());
                bytes.get(into, offset, count);
                next += bytes.hasRemaining() ? 0 : 1;
                if (count > 0) {
                    return count;
                }
            } else {
                await();
            }
        }
        return -1;
    }

    private void await() throws IOException {
        boolean more = !current.bytes().isEmpty();
        if (more) {
            subscription.join().request(1);
        }
        Arrival came = arrival();
        if (came.broken().isPresent()) {
            throw new IOException("The answer broke off.", came.broken().get());
        }
        current = came;
        next = 0;
    }

    private Arrival arrival() throws IOException {
        try {
            Arrival came = arrivals.poll(Math.max(0, deadline - System.nanoTime()), TimeUnit.NANOSECONDS);
            boolean late = deadline - System.nanoTime() <= 0;
            if (came == null || (late && !came.end())) {
                close();
                throw new HttpTimeoutException("The answer did not come to its end in time.");
            }
            return came;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            close();
            throw new IOException("Plumbline is stopping.", e);
        }
    }

    /** What has not come yet is not waited for; the connection is given up where it is in the middle of it. */
    @Override
    public void close() {
        closed = true;
        if (subscription.isDone()) {
            subscription.join().cancel();
        }
    }
}
