// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.ForeignMarks;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.samples.SampleSet;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MarksCommandTest {
    private static final String TARGET = "{\"label\":\"Target\",\"type\":\"POINT\",\"points\":[320,300]}";

    @TempDir
    private Path folder;

    private Path frame;

    @BeforeEach
    void aFrame() throws Exception {
        SampleSet set = new SampleSet(1);
        frame = Files.write(folder.resolve("frame.dcm"), new SampleObjects(set).file(set.inPlanePlan()));
    }

    @Test
    void marksThatHoldAreTold() throws Exception {
        Path report = ForeignMarks.write(folder, frame, "", TARGET);
        Invoked told = Invoked.plumbline("marks", report, frame);
        assertThat(told.code()).as(told.err()).isZero();
        assertThat(told.out()).contains("target: \"Target\", 1 point on frame 1");
        Invoked json = Invoked.plumbline("marks", "--json", report, frame);
        assertThat(json.json()
                        .path("placed")
                        .path(0)
                        .path("points")
                        .path(0)
                        .path("column")
                        .asDouble())
                .isEqualTo(320);
    }

    @Test
    void aSitesOwnRulesDecideAndWhatNoneKnowsMakesTheExitCodeOne() throws Exception {
        Path report = ForeignMarks.write(folder, frame, "", TARGET.replace("Target", "aim here"));
        Invoked unknown = Invoked.plumbline("marks", report, frame);
        assertThat(unknown.code()).isEqualTo(1);
        assertThat(unknown.out()).contains("not taken:").contains("aim here");
        Path rules = Files.writeString(
                folder.resolve("rules.json"),
                "{\"schema\":\"plumbline-mark-rules/1\",\"rules\":[{\"means\":\"target\",\"label\":\"aim.*\"}]}");
        assertThat(Invoked.plumbline("marks", "--rules", rules, report, frame).code())
                .isZero();
    }

    @Test
    void marksWithoutTheirImageAreRefusedInWords() throws Exception {
        Path report = ForeignMarks.write(folder, frame, "", TARGET);
        Invoked alone = Invoked.plumbline("marks", report);
        assertThat(alone.code()).isEqualTo(1);
        assertThat(alone.out()).contains("refused:").contains("Send the image first");
    }
}
