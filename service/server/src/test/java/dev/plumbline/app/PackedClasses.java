// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The class path of the tests with every folder as a jar: only then can a JVM share classes, and start in half the time. */
final class PackedClasses {
    private PackedClasses() {}

    /** @param into folder for the jars */
    static String path(Path into) throws IOException {
        List<String> path = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            Path place = Path.of(entry);
            if (Files.isDirectory(place)) {
                path.add(packed(place, into.resolve("classes-" + path.size() + ".jar"))
                        .toString());
            } else if (Files.exists(place)) {
                path.add(entry);
            }
        }
        return String.join(File.pathSeparator, path);
    }

    private static Path packed(Path folder, Path jar) throws IOException {
        try (OutputStream file = Files.newOutputStream(jar);
                ZipOutputStream zip = new ZipOutputStream(file);
                Stream<Path> all = Files.walk(folder)) {
            zip.setLevel(1);
            for (Path each : all.filter(Files::isRegularFile).toList()) {
                zip.putNextEntry(new ZipEntry(folder.relativize(each).toString()));
                Files.copy(each, zip);
                zip.closeEntry();
            }
        }
        return jar;
    }
}
