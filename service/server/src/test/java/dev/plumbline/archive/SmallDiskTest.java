// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A data folder on a disk of a few MB that is really full: what was acknowledged stays whole, nothing half-written is left,
 * and it goes on when there is room. TRUST T5.
 */
class SmallDiskTest {
    private static final int DISK_MB = 6;

    @TempDir
    Path root;

    @Test
    void keepsWhatItAcknowledgedAndGoesOnWhenThereIsRoom() throws Exception {
        assertThat(SmallDisk.run(root, DISK_MB, FillsTheDisk.class))
                .containsExactly("full", "left 0", "whole", "room", "kept", "whole");
    }

    /** Receives until the disk is full, looks, makes room, and receives again. */
    static final class FillsTheDisk {
        private FillsTheDisk() {}

        public static void main(String[] arguments) throws IOException {
            Path disk = Path.of(arguments[0]);
            Path ballast = Files.write(disk.resolve("ballast"), new byte[1 << 20]);
            try (DataFolder folder = DataFolder.open(disk.resolve("data"));
                    SqliteStore store = SqliteStore.open(folder.database())) {
                Archive archive = new Archive(folder, store, new LowWater(0, 0));
                List<String> acknowledged = new ArrayList<>();
                int next = 1;
                while (receive(archive, next, acknowledged)) {
                    next++;
                }
                System.out.println("full");
                try (Stream<Path> left = Files.list(folder.incoming())) {
                    System.out.println("left " + left.count());
                }
                System.out.println(whole(folder, store, acknowledged));
                Files.delete(ballast);
                System.out.println("room");
                System.out.println(receive(archive, next + 1, acknowledged) ? "kept" : "still full");
                System.out.println(whole(folder, store, acknowledged));
            }
        }

        private static boolean receive(Archive archive, int number, List<String> acknowledged) {
            try {
                byte[] object = InventedObjects.imageFile(1, 1, number);
                acknowledged.add(archive.receive(new ByteArrayInputStream(object))
                        .object()
                        .sopInstanceUid());
                return true;
            } catch (Refusal e) {
                if (!(e.problem() instanceof Problem.NoRoom)) {
                    throw e;
                }
                return false;
            }
        }

        private static String whole(DataFolder folder, SqliteStore store, List<String> acknowledged)
                throws IOException {
            List<String> held =
                    store.objects().stream().map(HeldObject::sopInstanceUid).toList();
            boolean same = held.containsAll(acknowledged) && acknowledged.containsAll(held) && !acknowledged.isEmpty();
            try (Stream<Path> files = Files.walk(folder.objects())) {
                boolean nothingElse = files.filter(Files::isRegularFile).count() == held.size();
                boolean whole = new Inspection(folder, store).altered().isEmpty();
                return same && nothingElse && whole ? "whole" : "not whole";
            }
        }
    }
}
