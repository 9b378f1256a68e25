// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every object of records made at random, judged by programs that are not ours: David Clunie's dciodvfy, DCMTK's dsrdump,
 * the toolkit's template validator and pydicom. 20 records, in the nightly profile 500.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(value = 3, unit = TimeUnit.HOURS)
class AnyRecordConformanceTest {
    private static final long SEED = 20260107;
    /** Files in one call of a program. */
    private static final int AT_ONCE = 200;

    private static final int RECORDS = Integer.getInteger("plumbline.records", 20);
    /** Reads every element of the files named, one a line, each value converted; warnings are errors. */
    private static final String READ_ALL = "import sys, pydicom\n"
            + "for line in sys.argv[1].splitlines():\n"
            + "    d = pydicom.dcmread(line)\n"
            + "    print(sum(1 for element in d.iterall() if element.value is not Ellipsis), d.SOPInstanceUID)\n";

    @TempDir
    static Path folder;

    private final Map<String, List<Path>> files = new HashMap<>();

    @BeforeAll
    void writeRecords() throws IOException {
        Random seeds = new Random(SEED);
        int refused = 0;
        for (int i = 0; i < RECORDS; ) {
            long seed = seeds.nextLong();
            write(i + "-any", "sr", report(seed));
            try {
                for (ComposedObject object : moved(seed)) {
                    write(i + "-moved", object.part(), object.bytes());
                }
                i++;
            } catch (Refusal cannotBeMeasured) {
                refused++;
            }
        }
        assertThat(refused).as("most can be measured").isLessThan(RECORDS);
        assertThat(files).containsOnlyKeys("sr", "sc", "pr", "ko", "pdf");
        assertThat(files.get("sr")).hasSize(2 * RECORDS);
    }

    /** Every field at random, and numbers at random. */
    private static byte[] report(long seed) {
        RecordSource source = AnyRecord.of(seed);
        return DicomFile.encode(RecordComposer.report(source, FramesUsed.of(source)));
    }

    private static List<ComposedObject> moved(long seed) {
        return new RecordComposer(RecordFixtures.INSTALLATION).compose(AnyRecord.moved(seed), RecordFixtures.frames());
    }

    private void write(String record, String part, byte[] bytes) throws IOException {
        Path file = folder.resolve(record + "-" + part.replace('/', '-') + ".dcm");
        Files.write(file, bytes);
        List<Path> ofKind = files.computeIfAbsent(part.replaceAll("/.*", ""), kind -> new ArrayList<>());
        if (!ofKind.contains(file)) { // written before its record was refused
            ofKind.add(file);
        }
    }

    private List<Path> all() {
        return files.values().stream().flatMap(List::stream).toList();
    }

    @Test
    void dciodvfyFindsNoFault() {
        for (Path file : all()) {
            OtherProgram.Verdict verdict = OtherProgram.run("dciodvfy", "-new", file.toString());
            assertThat(verdict.lines()).as("it read %s", file.getFileName()).isNotEmpty();
            assertThat(verdict.starting("Error")).as("%s", file.getFileName()).isEmpty();
        }
    }

    @Test
    void dsrdumpReadsEveryTree() {
        for (Path report : files.get("sr")) {
            OtherProgram.Verdict verdict = OtherProgram.run("dsrdump", report.toString());
            assertThat(verdict.status()).as("%s", report.getFileName()).isZero();
            assertThat(verdict.starting("E:")).as("%s", report.getFileName()).isEmpty();
            assertThat(verdict.starting("F:")).as("%s", report.getFileName()).isEmpty();
            assertThat(verdict.starting("W:"))
                    .as("%s", report.getFileName())
                    .allMatch(line -> line.contains("ISO_IR 192"));
            assertThat(verdict.lines()).anyMatch(line -> line.contains("Imaging Measurement Report"));
        }
    }

    @Test
    void pydicomReadsEveryElement() {
        List<String> names = all().stream().map(Path::toString).toList();
        for (int i = 0; i < names.size(); i += AT_ONCE) {
            List<String> some = names.subList(i, Math.min(i + AT_ONCE, names.size()));
            byte[] said =
                    OutsideProgram.run("/usr/bin/python3", "-W", "error", "-c", READ_ALL, String.join("\n", some));
            assertThat(new String(said, StandardCharsets.UTF_8).lines()).hasSameSizeAs(some);
        }
    }

    /** It needs a second and more for one report, so every fifth is judged in the normal run. */
    @Test
    void theTemplateValidatorFindsNoFault() throws IOException {
        TemplateValidator validator = TemplateValidator.corrected(folder.resolve("corrected"));
        int step = RECORDS > 20 ? 1 : 5;
        for (int i = 0; i < 2 * RECORDS; i += step) {
            List<String> said = validator.judge(files.get("sr").get(i));
            assertThat(said).anyMatch(line -> line.contains("Root Template Validation Complete"));
            assertThat(said).as("report %d", i).noneMatch(line -> line.contains("Error"));
            assertThat(said).as("report %d", i).noneMatch(line -> line.contains("row order"));
        }
    }

    @Test
    void ourOwnCheckFindsNoFault() throws IOException {
        for (Path file : all()) {
            assertThat(ObjectCheck.check(DicomFile.open(file).header()).report().lines())
                    .as("%s", file.getFileName())
                    .isEmpty();
        }
    }
}
