// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs a program that is not ours; a missing one fails the test. */
public final class OutsideProgram {
    private static final long LIMIT_SECONDS = 60;

    private OutsideProgram() {}

    /** Runs it to its end and gives its standard output; anything but exit code 0 fails. */
    public static byte[] run(String... command) {
        return run(LIMIT_SECONDS, command);
    }

    /** The same for a program that may take longer than others. */
    public static byte[] run(long limitSeconds, String... command) {
        try {
            Path out = Files.createTempFile("program", ".out");
            Path err = Files.createTempFile("program", ".err");
            ProcessBuilder builder = new ProcessBuilder(List.of(command))
                    .redirectOutput(out.toFile())
                    .redirectError(err.toFile());
            builder.environment().put("DCMDICTPATH", "/usr/share/libdcmtk17/dicom.dic");
            Process process = start(builder, command[0]);
            if (!process.waitFor(limitSeconds, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                fail(String.join(" ", command) + " did not end within " + limitSeconds + " s");
            }
            assertThat(process.exitValue())
                    .as(String.join(" ", command) + "\n" + Files.readString(err))
                    .isZero();
            byte[] output = Files.readAllBytes(out);
            Files.delete(out);
            Files.delete(err);
            return output;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static Process start(ProcessBuilder builder, String program) {
        try {
            return builder.start();
        } catch (IOException e) {
            throw new AssertionError(program + " is missing; ./plumbline test installs it.", e);
        }
    }
}
