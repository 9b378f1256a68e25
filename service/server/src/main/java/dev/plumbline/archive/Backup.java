// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * A copy of a data folder while it is in use. The state is copied first, by the database's own means, and the objects after
 * it: they never change, and every object the state speaks of was there before. The copy is a data folder.
 */
public final class Backup {
    private Backup() {}

    /**
     * What was copied.
     *
     * @param objects files that the copy did not have before
     */
    public record Copied(int objects) {}

    /**
     * Copies; into a folder that holds an earlier copy, only what is new.
     *
     * @throws Refusal where there is nothing to copy, or the two are the same folder
     */
    public static Copied of(Path data, Path copy) throws IOException {
        Path store = data.resolve("store.sqlite");
        if (!Files.isRegularFile(store)) {
            throw new Refusal(new Problem.NotHeld(
                    "", "The folder " + data + " is no data folder: it holds no store.sqlite.", "Name one that is."));
        }
        DataFolder.makeFolder(copy);
        if (Files.isSameFile(data, copy)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The copy would be the data folder itself.", "Name another folder, best on another disk."));
        }
        Path fresh = copy.resolve("store.sqlite.new");
        Files.deleteIfExists(fresh);
        SqliteDatabase.copy(store, fresh);
        force(fresh);
        Files.move(fresh, copy.resolve("store.sqlite"), StandardCopyOption.ATOMIC_MOVE);
        int objects = copyObjects(data.resolve("objects"), copy.resolve("objects"));
        DataFolder.force(copy);
        return new Copied(objects);
    }

    private static int copyObjects(Path from, Path to) throws IOException {
        int[] copied = {0};
        Files.walkFileTree(from, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Path target = to.resolve(from.relativize(file).toString());
                if (!Files.exists(target) || Files.size(target) != attributes.size()) {
                    DataFolder.makeFolder(target.resolveSibling(".").normalize());
                    Path part = target.resolveSibling(target.getFileName() + ".part");
                    Files.copy(file, part, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
                    force(part);
                    Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
                    copied[0]++;
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return copied[0];
    }

    private static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }
}
