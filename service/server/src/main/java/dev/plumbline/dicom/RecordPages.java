// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.readout.HtmlPage;
import dev.plumbline.readout.PdfPage;
import dev.plumbline.readout.Readout;
import dev.plumbline.readout.StackedSvg;
import dev.plumbline.readout.TextPage;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import java.awt.image.BufferedImage;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A record in the forms that people read.
 *
 * @param report the structured report; what it says is what is shown
 * @param drawings of its frames
 */
public record RecordPages(DataSet report, List<RecordDrawing> drawings) {
    public RecordPages {
        drawings = List.copyOf(drawings);
    }

    /**
     * A record of which only the report is at hand: drawn from what it says itself.
     *
     * @param frames pictures where there are any; without them the drawings stand alone
     * @throws Refusal when the object is no record of this program
     */
    public static RecordPages of(DataSet report, Function<FrameRef, Optional<BufferedImage>> frames) {
        CaseDocument document = RecordReader.read(report);
        CaseInputs inputs = CaseInputs.of(document, new RecordedFrames(ContentReader.read(report))::geometry);
        RecordRevision revision = new RecordRevision(
                document.caseId().orElse(""),
                report.integer(Tag.INSTANCE_NUMBER).orElse(1),
                document,
                Comparison.of(inputs.plan(), inputs.observations()),
                document.signature().map(Signature::time).orElse(OffsetDateTime.MIN));
        return new RecordPages(report, RecordDrawing.all(revision, inputs, frames));
    }

    /**
     * The record as plain text.
     *
     * @throws Refusal when the object has no content tree
     */
    public static String text(DataSet report) {
        return TextPage.text(RecordReadout.of(report));
    }

    /** One page for a browser that fetches nothing. */
    public String html() {
        return HtmlPage.text(
                readout(), drawings.stream().map(RecordDrawing::svg).toList());
    }

    /** One A4 page. */
    public byte[] pdf() {
        return pdf(report, drawings.stream().map(RecordDrawing::painted).toList());
    }

    static byte[] pdf(DataSet report, List<RasterDrawing.Painted> pictures) {
        return PdfPage.bytes(
                RecordReadout.of(report),
                pictures.stream().map(RasterDrawing.Painted::stage).toList());
    }

    /** The record in words. */
    public Readout readout() {
        return RecordReadout.of(report);
    }

    /**
     * The drawing of one frame.
     *
     * @param number from 1, the planned frame first
     * @throws Refusal {@link Problem.NotHeld}
     */
    public String svg(int number) {
        if (number < 1 || number > drawings.size()) {
            throw new Refusal(new Problem.NotHeld(
                    "", "The record has no drawing " + number + ".", "It has 1 to " + drawings.size() + "."));
        }
        return drawings.get(number - 1).svg();
    }

    /** What each drawing shows, in their order. */
    public List<String> captions() {
        return drawings.stream().map(RecordDrawing::caption).toList();
    }

    /** The drawings of all frames below each other. */
    public String svg() {
        return StackedSvg.of(drawings.stream().map(RecordDrawing::svg).toList());
    }
}
