// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs a program that is not ours and judges our files; fails when it is missing or takes longer than a minute. */
final class OtherProgram {
    private static final int LIMIT_SECONDS = 60;

    private OtherProgram() {}

    /** What it said on both of its outputs, and its exit status. */
    record Verdict(int status, List<String> lines) {
        List<String> starting(String start) {
            return lines.stream().filter(line -> line.startsWith(start)).toList();
        }
    }

    static Verdict run(String... command) {
        try {
            Path output = Files.createTempFile("verdict", ".txt");
            ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
            builder.environment().put("DCMDICTPATH", "/usr/share/libdcmtk17/dicom.dic");
            builder.redirectOutput(output.toFile());
            Process process = builder.start();
            if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError(command[0] + " took longer than " + LIMIT_SECONDS + " s");
            }
            String said = new String(Files.readAllBytes(output), StandardCharsets.UTF_8);
            Files.delete(output);
            return new Verdict(process.exitValue(), said.lines().toList());
        } catch (IOException e) {
            throw new UncheckedIOException("Is " + command[0] + " installed?", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("Interrupted while " + command[0] + " ran", e);
        }
    }
}
