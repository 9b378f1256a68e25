// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.record.CaseDocument;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The work on a structured report that a benchmark repeats; everything it needs is made beforehand. */
public final class ReportWork {
    private final RecordSource source = RecordFixtures.IN_PLANE.source();
    private final Path file;

    public ReportWork() {
        try {
            file = Files.createTempFile("report", ".dcm");
            Files.write(file, encode());
            file.toFile().deleteOnExit();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** From the values of a revision to the bytes of the report. */
    public byte[] encode() {
        return DicomFile.encode(RecordComposer.report(source, FramesUsed.of(source)));
    }

    /** Writes so many reports of cases at random, each in a file of its own. */
    public static List<Path> write(Path folder, int reports) throws IOException {
        List<Path> files = new ArrayList<>(reports);
        for (int i = 0; i < reports; i++) {
            RecordSource any = AnyRecord.of(i);
            Path file = folder.resolve(i + ".dcm");
            Files.write(file, DicomFile.encode(RecordComposer.report(any, FramesUsed.of(any))));
            files.add(file);
        }
        return files;
    }

    /** From a file through the strict gate to the content tree; how many items it has. */
    public static long items(Path report) throws IOException {
        return ContentReader.read(DicomFile.open(report).header()).walk().count();
    }

    /** From the file through the strict gate to the content tree; how many items it has. */
    public long parse() throws IOException {
        return items(file);
    }

    /** From the file to the case document it was made from. */
    public CaseDocument caseDocument() throws IOException {
        return RecordReader.read(DicomFile.open(file).header());
    }
}
