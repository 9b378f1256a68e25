// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Requests drawn from a grammar of what no client should send: no fault of ours, no inside, and it lives on. TRUST T13. */
class HostileRequestsFlowTest {
    private static final int REQUESTS = Integer.getInteger("plumbline.hostileRequests", 1_000);
    private static final long SEED = Long.getLong("plumbline.seed", 20261130L);
    private static final int BETWEEN_LOOKS = 50;
    private static final Duration ALIVE_WITHIN = Duration.ofSeconds(1);
    private static final Pattern STATUS = Pattern.compile("HTTP/1\\.[01] (\\d{3})");

    /** Names of classes, traces, paths and versions of what is inside. */
    private static final Pattern INSIDE = Pattern.compile(
            "\\tat |\\.java:\\d|Exception|java\\.|jakarta\\.|sun\\.|jetty|javalin|kotlin|jackson|sqlite|pixelmed"
                    + "|\\.sqlite|/tmp/|/root/|12\\.1\\.\\d|7\\.2\\.\\d",
            Pattern.CASE_INSENSITIVE);

    private static final List<String> METHODS = List.of(
            "GET",
            "POST",
            "PUT",
            "DELETE",
            "HEAD",
            "OPTIONS",
            "TRACE",
            "PATCH",
            "CONNECT",
            "PROPFIND",
            "get",
            "G E T",
            "",
            "\u0001",
            "POST\tX",
            "A".repeat(5_000));
    private static final List<String> VERSIONS = List.of(
            "HTTP/1.1", "HTTP/1.1", "HTTP/1.1", "HTTP/1.1", "HTTP/1.0", "HTTP/0.9", "HTTP/9.9", "http/1.1", "X", "");
    private static final List<String> ROOTS = List.of(
            "/",
            "/v1",
            "/v1/plans",
            "/v1/comparisons",
            "/v1/frames",
            "/v1/marks",
            "/v1/cases",
            "/v1/cases/x/constraints",
            "/v1/records",
            "/v1/records/1.2.3",
            "/v1/dispatch",
            "/v1/dispatch/1/retry",
            "/v1/status",
            "/v1/worklist",
            "/v1/sight",
            "/v1/site/needles",
            "/v1/openapi.json",
            "/health/live",
            "/health/ready",
            "/dicomweb/studies",
            "/dicomweb/studies/1.2/series/1.3/instances/1.4/frames/1",
            "/dicomweb/studies/1.2/series/1.3/instances/1.4/rendered",
            "/cases",
            "/records",
            "*",
            "http://127.0.0.1:1/canary",
            "//127.0.0.1/canary");
    private static final List<String> TAILS = List.of(
            "",
            "",
            "",
            "/",
            "//",
            "/..",
            "/../../etc/passwd",
            "/..%2f..%2fetc/passwd",
            "/%2e%2e/%2e%2e/etc/passwd",
            "/%c0%ae%c0%ae/x",
            "/%00",
            "/%",
            "/%zz",
            "/;x=1",
            ";jsessionid=1",
            "/\\..\\..",
            "?",
            "?limit=-1",
            "?limit=99999999999999999999",
            "?limit=1&limit=2&offset=x",
            "?PatientID=%ff%fe",
            "?includefield=all&00100010=*",
            "?StudyDate=-",
            "?frame=0&window=1e999,NaN",
            "?%00=%00",
            "?" + "a=b&".repeat(2_000),
            "/" + "x".repeat(20_000),
            "/\u00e9\u4e2d",
            "#fragment",
            "/ x");
    private static final List<String> HEADERS = List.of(
            "Host: 127.0.0.1",
            "Host: ",
            "Host: a\r\nHost: b",
            "Host: evil.example.org:99999",
            "Content-Type: application/json",
            "Content-Type: application/dicom",
            "Content-Type: multipart/related; type=\"application/dicom\"; boundary=x",
            "Content-Type: multipart/related; boundary=" + "y".repeat(300),
            "Content-Type: multipart/related; boundary=\"",
            "Content-Type: ;;;",
            "Content-Type: application/json; charset=utf-7",
            "Content-Type: application/xml",
            "Content-Encoding: gzip",
            "Content-Length: 4294967296",
            "Content-Length: -1",
            "Content-Length: 5\r\nContent-Length: 6",
            "Content-Length: abc",
            "Transfer-Encoding: chunked",
            "Transfer-Encoding: chunked, identity",
            "Transfer-Encoding: x\r\nContent-Length: 3",
            "Expect: 100-continue",
            "Expect: the-impossible",
            "Accept: " + "application/dicom+json;q=2,".repeat(50),
            "Accept: */*;q=abc",
            "Accept: multipart/related; type=\"image/jpeg\"; transfer-syntax=1.2",
            "Accept: text/html",
            "Accept-Charset: \u0000",
            "Range: bytes=0-0,1-1,2-",
            "If-Match: \"",
            "If-Match: *",
            "Idempotency-Key: " + "k".repeat(4_000),
            "Idempotency-Key: \u0007",
            "X-HTTP-Method-Override: DELETE",
            "X-Forwarded-For: 127.0.0.1, <script>",
            "Forwarded: for=\"[::1]",
            "Authorization: Bearer " + "a.".repeat(2_000),
            "Cookie: a=b; =; " + "c".repeat(3_000),
            "Origin: http://evil.example.org",
            "Sec-Fetch-Site: cross-site",
            "Upgrade: h2c\r\nConnection: Upgrade, HTTP2-Settings\r\nHTTP2-Settings: AAMAAABkAAQAAP__",
            "Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: x\r\nSec-WebSocket-Version: 13",
            " Folded: header",
            "No colon at all",
            ": no name",
            "X-" + "n".repeat(17_000) + ": v",
            "X-Null: a\u0000b",
            "X-Lf: a\nX-Injected: b");
    private static final List<String> BODIES = List.of(
            "",
            "",
            "{}",
            "[]",
            "null",
            "{",
            "\"" + "s".repeat(200_000) + "\"",
            "[".repeat(5_000),
            "{\"a\":".repeat(500),
            "{\"schema\":\"plumbline-case/1\"}",
            "{\"schema\":\"plumbline-case/1\",\"frame\":{\"rows\":1e999,\"columns\":NaN}}",
            "{\"frame\":{},\"frame\":{}}",
            "{\"marks\":{\"target\":[9".repeat(3) + "]}}",
            "{\"n\":" + "9".repeat(10_000) + "}",
            "\ufeff{}",
            "\ud800",
            "<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]><x>&e;</x>",
            "--x\r\nContent-Type: application/dicom\r\n\r\nnothing\r\n--x--\r\n",
            "--x\r\n\r\n".repeat(1_000),
            "5\r\nhello\r\n0\r\n\r\n",
            "ffffffffffffffff\r\nx",
            "-5\r\nhello\r\n",
            "PK\u0003\u0004",
            "GET /smuggled HTTP/1.1\r\nHost: a\r\n\r\n",
            "\0".repeat(128) + "DICM",
            "\0".repeat(128) + "DICM\u0002\0\0\0UL\u0004\0\u00ff\u00ff\u00ff\u007f");

    private final Random random = new Random(SEED);

    private <T> T any(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    private byte[] request() {
        StringBuilder head = new StringBuilder(any(METHODS))
                .append(' ')
                .append(any(ROOTS))
                .append(any(TAILS))
                .append(' ')
                .append(any(VERSIONS))
                .append("\r\n");
        if (random.nextInt(8) > 0) {
            head.append("Host: 127.0.0.1\r\n");
        }
        for (int more = random.nextInt(5); more > 0; more--) {
            head.append(any(HEADERS)).append("\r\n");
        }
        byte[] body = any(BODIES).getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(3) > 0) {
            head.append("Content-Length: ").append(body.length).append("\r\n");
        }
        if (random.nextInt(3) > 0) {
            head.append("Connection: close\r\n");
        }
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        whole.writeBytes(head.append("\r\n").toString().getBytes(StandardCharsets.ISO_8859_1));
        whole.writeBytes(body);
        byte[] bytes = whole.toByteArray();
        if (random.nextInt(10) == 0) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    /** Everything that comes back until the connection ends; what came so far where it was reset. */
    private static String answer(int port, byte[] request) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request);
            socket.shutdownOutput();
            byte[] chunk = new byte[8_192];
            for (int count = socket.getInputStream().read(chunk);
                    count >= 0;
                    count = socket.getInputStream().read(chunk)) {
                all.write(chunk, 0, count);
            }
        } catch (SocketTimeoutException e) {
            String shown = new String(request, 0, Math.min(request.length, 500), StandardCharsets.ISO_8859_1);
            throw new IOException("The connection hangs after " + shown + "\nwith " + all, e);
        } catch (SocketException e) {
            return all.toString(StandardCharsets.UTF_8); // it ended while we were still sending
        }
        return all.toString(StandardCharsets.UTF_8);
    }

    @Test
    void answersEveryHostileRequestWithoutAFaultOfItsOwn() throws Exception {
        System.out.println("hostile requests, seed " + SEED);
        try (OpenDoor door = new OpenDoor()) {
            assertThat(door.get("/health/live").status()).isEqualTo(200);
            for (int i = 0; i < REQUESTS; i++) {
                byte[] request = request();
                String answer = answer(door.port(), request);
                String shown = "request " + i + ": "
                        + new String(request, 0, Math.min(request.length, 300), StandardCharsets.ISO_8859_1);
                requireNoFault(answer, shown);
                requireNoInside(answer, shown);
                if (i % BETWEEN_LOOKS == 0) {
                    requireAlive(door);
                }
            }
            requireAlive(door);
            assertThat(door.rooms.holdsNothing()).isTrue();
        }
    }

    @Test
    void refusesWhatOnceWasAFaultOfItsOwn() throws Exception {
        String json = "POST /v1/cases HTTP/1.1\r\nHost: a\r\nConnection: close\r\nContent-Type: application/json";
        try (OpenDoor door = new OpenDoor()) {
            assertThat(door.raw(json + "; charset=utf-7\r\nContent-Length: 2\r\n\r\n{}"))
                    .startsWith("HTTP/1.1 4");
            assertThat(door.raw(json + "\r\nContent-Length: 132\r\n\r\n" + "\0".repeat(128) + "DICM"))
                    .startsWith("HTTP/1.1 400");
            String socket = "GET /v1/status HTTP/1.1\r\nHost: a\r\nUpgrade: websocket\r\nConnection: close, Upgrade\r\n"
                    + "Sec-WebSocket-Key: x\r\nSec-WebSocket-Version: 13\r\n\r\n";
            assertThat(door.raw(socket)).startsWith("HTTP/1.1 200").doesNotContain("JSESSIONID");
        }
    }

    private static void requireNoFault(String answer, String request) {
        for (Matcher status = STATUS.matcher(answer); status.find(); ) {
            int code = Integer.parseInt(status.group(1));
            boolean refusedByTheProtocol = code == 501 || code == 505;
            assertThat(code < 500 || code == 503 || code == 507 || refusedByTheProtocol)
                    .as(request + "\n" + answer)
                    .isTrue();
        }
    }

    /** The description of the routes and pages are what we wrote ourselves; only refusals could show anything else. */
    private static void requireNoInside(String answer, String request) {
        int end = answer.indexOf("\r\n\r\n");
        String head = end < 0 ? answer : answer.substring(0, end);
        assertThat(head)
                .as(request)
                .doesNotContainIgnoringCase("\nServer:")
                .doesNotContainIgnoringCase("X-Powered-By")
                .doesNotContainIgnoringCase("Set-Cookie");
        if (answer.startsWith("HTTP/1.1 4") || answer.startsWith("HTTP/1.1 5")) {
            assertThat(INSIDE.matcher(answer).find())
                    .as(request + "\n" + answer)
                    .isFalse();
        }
    }

    private static void requireAlive(OpenDoor door) throws Exception {
        long began = System.nanoTime();
        assertThat(door.get("/health/live").status()).isEqualTo(200);
        assertThat(Duration.ofNanos(System.nanoTime() - began)).isLessThan(ALIVE_WITHIN);
    }
}
