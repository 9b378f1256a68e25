// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A disk of a few MB for one process: a tmpfs in a mount namespace of its own, which root has, or a user whom the system
 * lets make one. Where neither is to be had the test fails and says so, it is not skipped.
 */
public final class SmallDisk {
    private SmallDisk() {}

    /**
     * Runs a program of the tests on such a disk to its end.
     *
     * @param folder where the disk is mounted
     * @param megabytes its size; only what is written takes memory
     * @param program its arguments are the mounted folder and those given
     * @return the lines that it said
     */
    public static List<String> run(Path folder, int megabytes, Class<?> program, String... arguments)
            throws IOException, InterruptedException {
        Path disk = Files.createDirectories(folder.resolve("disk"));
        String java = System.getProperty("java.home") + "/bin/java -Djava.awt.headless=true -cp \"$CLASSES\" '"
                + program.getName() + "' " + disk + " " + String.join(" ", arguments);
        ProcessBuilder builder = new ProcessBuilder(
                        "unshare",
                        "--mount",
                        "--map-root-user",
                        "sh",
                        "-c",
                        "mount -t tmpfs -o size=" + megabytes + "m tmpfs " + disk + " && exec " + java)
                .redirectError(folder.resolve("log").toFile());
        builder.environment().put("CLASSES", System.getProperty("java.class.path"));
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue())
                .as(said + Files.readString(folder.resolve("log")))
                .isZero();
        return said.lines().toList();
    }
}
