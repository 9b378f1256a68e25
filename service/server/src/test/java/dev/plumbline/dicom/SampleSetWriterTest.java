// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SampleSetWriterTest {
    @TempDir
    private static Path directory;

    private static Path page;

    @BeforeAll
    static void writeOnce() throws IOException {
        page = SampleSetWriter.write(directory, 7);
    }

    @Test
    void everySampleHasItsObjectItsPictureAndItsTruth() throws IOException {
        for (Sample sample : new SampleSet(7).all()) {
            assertThat(directory.resolve(sample.name() + ".dcm")).isNotEmptyFile();
            assertThat(ImageIO.read(directory.resolve(sample.name() + ".png").toFile())
                            .getWidth())
                    .isEqualTo(sample.scene().layout().columns());
            JsonNode truth = new ObjectMapper()
                    .readTree(directory.resolve(sample.name() + ".json").toFile());
            assertThat(truth.at("/frames")).hasSize(sample.scene().frames());
        }
        try (Stream<Path> files = Files.list(directory)) {
            assertThat(files).noneMatch(file -> file.toString().endsWith(".part"));
        }
    }

    @Test
    void everyCaseReadsBackAndNamesFilesThatAreThere() throws IOException {
        for (Map.Entry<String, CaseDocument> entry :
                SampleCases.besideFiles(new SampleSet(7)).all().entrySet()) {
            byte[] json = Files.readAllBytes(directory.resolve(entry.getKey() + ".case.json"));
            CaseDocument read = CaseJson.read(json, Door.CLI);

            assertThat(read).isEqualTo(entry.getValue());
            assertThat(directory.resolve(((FrameRef.File) read.frame()).path())).exists();
            read.observations()
                    .forEach(observed -> assertThat(directory.resolve(((FrameRef.File) observed.frame()).path()))
                            .exists());
        }
    }

    @Test
    void thePageLinksOnlyToWhatIsThereAndNeedsNoScriptAndNoNetwork() throws IOException {
        String html = Files.readString(page);
        Matcher links = Pattern.compile("(?:href|src)=\"([^\"]+)\"").matcher(html);
        List<String> targets = links.results().map(match -> match.group(1)).toList();

        assertThat(targets).hasSizeGreaterThan(4 * 24);
        assertThat(targets)
                .allSatisfy(target -> assertThat(directory.resolve(target)).exists());
        assertThat(html).doesNotContain("<script", "http:", "https:", "{{");
    }
}
