// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Map;

/** Files that a command makes: whole or not at all. */
final class ProductFiles {
    private ProductFiles() {}

    /** Writes a file, in place of an older one. */
    static void write(Path path, byte[] content) {
        try {
            Path whole = path.toAbsolutePath();
            Path parent = whole.getParent();
            if (parent == null) {
                throw notWritable(path);
            }
            Files.createDirectories(parent);
            Path part = Files.createTempFile(parent, ".plumbline", ".part");
            try {
                Files.write(part, content);
                Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (FileSystemException e) {
            throw notWritable(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Writes several files, after looking that none of them is there with another content.
     *
     * @throws Refusal {@link Problem.Conflict}
     */
    static void writeNew(Map<Path, byte[]> files) {
        files.forEach(ProductFiles::requireNoOther);
        files.forEach(ProductFiles::write);
    }

    private static void requireNoOther(Path path, byte[] content) {
        try {
            if (Files.exists(path) && !Arrays.equals(Files.readAllBytes(path), content)) {
                throw new Refusal(new Problem.Conflict(
                        "", "The file " + path + " is there with another content.", "Name another folder."));
            }
        } catch (IOException e) {
            throw notWritable(path);
        }
    }

    static Refusal notWritable(Path path) {
        return new Refusal(new Problem.InvalidValue(
                "", "The file " + path + " cannot be written.", "Name a place that can be written."));
    }
}
