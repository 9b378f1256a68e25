// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * DICOM objects as immutable files named by the SHA-256 of their bytes; no name ever comes from outside.
 *
 * <p>Order of every receipt: temporary file, gate and parse, force, rename, force the folder; the caller then commits
 * the index and only then answers. What fails on the way leaves nothing behind.
 */
final class ObjectFiles {
    private static final int PREAMBLE_BYTES = 128;
    private static final int CHUNK_BYTES = 1 << 16;

    /** How often the disk is looked at while a large object comes in. Source: design choice. */
    private static final int LOOK_BYTES = 1 << 24;

    private static final byte[][] TIFF_STARTS = {{'I', 'I', 42, 0}, {'M', 'M', 0, 42}};

    private final DataFolder folder;
    private final LowWater lowWater;
    private final AtomicLong received = new AtomicLong();

    /** How many are between the placing of a file and the commit of its row, by digest. */
    private final Map<String, Integer> placing = new ConcurrentHashMap<>();

    ObjectFiles(DataFolder folder, LowWater lowWater) {
        this.folder = folder;
        this.lowWater = lowWater;
    }

    boolean hasRoom() {
        try {
            return lowWater.hasRoom(folder.root());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @throws Refusal {@link Problem.NoRoom}, before anything is read */
    void requireRoom(long declaredBytes) {
        try {
            lowWater.requireRoom(folder.root(), declaredBytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Writes the bytes beside the objects and reads them as a DICOM object; not yet durable, not yet held.
     *
     * @param most how many bytes may come
     * @throws Refusal when the bytes are too many, do not pass the gate, or do not fit the disk
     */
    Staged stage(InputStream bytes, Bound most) {
        Path file = folder.incoming().resolve(received.incrementAndGet() + ".tmp");
        boolean whole = false;
        try (FileChannel channel = create(file)) {
            MessageDigest digest = sha256();
            long size = copy(bytes, channel, digest, most);
            Staged staged = new Staged(file, HexFormat.of().formatHex(digest.digest()), size, DicomFile.open(file));
            whole = true;
            return staged;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            if (!whole) {
                drop(file);
            }
        }
    }

    private FileChannel create(Path file) throws IOException {
        try {
            return FileChannel.open(
                    file, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), DataFolder.FILE_MODE);
        } catch (IOException e) {
            throw orNoRoom(e);
        }
    }

    /** The failure of a write, as a refusal where the disk is full or takes nothing. */
    private IOException orNoRoom(IOException failed) {
        LowWater.refusal(folder.root(), failed).ifPresent(refusal -> {
            throw refusal;
        });
        return failed;
    }

    private long copy(InputStream bytes, FileChannel channel, MessageDigest digest, Bound most) throws IOException {
        byte[] start = bytes.readNBytes(PREAMBLE_BYTES);
        if (start.length < PREAMBLE_BYTES) {
            throw new Refusal(new Problem.MalformedObject(
                    "", "These bytes are too few for a DICOM file.", "Send a whole DICOM Part 10 file."));
        }
        byte[] preamble = harmless(start) ? start : new byte[PREAMBLE_BYTES];
        digest.update(preamble);
        write(channel, preamble, PREAMBLE_BYTES);
        byte[] chunk = new byte[CHUNK_BYTES];
        long size = PREAMBLE_BYTES;
        for (int count = bytes.read(chunk); count >= 0; count = bytes.read(chunk)) {
            size += count;
            if (size > most.bytes()) {
                throw most.beyond().get();
            }
            if (size / LOOK_BYTES > (size - count) / LOOK_BYTES) {
                requireRoom(0);
            }
            digest.update(chunk, 0, count);
            write(channel, chunk, count);
        }
        return size;
    }

    /** A preamble may be anything, also the start of a program; only zeros and TIFF are kept. Source: PS3.10 7.1. */
    private static boolean harmless(byte[] preamble) {
        for (byte[] tiff : TIFF_STARTS) {
            if (Arrays.equals(preamble, 0, tiff.length, tiff, 0, tiff.length)) {
                return true;
            }
        }
        return Arrays.equals(preamble, new byte[PREAMBLE_BYTES]);
    }

    private void write(FileChannel channel, byte[] bytes, int count) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes, 0, count);
        try {
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
        } catch (IOException e) {
            throw orNoRoom(e);
        }
    }

    /**
     * Makes staged files durable and commits what speaks of them. Where that is refused, files are taken away again that no
     * row speaks of, unless somebody else is about to commit the very same bytes.
     *
     * @param commit calls {@link #place} for each of them
     * @param isHeld whether a row speaks of a staged file
     */
    <T> T placing(Collection<Staged> staged, Predicate<Staged> isHeld, Supplier<T> commit) {
        staged.forEach(each -> placing.merge(each.digest(), 1, Integer::sum));
        boolean refused = false;
        try {
            return commit.get();
        } catch (Refusal refusal) {
            refused = true;
            throw refusal;
        } finally {
            for (Staged each : staged) {
                boolean unwanted = refused;
                placing.computeIfPresent(each.digest(), (digest, count) -> {
                    if (count == 1 && unwanted && !isHeld.test(each)) {
                        drop(folder.object(digest));
                    }
                    return count == 1 ? null : count - 1;
                });
            }
        }
    }

    /** Makes the staged file durable under its final name. An equal file already there is as good. */
    void place(Staged staged) {
        settle(staged, folder.object(staged.digest()));
    }

    /** Puts a staged file aside, durable, where a person can look at it. */
    void quarantine(Staged staged) {
        settle(staged, folder.quarantine().resolve(staged.digest() + ".dcm"));
    }

    /** Puts a placed file aside that no index row speaks of. */
    void quarantine(String digest) {
        Path from = folder.object(digest);
        try {
            if (Files.exists(from)) {
                Files.move(from, folder.quarantine().resolve(digest + ".dcm"), StandardCopyOption.ATOMIC_MOVE);
                DataFolder.force(folder.quarantine());
                DataFolder.force(from.resolveSibling("."));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void settle(Staged staged, Path target) {
        try {
            try (FileChannel channel = FileChannel.open(staged.file(), StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Files.move(staged.file(), target, StandardCopyOption.ATOMIC_MOVE);
            DataFolder.force(target.resolveSibling("."));
        } catch (IOException e) {
            throw new UncheckedIOException(orNoRoom(e));
        }
    }

    Path root() {
        return folder.root();
    }

    Path file(String digest) {
        return folder.object(digest);
    }

    private static void drop(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** SHA-256 of a file's bytes, hexadecimal. */
    static String digest(Path file) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }

    /**
     * How many bytes are taken.
     *
     * @param beyond why more are refused
     */
    record Bound(long bytes, Supplier<Refusal> beyond) {
        /** For one object. */
        static Bound ofObject(long bytes) {
            return new Bound(bytes, () -> new Refusal(new Problem.TooLarge("", bytes)));
        }
    }

    /**
     * A received object that is whole and well formed but not yet kept; closing it drops what was not placed.
     *
     * @param digest SHA-256 of the bytes as they lie on disk, hexadecimal
     * @param size in bytes
     */
    record Staged(Path file, String digest, long size, DicomFile object) implements AutoCloseable {
        @Override
        public void close() {
            drop(file);
        }
    }
}
