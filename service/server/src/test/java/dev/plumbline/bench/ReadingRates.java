// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import dev.plumbline.dicom.ReportWork;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Reading many reports, from the file to the content tree, every item visited: ours, DCMTK's dsrdump and pydicom with the
 * same files one after the other in one run, each in one process, its start included. Prints a table; run by {@code
 * ./plumbline bench}.
 */
public final class ReadingRates {
    private static final int REPORTS = 10_000;
    /** As many files as fit on a command line with ease. */
    private static final int AT_ONCE = 1000;
    /** Every item with its name, its value and what is below it. */
    private static final String PYDICOM = """
            import sys, pydicom
            def walk(item):
                n = 1
                item.get("ConceptNameCodeSequence")
                for name in ("TextValue", "UID", "PersonName", "DateTime", "GraphicData"):
                    item.get(name)
                for values in item.get("MeasuredValueSequence") or []:
                    float(values.NumericValue)
                for code in item.get("ConceptCodeSequence") or []:
                    code.get("CodeValue")
                for child in item.get("ContentSequence") or []:
                    n += walk(child)
                return n
            print(sum(walk(pydicom.dcmread(line.strip())) for line in open(sys.argv[1])))
            """;

    private final Path folder;

    private ReadingRates(Path folder) {
        this.folder = folder;
    }

    /** Measures so many reports, or as many as the first argument says. */
    public static void main(String[] arguments) throws Exception {
        int reports = arguments.length == 0 ? REPORTS : Integer.parseInt(arguments[0]);
        Path folder = Files.createTempDirectory("plumbline-reading-");
        try {
            new ReadingRates(folder).run(reports);
        } finally {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }

    private void run(int reports) throws Exception {
        List<Path> files = ReportWork.write(folder, reports);
        long bytes = 0;
        for (Path file : files) {
            bytes += Files.size(file);
        }
        List<String> names = files.stream().map(Path::toString).toList();
        Path list = Files.write(folder.resolve("files.txt"), names);
        System.out.printf(
                "%d reports, %.0f kB on average%n%-28s%10s%14s%10s%n",
                reports, bytes / 1e3 / reports, "", "seconds", "ms a report", "ratio");
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        double ours = seconds(List.of(
                java,
                "-XX:+UseSerialGC",
                "-Xmx512m",
                "-cp",
                System.getProperty("java.class.path"),
                Ours.class.getName(),
                list.toString()));
        line("Plumbline", reports, ours, ours);
        double dsrdump = 0;
        for (int i = 0; i < reports; i += AT_ONCE) {
            List<String> command = new ArrayList<>(List.of("dsrdump", "-q"));
            command.addAll(names.subList(i, Math.min(i + AT_ONCE, reports)));
            dsrdump += seconds(command);
        }
        line("dsrdump", reports, dsrdump, ours);
        line("pydicom", reports, seconds(List.of("/usr/bin/python3", "-c", PYDICOM, list.toString())), ours);
    }

    private static void line(String what, int reports, double seconds, double ours) {
        System.out.printf("%-28s%10.1f%14.2f%10.2f%n", what, seconds, 1e3 * seconds / reports, seconds / ours);
    }

    private static double seconds(List<String> command) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().put("DCMDICTPATH", "/usr/share/libdcmtk17/dicom.dic");
        long start = System.nanoTime();
        int status = builder.start().waitFor();
        if (status != 0) {
            throw new IllegalStateException("Did not end well: " + command.get(0));
        }
        return (System.nanoTime() - start) / 1e9;
    }

    /** Reads each file of a list and says how many content items there are. */
    static final class Ours {
        private Ours() {}

        public static void main(String[] arguments) throws IOException {
            long items = 0;
            for (String file : Files.readAllLines(Path.of(arguments[0]))) {
                items += ReportWork.items(Path.of(file));
            }
            System.out.println(items);
        }
    }
}
