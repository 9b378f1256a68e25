// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleSet;
import dev.plumbline.samples.SampleTruth;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SampleObjectsTest {
    private static final SampleSet SET = DrawnSamples.SET;

    @TempDir
    private Path directory;

    @Test
    void everySamplePassesTheGateAndStatesItsScaleAsTheTruthDoes() throws IOException {
        for (Sample sample : SET.all()) {
            DicomFile file = open(sample);
            FrameGeometry geometry = file.geometry(file.frameCount());
            SampleTruth.Scale truth = sample.scene().truths().get(0).scale();

            assertThat(file.frameCount())
                    .as(sample.name())
                    .isEqualTo(sample.scene().frames());
            assertThat(geometry.pixelSpacing()).as(sample.name()).isEqualTo(truth.pixelSpacing());
            assertThat(geometry.regions())
                    .as(sample.name())
                    .usingRecursiveComparison()
                    .ignoringFields("bounds.index")
                    .isEqualTo(truth.regions());
        }
    }

    @Test
    void theImageShownIsTheFrameDrawn() throws IOException {
        for (Sample sample :
                List.of(SET.inPlaneNeedle(), SET.named("colour-doppler"), SET.named("cine-needle-advances"))) {
            List<SampleFrame> frames = DrawnSamples.frames(sample);
            SampleFrame last = frames.get(frames.size() - 1);

            BufferedImage shown = open(sample).image(frames.size());

            for (int row = 0; row < last.rows(); row += 7) {
                for (int column = 0; column < last.columns(); column += 3) {
                    assertThat(shown.getRaster().getSample(column, row, 0)).isEqualTo(last.level(column, row));
                }
            }
        }
    }

    @Test
    void samplesOfOneBodyAreOneStudyAndNoTwoObjectsShareAnIdentifier() {
        Set<String> instances = new HashSet<>();
        Set<String> patientsWithStudy = new HashSet<>();
        Set<String> studies = new HashSet<>();
        for (Sample sample : SET.all()) {
            DataSet object = new SampleObjects(SET).object(sample, DrawnSamples.frames(sample));
            instances.add(object.string(Tag.SOP_INSTANCE_UID).orElseThrow());
            studies.add(object.string(Tag.STUDY_INSTANCE_UID).orElseThrow());
            patientsWithStudy.add(object.string(Tag.PATIENT_ID).orElseThrow()
                    + object.string(Tag.STUDY_INSTANCE_UID).orElseThrow());
            assertThat(object.string(Tag.PATIENT_NAME).orElseThrow()).startsWith("Sample^Case ");
        }

        assertThat(instances).hasSize(SET.all().size());
        assertThat(patientsWithStudy).hasSize(6);
        assertThat(studies).hasSize(6);
    }

    @Test
    void theSameSeedGivesTheSameBytesAndAnotherSeedOtherIdentifiers() {
        Sample sample = SET.outOfPlaneNeedle();
        SampleSet again = new SampleSet(7);
        SampleSet other = new SampleSet(8);

        assertThat(new SampleObjects(again).file(again.outOfPlaneNeedle()))
                .isEqualTo(new SampleObjects(SET).file(sample));
        assertThat(new SampleObjects(other).sopInstanceUid(other.outOfPlaneNeedle()))
                .isNotEqualTo(new SampleObjects(SET).sopInstanceUid(sample));
    }

    private DicomFile open(Sample sample) throws IOException {
        return DicomFile.open(DrawnSamples.write(sample, directory));
    }
}
