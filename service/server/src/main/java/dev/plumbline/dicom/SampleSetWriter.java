// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleSet;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/** Writes the sample set to be browsed: objects, pictures, truth, ready cases, and a page that shows them all. */
public final class SampleSetWriter {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path directory;

    private SampleSetWriter(Path directory) {
        this.directory = directory;
    }

    /**
     * Writes everything into a directory, which is made if it is not there; files of the same names are replaced.
     *
     * @param seed the same seed gives the same bytes
     * @return the page to open
     */
    public static Path write(Path directory, long seed) throws IOException {
        Files.createDirectories(directory);
        return new SampleSetWriter(directory).write(new SampleSet(seed));
    }

    private Path write(SampleSet set) throws IOException {
        SampleObjects objects = new SampleObjects(set);
        for (Sample sample : set.all()) {
            List<SampleFrame> frames = set.render(sample);
            put(sample.name() + ".dcm", DicomFile.encode(objects.object(sample, frames)));
            put(sample.name() + ".png", png(frames.get(SampleIndexPage.shownFrame(sample))));
            put(sample.name() + ".json", text(SampleTruthJson.of(sample, objects.sopInstanceUid(sample))));
        }
        Map<String, CaseDocument> cases = SampleCases.besideFiles(set).all();
        for (Map.Entry<String, CaseDocument> entry : cases.entrySet()) {
            put(entry.getKey() + ".case.json", text(CaseJson.write(entry.getValue())));
        }
        return put("index.html", new SampleIndexPage(set, cases).html().getBytes(StandardCharsets.UTF_8));
    }

    /** Whole or not at all. */
    private Path put(String name, byte[] bytes) throws IOException {
        Path part = directory.resolve(name + ".part");
        try {
            Files.write(part, bytes);
            return Files.move(
                    part, directory.resolve(name), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static byte[] text(JsonNode json) throws JsonProcessingException {
        return (JSON.writerWithDefaultPrettyPrinter().writeValueAsString(json) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] png(SampleFrame frame) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image(frame), "png", out);
        return out.toByteArray();
    }

    static BufferedImage image(SampleFrame frame) {
        boolean colour = frame.samplesPerPixel() > 1;
        BufferedImage image = new BufferedImage(
                frame.columns(), frame.rows(), colour ? BufferedImage.TYPE_3BYTE_BGR : BufferedImage.TYPE_BYTE_GRAY);
        byte[] shown = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        byte[] pixels = frame.pixels();
        for (int i = 0; i < pixels.length; i++) {
            shown[colour ? i / 3 * 3 + 2 - i % 3 : i] = pixels[i];
        }
        return image;
    }
}
