// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.OptionalInt;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * A record as an A4 page of PDF: head, pictures, everything said, cautions; what is more than a page holds goes on on
 * further pages, each with whose it is and the cautions. The same record and pictures give the same bytes: the file carries
 * no date and an identifier of what it says.
 */
public final class PdfPage {
    private static final float MARGIN = 36;
    private static final float TITLE = 15;
    private static final float HEAD = 8.5f;
    private static final float HEAD_NAMES = 0.25f;
    private static final float CAUTIONS = 6.2f;
    private static final float FOOT = 5.5f;
    private static final float GAP = 8;
    private static final float PICTURES = 235;
    private static final int MOST_PICTURES = 8;
    private static final int MOST_IN_A_ROW = 4;
    private static final PDRectangle A4 = PDRectangle.A4;
    private static final float WIDTH = A4.getWidth() - 2 * MARGIN;

    private final Readout readout;
    private final Letters letters;
    private final PDDocument document;
    private PDPageContentStream page;
    private float top = A4.getHeight() - MARGIN;
    private float bottom = MARGIN;

    private PdfPage(Readout readout, PDDocument document, PDPage sheet) throws IOException {
        this.readout = readout;
        this.document = document;
        letters = new Letters(document);
        page = new PDPageContentStream(document, sheet);
    }

    /**
     * The record as a whole PDF document.
     *
     * @param pictures the annotated frames, in their order; as many as there is room for are shown
     */
    public static byte[] bytes(Readout readout, List<BufferedImage> pictures) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PDPage sheet = new PDPage(A4);
            document.addPage(sheet);
            document.setDocumentId((long) readout.hashCode());
            document.getDocumentInformation().setTitle(readout.title());
            document.getDocumentInformation().setProducer("Plumbline");
            document.getDocumentCatalog().setLanguage("en");
            new PdfPage(readout, document, sheet).set(pictures);
            document.save(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** How many pages a document has; empty where it is none. */
    public static OptionalInt pages(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return OptionalInt.of(document.getNumberOfPages());
        } catch (IOException noPdf) { // its answer to bytes that are no document
            return OptionalInt.empty();
        }
    }

    private void set(List<BufferedImage> pictures) throws IOException {
        try {
            head();
            foot();
            pictures(pictures.subList(0, Math.min(pictures.size(), MOST_PICTURES)));
            sections();
        } finally {
            page.close();
        }
        numbers();
    }

    /** Which page of how many, where there are several. */
    private void numbers() throws IOException {
        int count = document.getNumberOfPages();
        for (int i = 0; count > 1 && i < count; i++) {
            String text = "page " + (i + 1) + " of " + count;
            float x = MARGIN + WIDTH - letters.width(text, HEAD);
            try (PDPageContentStream over = new PDPageContentStream(
                    document, document.getPage(i), PDPageContentStream.AppendMode.APPEND, true)) {
                letters.show(over, text, new Letters.Place(x, MARGIN - FOOT / 2, HEAD, false));
            }
        }
    }

    private void furtherPage() throws IOException {
        page.close();
        PDPage sheet = new PDPage(A4);
        document.addPage(sheet);
        page = new PDPageContentStream(document, sheet);
        bottom = MARGIN;
        foot();
        top = A4.getHeight() - MARGIN - HEAD;
        String whose =
                readout.head().isEmpty() ? "" : ", " + readout.head().get(0).value();
        letters.show(
                page,
                readout.title() + ", " + readout.standing() + whose + ", continued",
                new Letters.Place(MARGIN, top, HEAD, true));
        top -= GAP;
        rule(top);
    }

    private void head() throws IOException {
        top -= TITLE;
        letters.show(page, readout.title(), new Letters.Place(MARGIN, top, TITLE, true));
        float standing = letters.width(readout.standing(), TITLE * 0.75f);
        letters.show(page, readout.standing(), new Letters.Place(MARGIN + WIDTH - standing, top, TITLE * 0.75f, true));
        top -= GAP;
        rule(top);
        for (int i = 0; i < readout.head().size(); i += 2) {
            float height = 0;
            for (int side = 0; side < 2 && i + side < readout.head().size(); side++) {
                Readout.Line line = readout.head().get(i + side);
                PaperRow.Measure values = new PaperRow.Measure(HEAD, (1 - HEAD_NAMES) * WIDTH / 2 - GAP);
                PaperRow row = new PaperRow(
                        false, List.of(line.name()), PaperRow.lines(letters, line.value(), values, values.width()));
                show(row, HEAD, MARGIN + side * WIDTH / 2, WIDTH / 2, HEAD_NAMES);
                height = Math.max(height, row.height(HEAD));
            }
            top -= height;
        }
        top -= GAP / 2;
    }

    /** Cautions and the name of the report stand at the lower end. */
    private void foot() throws IOException {
        letters.show(page, "Structured report " + readout.uid(), new Letters.Place(MARGIN, bottom, FOOT, false));
        bottom += 2 * FOOT;
        PaperRow.Measure measure = new PaperRow.Measure(CAUTIONS, WIDTH);
        List<String> lines = PaperRow.lines(letters, readout.cautions(), measure, WIDTH);
        for (int i = lines.size() - 1; i >= 0; i--) {
            letters.show(page, lines.get(i), new Letters.Place(MARGIN, bottom, CAUTIONS, false));
            bottom += CAUTIONS * 1.25f;
        }
        rule(bottom);
        bottom += GAP / 2;
    }

    private void rule(float y) throws IOException {
        page.setLineWidth(0.6f);
        page.moveTo(MARGIN, y);
        page.lineTo(MARGIN + WIDTH, y);
        page.stroke();
    }

    private void pictures(List<BufferedImage> pictures) throws IOException {
        if (pictures.isEmpty()) {
            return;
        }
        int inARow = Math.min(Math.max(pictures.size(), 2), MOST_IN_A_ROW);
        int rows = (pictures.size() + inARow - 1) / inARow;
        float cellWidth = (WIDTH - GAP * (inARow - 1)) / inARow;
        float cellHeight = (PICTURES - GAP * (rows - 1)) / rows;
        float tallest = 0;
        for (int i = 0; i < pictures.size(); i++) {
            BufferedImage picture = pictures.get(i);
            float scale = Math.min(cellWidth / picture.getWidth(), cellHeight / picture.getHeight());
            float height = picture.getHeight() * scale;
            tallest = Math.max(tallest, rows > 1 ? cellHeight : height);
            float x = MARGIN + (i % inARow) * (cellWidth + GAP);
            int row = i / inARow;
            float y = top - row * (cellHeight + GAP) - height;
            page.drawImage(PaperPicture.of(document, picture), x, y, picture.getWidth() * scale, height);
        }
        top -= rows * tallest + (rows - 1) * GAP + GAP;
    }

    private void sections() throws IOException {
        float further = A4.getHeight() - MARGIN - HEAD - GAP - bottom;
        PaperColumns columns =
                PaperColumns.of(letters, readout.sections(), new PaperColumns.Room(WIDTH, top - bottom, further));
        boolean first = true;
        for (List<List<PaperRow>> onPage : columns.pages()) {
            if (!first) {
                furtherPage();
            }
            first = false;
            columns(onPage, columns);
        }
    }

    private void columns(List<List<PaperRow>> onPage, PaperColumns set) throws IOException {
        float start = top;
        float x = MARGIN;
        for (List<PaperRow> column : onPage) {
            top = start;
            for (PaperRow row : column) {
                show(row, set.size(), x, set.width(), PaperRow.NAMES);
                top -= row.height(set.size());
            }
            x += set.width() + PaperColumns.GAP;
        }
    }

    /** @param names share of the width where the values begin */
    private void show(PaperRow row, float size, float x, float width, float names) throws IOException {
        for (int i = 0; i < row.left().size(); i++) {
            float y = top - row.baseLine(i, size);
            letters.show(page, row.left().get(i), new Letters.Place(x, y, size, row.heading()));
        }
        for (int i = 0; i < row.right().size(); i++) {
            float y = top - row.baseLine(i, size);
            letters.show(page, row.right().get(i), new Letters.Place(x + names * width, y, size, false));
        }
    }
}
