// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Set;

/**
 * The folder that holds everything: readable by its owner only, used by one process at a time.
 *
 * <p>{@code objects/xx/SHA256.dcm} the DICOM objects, {@code incoming} what is being received and empty after a start,
 * {@code quarantine} what contradicts an object already held, {@code store.sqlite} the state, {@code lock}.
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

    /** The file of the store. */
    public Path database() {
        return root.resolve("store.sqlite");
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
