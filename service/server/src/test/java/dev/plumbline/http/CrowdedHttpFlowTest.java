// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A crowd that sends slowly, or does not go on, keeps nobody from being answered. TRUST 2.2 (slow-loris), T15, T16. */
class CrowdedHttpFlowTest {
    private static final int CROWD = Integer.getInteger("plumbline.slowSockets", 2_000);
    private static final Duration AT_ONCE = Duration.ofSeconds(1);
    private static final String HEAD = " HTTP/1.1\r\nHost: 127.0.0.1\r\n";

    private final List<Socket> crowd = new ArrayList<>();

    @AfterEach
    void disperse() throws IOException {
        for (Socket socket : crowd) {
            socket.close();
        }
    }

    /** How somebody in the crowd begins; none goes on. */
    enum Beginning {
        NOTHING(""),
        HALF_A_HEADER("GET /health/live" + HEAD + "X-Half: "),
        A_SMALL_BODY_THAT_STALLS(
                "POST /v1/plans" + HEAD + "Content-Type: application/json\r\nContent-Length: 1000\r\n\r\n{"),
        A_LARGE_BODY_THAT_STALLS(
                "POST /v1/frames" + HEAD + "Content-Type: application/dicom\r\nContent-Length: 100000000\r\n\r\n{"),
        A_CHUNKED_BODY_THAT_STALLS(
                "POST /v1/plans" + HEAD + "Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n5\r\n{");

        private final byte[] bytes;

        Beginning(String text) {
            bytes = text.getBytes(StandardCharsets.US_ASCII);
        }
    }

    private Socket open(int port, byte[] begun) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
        crowd.add(socket);
        socket.getOutputStream().write(begun);
        return socket;
    }

    private static Duration answered(OpenDoor door, int status, String path, String json) throws Exception {
        long began = System.nanoTime();
        OpenDoor.Answer answer = json.isEmpty() ? door.get(path) : door.post(path, json);
        assertThat(answer.status()).as(answer.text()).isEqualTo(status);
        return Duration.ofNanos(System.nanoTime() - began);
    }

    /** No connection attempt of a burst is dropped, to be tried again by its system after a second. */
    @Test
    void letsABurstOfConnectionsIn() throws Exception {
        try (OpenDoor door = new OpenDoor()) {
            List<Duration> waits = new ArrayList<>();
            for (int i = 0; i < 1_000; i++) {
                long began = System.nanoTime();
                open(door.port(), new byte[0]);
                waits.add(Duration.ofNanos(System.nanoTime() - began));
            }
            long dropped =
                    waits.stream().filter(wait -> wait.compareTo(AT_ONCE) >= 0).count();
            assertThat(dropped).isLessThan(3); // with a backlog of 50 every 51st is dropped
        }
    }

    @ParameterizedTest
    @EnumSource(Beginning.class)
    void answersAValidRequestAtOnceBesideACrowd(Beginning beginning) throws Exception {
        try (OpenDoor door = new OpenDoor()) {
            answered(door, 200, "/health/live", "");
            answered(door, 422, "/v1/plans", "{}");
            for (int i = 0; i < CROWD; i++) {
                open(door.port(), beginning.bytes);
            }
            assertThat(answered(door, 200, "/health/live", "")).isLessThan(AT_ONCE);
            assertThat(answered(door, 422, "/v1/plans", "{}")).isLessThan(AT_ONCE);
        }
    }

    @Test
    void tellsWhoSendsOneLargeBodyTooMany() throws Exception {
        byte[] head = ("POST /v1/frames" + HEAD
                        + "Content-Type: application/dicom\r\nContent-Length: 100000000\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII);
        byte[] begun = new byte[head.length + (70 << 10)];
        System.arraycopy(head, 0, begun, 0, head.length);
        ExecutorService listeners = Executors.newCachedThreadPool();
        try (OpenDoor door = new OpenDoor()) {
            answered(door, 200, "/health/live", "");
            Queue<String> told = new ConcurrentLinkedQueue<>();
            CountDownLatch fifty = new CountDownLatch(50);
            for (int i = 0; i < 150; i++) {
                Socket socket = open(door.port(), begun);
                listeners.submit(() -> {
                    told.add(beginning(socket));
                    fifty.countDown();
                    return fifty;
                });
            }
            assertThat(fifty.await(30, TimeUnit.SECONDS)).isTrue();
            assertThat(told)
                    .hasSize(50)
                    .allSatisfy(answer ->
                            assertThat(answer).startsWith("HTTP/1.1 503").contains("Retry-After: 2"));
            assertThat(answered(door, 200, "/health/live", "")).isLessThan(AT_ONCE);
            assertThat(answered(door, 422, "/v1/plans", "{}")).isLessThan(AT_ONCE);
        } finally {
            listeners.shutdownNow();
        }
    }

    /** Waits for it. */
    private static String beginning(Socket socket) throws IOException {
        return new String(socket.getInputStream().readNBytes(100), StandardCharsets.US_ASCII);
    }

    /** Reads a body to its end and answers; what it gets instead of a body ends the request. */
    private static final class Reader extends Handler.Abstract {
        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            try (InputStream in = Content.Source.asInputStream(request)) {
                in.readAllBytes();
            }
            callback.succeeded();
            return true;
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET / HTTP/1.1\r\nX-Slow: ",
                "POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 100000\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: a\r\n\r\nGET / HTTP/1.1\r\nX-Slow: "
            })
    void endsWhatDrips(String begun) throws Exception {
        Server server = new Server();
        ServerConnector connector = new ServerConnector(server);
        connector.setHost("127.0.0.1");
        server.addConnector(connector);
        SlowSenders slow = new SlowSenders(Duration.ofMillis(500));
        slow.setHandler(new Reader());
        server.setHandler(slow);
        server.start();
        ScheduledExecutorService drip = Executors.newSingleThreadScheduledExecutor();
        try {
            Socket socket = open(connector.getLocalPort(), begun.getBytes(StandardCharsets.US_ASCII));
            socket.setSoTimeout(10_000);
            drip.scheduleAtFixedRate(() -> drip(socket), 0, 50, TimeUnit.MILLISECONDS);
            assertThat(isEnded(socket)).isTrue();
        } finally {
            drip.shutdownNow();
            server.stop();
        }
    }

    private static void drip(Socket socket) {
        try {
            socket.getOutputStream().write('a');
        } catch (IOException e) {
            throw new IllegalStateException("It was ended, as it should be.", e);
        }
    }

    private static boolean isEnded(Socket socket) throws IOException {
        try {
            socket.getInputStream().readAllBytes();
            return true;
        } catch (SocketException e) {
            return true; // it was reset, as bytes were still on their way
        } catch (SocketTimeoutException e) {
            return false;
        }
    }
}
