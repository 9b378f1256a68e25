// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * How much of the disk stays free: nothing is taken in that would leave less. Free space must stay above both.
 *
 * @param bytes in bytes
 * @param share of the file system, 0 to 1
 */
public record LowWater(long bytes, double share) {
    /** Below 2 GiB or 5 % nothing more is taken. Source: design choice. */
    public static final LowWater USUAL = new LowWater(2L << 30, 0.05);

    /** @throws Refusal {@link Problem.NoRoom} when that many more bytes would leave too little free */
    void requireRoom(Path folder, long more) throws IOException {
        FileStore disk = Files.getFileStore(folder);
        double mark = Math.max((double) bytes, share * (double) disk.getTotalSpace());
        if ((double) (disk.getUsableSpace() - more) < mark) {
            throw noRoom();
        }
    }

    static Refusal noRoom() {
        return new Refusal(new Problem.NoRoom(
                "",
                "The disk of the data folder is too full to keep anything more.",
                "Free space on it or move the data folder to a larger disk, then send again."));
    }
}
