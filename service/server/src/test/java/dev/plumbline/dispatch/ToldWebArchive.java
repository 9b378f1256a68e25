// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A DICOMweb service that reads each request to its end and answers as the test says, byte by byte. */
final class ToldWebArchive implements AutoCloseable {
    private static final Pattern LENGTH = Pattern.compile("content-length: (\\d+)");

    final List<Asked> asked = new CopyOnWriteArrayList<>();
    private final ServerSocket server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final CountDownLatch over = new CountDownLatch(1);
    private final Talk talk;

    /** Head of a request, in lower case, and its body. */
    record Asked(String head, String body) {
        boolean stores() {
            return head.startsWith("post ");
        }
    }

    /** What is written on the connection, which is closed then. */
    interface Talk {
        void answer(Asked asked, OutputStream out) throws IOException;
    }

    ToldWebArchive(Talk talk) throws IOException {
        this.talk = talk;
        Thread thread = new Thread(this::run, "told-web");
        thread.setDaemon(true);
        thread.start();
    }

    WebPeer peer(Optional<Path> tokenFile, Duration response) {
        URI base = URI.create("http://127.0.0.1:" + server.getLocalPort() + "/dicom-web");
        return new WebPeer(new WebPeer.Place(base, tokenFile, Optional.empty()), Duration.ofSeconds(5), response);
    }

    static void answer(OutputStream out, String status, String... headers) throws IOException {
        out.write(("HTTP/1.1 " + status + "\r\nConnection: close\r\n" + String.join("\r\n", headers)
                        + (headers.length == 0 ? "" : "\r\n") + "\r\n")
                .getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    static void json(OutputStream out, String status, String body) throws IOException {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        answer(out, status, "Content-Type: application/dicom+json", "Content-Length: " + bytes.length);
        out.write(bytes);
    }

    /** Until the test is over, or so many milliseconds. */
    void pause(long milliseconds) {
        try {
            over.await(milliseconds, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    boolean isOver() {
        return over.getCount() == 0;
    }

    private void run() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                Thread thread = new Thread(() -> converse(socket), "told-web-talks");
                thread.setDaemon(true);
                thread.start();
            } catch (IOException e) {
                return; // the test is over
            }
        }
    }

    private void converse(Socket socket) {
        try (socket) {
            InputStream in = new BufferedInputStream(socket.getInputStream());
            String head = head(in);
            Matcher length = LENGTH.matcher(head);
            byte[] body = in.readNBytes(length.find() ? Integer.parseInt(length.group(1)) : 0);
            Asked each = new Asked(head, new String(body, StandardCharsets.ISO_8859_1));
            asked.add(each);
            talk.answer(each, socket.getOutputStream());
            socket.getOutputStream().flush();
        } catch (IOException e) {
            Thread.onSpinWait(); // the other end left
        }
    }

    private static String head(InputStream in) throws IOException {
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        String text = "";
        while (!text.endsWith("\r\n\r\n")) {
            int next = in.read();
            if (next < 0) {
                throw new IOException("The request broke off.");
            }
            head.write(next);
            text = head.toString(StandardCharsets.ISO_8859_1);
        }
        return text.toLowerCase(Locale.ROOT);
    }

    @Override
    public void close() throws IOException {
        over.countDown();
        server.close();
    }
}
