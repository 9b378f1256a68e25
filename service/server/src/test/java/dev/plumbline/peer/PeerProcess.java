// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.peer;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A program that is not ours, as a peer on a free loopback port: started, waited for until it answers, stopped by its own
 * process. A program that is missing fails the test.
 */
public final class PeerProcess implements AutoCloseable {
    private static final String DICTIONARY = "/usr/share/libdcmtk17/dicom.dic";
    private static final long START_SECONDS = 30;
    private static final long STOP_SECONDS = 15;

    private final Process process;
    private final Path log;
    private final int port;

    private PeerProcess(Process process, Path log, int port) {
        this.process = process;
        this.log = log;
        this.port = port;
    }

    /** Starts the program and waits until something listens at the port. */
    public static PeerProcess start(Path folder, int port, List<String> command) throws IOException {
        Path log = Files.createTempFile(folder, "peer", ".log");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile());
        builder.environment().put("DCMDICTPATH", DICTIONARY);
        PeerProcess peer = new PeerProcess(builder.start(), log, port);
        peer.awaitListening();
        return peer;
    }

    private void awaitListening() throws IOException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_SECONDS);
        while (System.nanoTime() < deadline && process.isAlive()) {
            try (Socket socket = new Socket()) {
                socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 1000);
                return;
            } catch (IOException e) {
                Thread.onSpinWait();
            }
        }
        close();
        throw new IOException("The peer does not listen: " + Files.readString(log, StandardCharsets.ISO_8859_1));
    }

    public int port() {
        return port;
    }

    /** What the program has said so far. */
    public String said() throws IOException {
        return Files.readString(log, StandardCharsets.ISO_8859_1);
    }

    /** A port that was free a moment ago. */
    public static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    /** What a program that ran to its end has said. */
    public record Ended(int code, String said) {}

    /** Runs a program to its end. */
    public static Ended run(Path folder, List<String> command) throws IOException {
        return run(folder, command, Duration.ofMinutes(2));
    }

    /** As {@link #run(Path, List)}, waiting so long for its end. */
    public static Ended run(Path folder, List<String> command, Duration most) throws IOException {
        Path log = Files.createTempFile(folder, "client", ".log");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile());
        builder.environment().put("DCMDICTPATH", DICTIONARY);
        Process process = builder.start();
        try {
            if (!process.waitFor(most.toSeconds(), TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException(command.get(0) + " did not end.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
        return new Ended(process.exitValue(), Files.readString(log, StandardCharsets.ISO_8859_1));
    }

    @Override
    public void close() throws IOException {
        process.destroy();
        try {
            if (!process.waitFor(STOP_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }
}
