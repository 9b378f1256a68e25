// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.UidSyntax;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * The folder that holds everything: readable by its owner only, used by one process at a time.
 *
 * <p>{@code objects/xx/SHA256.dcm} the DICOM objects, {@code incoming} what is being received and empty after a start,
 * {@code quarantine} what contradicts an object already held, {@code store.sqlite} the state, {@code device-observer-uid}
 * who we are, {@code lock}.
 */
public final class DataFolder implements AutoCloseable {
    private static final Set<PosixFilePermission> OWNER_FOLDER = PosixFilePermissions.fromString("rwx------");
    private static final Set<PosixFilePermission> OWNER_FILE = PosixFilePermissions.fromString("rw-------");

    static final FileAttribute<?> FILE_MODE = PosixFilePermissions.asFileAttribute(OWNER_FILE);

    private final Path root;
    private final FileChannel lockFile;

    private DataFolder(Path root, FileChannel lockFile) {
        this.root = root;
        this.lockFile = lockFile;
    }

    /**
     * Takes the folder for this process, making it where it is missing, and removes what an interrupted receipt left.
     *
     * @throws Refusal {@link Problem.Conflict} when another process uses the folder
     */
    public static DataFolder open(Path root) throws IOException {
        makeFolder(root);
        FileChannel lockFile = FileChannel.open(
                root.resolve("lock"), Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE), FILE_MODE);
        if (lock(lockFile).isEmpty()) {
            lockFile.close();
            throw new Refusal(new Problem.Conflict(
                    "",
                    "The data folder " + root + " is in use by another running Plumbline.",
                    "Stop that one first, or name another data folder."));
        }
        DataFolder folder = new DataFolder(root, lockFile);
        folder.prepare();
        return folder;
    }

    private static Optional<FileLock> lock(FileChannel file) throws IOException {
        try {
            return Optional.ofNullable(file.tryLock());
        } catch (OverlappingFileLockException e) {
            // The other holder lives in this very process; for the caller that is the same answer.
            return Optional.empty();
        }
    }

    private void prepare() throws IOException {
        makeFolder(incoming());
        makeFolder(quarantine());
        makeFolder(objects());
        for (int i = 0; i < 1 << Byte.SIZE; i++) {
            makeFolder(objects().resolve(String.format("%02x", i)));
        }
        force(objects());
        force(root);
        try (DirectoryStream<Path> leftovers = Files.newDirectoryStream(incoming())) {
            for (Path leftover : leftovers) {
                Files.delete(leftover);
            }
        }
    }

    /** With everything above it; readable by its owner only. */
    static void makeFolder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(OWNER_FOLDER));
        }
    }

    /** Makes the names in a folder durable; works on Linux with JDK 17. */
    static void force(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    public Path root() {
        return root;
    }

    Path incoming() {
        return root.resolve("incoming");
    }

    Path objects() {
        return root.resolve("objects");
    }

    Path quarantine() {
        return root.resolve("quarantine");
    }

    /** The file of the store, which may have to be made. */
    public Path database() {
        return root.resolve("store.sqlite");
    }

    /**
     * The file of the store for whoever must not begin a new one beside objects that an old one speaks of: cases, drafts and
     * what was still to be sent would be gone without a word.
     *
     * @throws StoreDamaged when there are objects and no store, or an empty one
     */
    public Path databaseInUse() throws IOException {
        boolean lost = !Files.exists(database()) || Files.size(database()) == 0;
        if (lost && !objectFiles().isEmpty()) {
            throw new StoreDamaged("The store " + database() + " is missing or empty, but there are objects beside it."
                    + " Put back a copy of it; without one, plumbline reindex finds the records in their files again, and"
                    + " cases, drafts and the queue of what is to be sent are lost.");
        }
        return database();
    }

    /** The files of objects, whether a row speaks of them or not, in no order. */
    List<Path> objectFiles() throws IOException {
        try (Stream<Path> all = Files.walk(objects())) {
            return all.filter(Files::isRegularFile).toList();
        }
    }

    /** Where the UID of this installation stands beside the store, so that it outlives a lost one. */
    private Path observer() {
        return root.resolve("device-observer-uid");
    }

    /**
     * The UID of this installation as an observer: what the store has, else what stands beside it, else a new one; from now
     * on in both.
     */
    public String observerUid(Store store, Supplier<String> fresh) throws IOException {
        String beside = Files.exists(observer()) ? Files.readString(observer()).strip() : "";
        String uid = store.deviceObserverUid(() -> UidSyntax.holds(beside) ? beside : fresh.get());
        if (!uid.equals(beside)) {
            Path whole = incoming().resolve("device-observer-uid");
            Files.writeString(Files.createFile(whole, FILE_MODE), uid + "\n");
            try (FileChannel channel = FileChannel.open(whole, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Files.move(whole, observer(), StandardCopyOption.ATOMIC_MOVE);
            force(root);
        }
        return uid;
    }

    /** Where the object with this SHA-256 (hexadecimal) lies. */
    Path object(String digest) {
        return objects().resolve(digest.substring(0, 2)).resolve(digest + ".dcm");
    }

    @Override
    public void close() throws IOException {
        lockFile.close();
    }
}
