// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * How much of the disk stays free: nothing is taken in that would leave less. Free space must stay above both.
 *
 * @param bytes in bytes
 * @param share of the file system, 0 to 1
 */
public record LowWater(long bytes, double share) {
    /** Below 2 GiB or 5 % nothing more is taken. Source: design choice. */
    public static final LowWater USUAL = new LowWater(2L << 30, 0.05);

    /** With less than this a write may fail for lack of room: one chunk of a file, the step in which SQLite grows its log. */
    private static final long LEAST_BYTES = 1 << 16;

    /** Source: the words of glibc for ENOSPC. */
    private static final String FULL = "No space left on device";

    private static final Logger LOG = LoggerFactory.getLogger(LowWater.class);

    /** Source: the words of glibc for EIO (their beginning), EROFS, EFBIG and EDQUOT. */
    private static final List<String> UNWRITABLE =
            List.of("Input/output", "Read-only file system", "File too large", "Disk quota exceeded");

    /** @throws Refusal {@link Problem.NoRoom} when that many more bytes would leave too little free */
    void requireRoom(Path folder, long more) throws IOException {
        double mark = Math.max((double) bytes, share * (double) folder.toFile().getTotalSpace());
        if ((double) (free(folder) - more) < mark) {
            throw noRoom();
        }
    }

    /**
     * Bytes that may still be written. Asked of the file system itself: the table of mounts does not name it in every
     * container.
     *
     * @throws IOException when it does not answer
     */
    public static long free(Path folder) throws IOException {
        if (folder.toFile().getTotalSpace() == 0) {
            throw new IOException("The file system of " + folder + " does not say how large it is.");
        }
        return folder.toFile().getUsableSpace();
    }

    /**
     * Whether a write failed because there is no room. Asked of the disk, and of the system's words, as another writer that
     * failed too may have given back what it had meanwhile.
     */
    static boolean isFull(Path folder, Exception failed) {
        if (String.valueOf(failed.getMessage()).contains(FULL)) {
            return true;
        }
        try {
            return free(folder) < LEAST_BYTES;
        } catch (IOException e) {
            failed.addSuppressed(e);
            return false;
        }
    }

    /** The refusal that a failed write stands for: the disk is full, or takes nothing; empty where it failed otherwise. */
    static Optional<Refusal> refusal(Path folder, Exception failed) {
        if (isFull(folder, failed)) {
            return Optional.of(noRoom());
        }
        String words = String.valueOf(failed.getMessage());
        return UNWRITABLE.stream().anyMatch(words::contains) ? Optional.of(unwritable(failed)) : Optional.empty();
    }

    /** For the sender it is the same as a full disk: nothing is wrong with what was sent, and it may be sent again. */
    static Refusal unwritable(Exception failed) {
        LOG.error("Nothing can be written to the data folder: {}", failed.getMessage());
        return new Refusal(new Problem.NoRoom(
                "",
                "The disk of the data folder cannot be written.",
                "Look after the disk, or move the data folder to another one, then send again."));
    }

    static Refusal noRoom() {
        return new Refusal(new Problem.NoRoom(
                "",
                "The disk of the data folder is too full to keep anything more.",
                "Free space on it or move the data folder to a larger disk, then send again."));
    }
}
