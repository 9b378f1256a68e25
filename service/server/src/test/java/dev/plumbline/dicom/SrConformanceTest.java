// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.record.Amendment;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Withdrawal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Our objects, judged by five programs that are not ours; DICOM PS3.3 A.35.3, PS3.16 TID 1500. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SrConformanceTest {
    private static final String PYTHON = "/usr/bin/python3";
    private static final String READ_ALL = "import sys, pydicom; d = pydicom.dcmread(sys.argv[1]); list(d.iterall());"
            + " print(d.SOPInstanceUID, d.PatientName)";

    @TempDir
    static Path folder;

    private final Map<String, Path> reports = new LinkedHashMap<>();
    private final List<Path> keyObjects = new ArrayList<>();
    private final List<Path> companions = new ArrayList<>();
    private final List<Path> notes = new ArrayList<>();
    private TemplateValidator corrected;
    private TemplateValidator untouched;

    @BeforeAll
    void writeRecords() throws IOException {
        for (RecordFixtures fixture : RecordFixtures.values()) {
            for (ComposedObject object : fixture.compose()) {
                Path file = folder.resolve(fixture.name() + "-" + object.part().replace('/', '-') + ".dcm");
                Files.write(file, object.bytes());
                if (object.part().equals("sr")) {
                    reports.put(fixture.name(), file);
                } else {
                    (object.part().equals("ko") ? keyObjects : companions).add(file);
                }
            }
        }
        life();
        corrected = TemplateValidator.corrected(folder.resolve("corrected"));
        untouched = TemplateValidator.untouched();
    }

    /** What comes after a first signature: an amendment with its companions, and a withdrawal on every ground. */
    private void life() throws IOException {
        RecordRevision first = RecordFixtures.IN_PLANE.revision();
        RecordRevision amended = new RecordRevision(
                        first.caseId(),
                        2,
                        first.document(),
                        first.comparison(),
                        first.time().plusHours(1),
                        first.time())
                .amending(new Amendment(1, 1, "the entry was read off wrongly", "intent entryDistanceMm: 17"));
        RecordComposer composer = new RecordComposer(RecordFixtures.INSTALLATION);
        for (ComposedObject object : composer.compose(amended, RecordFixtures.frames())) {
            Path file = folder.resolve("AMENDED-" + object.part().replace('/', '-') + ".dcm");
            Files.write(file, object.bytes());
            if (object.part().equals("sr")) {
                reports.put("AMENDED", file);
            }
        }
        List<DataSet> headers = new ArrayList<>();
        for (ComposedObject object : RecordFixtures.IN_PLANE.compose()) {
            Path file = folder.resolve("IN_PLANE-" + object.part().replace('/', '-') + ".dcm");
            headers.add(DicomFile.open(file).header());
        }
        for (Withdrawal.Ground ground : Withdrawal.Ground.values()) {
            Withdrawal withdrawal = new Withdrawal(
                    first.caseId(),
                    2,
                    ground,
                    "Said in words",
                    "Sample^Head",
                    first.time().plusHours(2));
            Path file = folder.resolve("NOTE-" + ground + ".dcm");
            Files.write(
                    file,
                    composer.withdraw(
                                    withdrawal,
                                    DicomFile.open(reports.get("IN_PLANE")).header(),
                                    headers)
                            .bytes());
            notes.add(file);
        }
    }

    Stream<Path> notes() {
        return notes.stream();
    }

    /** The untouched tables complain of a modifier under "Rejected for Quality Reasons": its condition cannot hold. */
    @ParameterizedTest
    @MethodSource("notes")
    @Timeout(value = 5, unit = TimeUnit.MINUTES)
    void theTemplateValidatorFindsNoOtherFaultInNotesOfWithdrawal(Path note) {
        List<String> said = untouched.judge(note);
        assertThat(said).anyMatch(line -> line.contains("Found Root Template TID_2010"));
        assertThat(said).anyMatch(line -> line.contains("Root Template Validation Complete"));
        boolean modified = note.toString().matches(".*(OTHER|PROCESSING).*");
        assertThat(said)
                .filteredOn(line -> line.contains("Error"))
                .hasSize(modified ? 2 : 0)
                .allMatch(line -> line.matches(".*Row [34]. CODE CID 701[12]: within 1: /CONTAINER .113001,.*"
                        + "Conditional content item present when condition not satisfied.*"));
        assertThat(said).noneMatch(line -> line.contains("row order"));
    }

    @ParameterizedTest
    @MethodSource("notes")
    void ourOwnCheckTakesNotesOfWithdrawalAndReadsThemBack(Path note) throws IOException {
        DataSet header = DicomFile.open(note).header();
        assertThat(ObjectCheck.check(header).report().lines()).isEmpty();
        WrittenLife.Note read = WrittenLife.note(header).orElseThrow();
        assertThat(note.toString()).contains(read.ground().name());
        assertThat(read.text() + read.by()).isEqualTo("Said in wordsSample^Head");
        assertThat(read.time()).isEqualTo("2026-01-05T12:15:00+01:00");
    }

    Stream<Path> reports() {
        return reports.values().stream();
    }

    /** One with every number, and one with numbers that have no value. */
    Stream<Path> withEveryFalseError() {
        return Stream.of(RecordFixtures.IN_PLANE, RecordFixtures.TIP_NOT_CONFIRMED)
                .map(fixture -> reports.get(fixture.name()));
    }

    Stream<Path> all() {
        return Stream.concat(documents(), companions.stream());
    }

    /** What has a content tree: reports and key objects. */
    Stream<Path> documents() {
        return Stream.concat(reports(), Stream.concat(keyObjects.stream(), notes.stream()));
    }

    /** Of one case with every object and of a draft: the trees of the others differ in their references only. */
    Stream<Path> someKeyObjects() {
        return keyObjects.stream()
                .filter(file -> Stream.of(RecordFixtures.IN_PLANE, RecordFixtures.DRAFT)
                        .anyMatch(fixture -> String.valueOf(file.getFileName()).startsWith(fixture.name() + "-")));
    }

    @ParameterizedTest
    @MethodSource("all")
    void dciodvfyFindsNoFault(Path file) {
        OtherProgram.Verdict verdict = OtherProgram.run("dciodvfy", "-new", file.toString());
        assertThat(verdict.lines()).as("it read the file").isNotEmpty();
        assertThat(verdict.starting("Error")).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("documents")
    void dsrdumpReadsTheTreeWithoutWarning(Path report) {
        OtherProgram.Verdict verdict = OtherProgram.run("dsrdump", report.toString());
        assertThat(verdict.status()).isZero();
        assertThat(verdict.starting("E:")).isEmpty();
        assertThat(verdict.starting("F:")).isEmpty();
        // DCMTK 3.6.7 cannot check text in ISO_IR 192, nor the template of key objects, and says so
        assertThat(verdict.starting("W:"))
                .allMatch(line -> line.contains("ISO_IR 192")
                        || (!reports.containsValue(report)
                                && line.contains("Check for template constraints not yet supported")));
        assertThat(verdict.lines())
                .anyMatch(line -> line.matches(".*("
                        + (reports.containsValue(report)
                                ? "Imaging Measurement Report"
                                : notes.contains(report) ? "Rejected|Incorrect" : "For Report Attachment")
                        + ").*"));
    }

    @ParameterizedTest
    @MethodSource("documents")
    void dsr2htmlRendersIt(Path report) throws IOException {
        Path html = folder.resolve(report.getFileName() + ".html");
        assertThat(OtherProgram.run("dsr2html", report.toString(), html.toString())
                        .status())
                .isZero();
        assertThat(Files.readString(html)).contains("Device Observer");
    }

    @ParameterizedTest
    @MethodSource("all")
    void pydicomReadsEveryElement(Path file) {
        OtherProgram.Verdict verdict = OtherProgram.run(PYTHON, "-W", "error", "-c", READ_ALL, file.toString());
        assertThat(verdict.status()).as(String.join("\n", verdict.lines())).isZero();
    }

    @ParameterizedTest
    @MethodSource("reports")
    @Timeout(value = 5, unit = TimeUnit.MINUTES)
    void theTemplateValidatorFindsNoFault(Path report) {
        List<String> said = corrected.judge(report);
        assertThat(said).anyMatch(line -> line.contains("Found Root Template TID_1500"));
        assertThat(said).anyMatch(line -> line.contains("Root Template Validation Complete"));
        assertThat(said).noneMatch(line -> line.contains("Error"));
        assertThat(said).noneMatch(line -> line.contains("row order"));
    }

    @ParameterizedTest
    @MethodSource("someKeyObjects")
    @Timeout(value = 5, unit = TimeUnit.MINUTES)
    void theTemplateValidatorFindsNoFaultInKeyObjects(Path selection) {
        List<String> said = untouched.judge(selection);
        assertThat(said).anyMatch(line -> line.contains("Found Root Template TID_2010"));
        assertThat(said).anyMatch(line -> line.contains("Root Template Validation Complete"));
        assertThat(said).noneMatch(line -> line.contains("Error"));
        assertThat(said).noneMatch(line -> line.contains("row order"));
    }

    /** Every error of the untouched tables is one of the two false ones, and there are exactly as many as must be. */
    @ParameterizedTest
    @MethodSource("withEveryFalseError")
    @Timeout(value = 5, unit = TimeUnit.MINUTES)
    void theUntouchedTablesGiveOnlyTheCountedFalseErrors(Path report) throws IOException {
        List<String> errors = untouched.judge(report).stream()
                .filter(l -> l.contains("Error"))
                .toList();
        ContentItem measurements = measurements(report);
        long uncertainties = measurements
                .walk()
                .filter(item -> item.isNamed(Concepts.UNCERTAINTY))
                .count();
        long withoutValue = measurements
                .walk()
                .filter(item -> item.isNamed(Concepts.WHY_ABSENT))
                .count();
        assertThat(errors)
                .filteredOn(line -> line.contains("expected INFERRED FROM - found HAS PROPERTIES"))
                .hasSize((int) (2 * uncertainties));
        assertThat(errors).filteredOn(line -> line.contains("Missing value")).hasSize((int) withoutValue);
        assertThat(errors).hasSize((int) (2 * uncertainties + withoutValue));
    }

    private static ContentItem measurements(Path report) throws IOException {
        return ContentReader.read(DicomFile.open(report).header())
                .first(Concepts.IMAGING_MEASUREMENTS)
                .orElseThrow();
    }

    /** The judge would notice: it compares neighbours of one template, here row 6 before row 4 of TID 1500. */
    @Test
    @Timeout(value = 5, unit = TimeUnit.MINUTES)
    void theTemplateValidatorNoticesAWrongOrder() throws IOException {
        DataSet report = RecordFixtures.OUT_OF_PLANE.report();
        List<DataSet> children = new ArrayList<>(report.items(Tag.CONTENT_SEQUENCE));
        DataSet measurements = children.remove(children.size() - 2);
        children.add(children.size() - 3, measurements);
        report.put(Tag.CONTENT_SEQUENCE, children);
        Path file = folder.resolve("disordered.dcm");
        Files.write(file, DicomFile.encode(report));
        assertThat(corrected.judge(file)).anyMatch(line -> line.contains("row order"));
    }
}
