// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SampleCineTest {
    private final SampleSet set = new SampleSet(7);

    @Test
    void theNeedleComesIntoViewAndItsTipGoesDeeperFromFrameToFrame() {
        List<SampleTruth> truths = set.named("cine-needle-advances").scene().truths();
        List<Double> depths = truths.stream()
                .flatMap(truth -> truth.needle().stream())
                .map(needle -> needle.lengths().endDepthMm())
                .toList();

        assertThat(truths.get(0).needle()).as("not yet under the face").isEmpty();
        assertThat(depths).hasSizeGreaterThan(18).isSorted().doesNotHaveDuplicates();
        assertThat(depths.get(depths.size() - 1)).isCloseTo(30.2, within(1e-9));
    }

    @Test
    void thePictureMovesAsFarAsTheTruthSaysTheProbeDid() {
        Sample sample = set.named("cine-probe-slides");
        List<SampleFrame> frames = set.render(sample);
        List<SampleTruth> truths = sample.scene().truths();
        double told = truths.get(0).target().at().column()
                - truths.get(8).target().at().column();

        assertThat(told).isGreaterThan(5);
        assertThat((double) bestShift(frames.get(0), frames.get(8))).isCloseTo(told, within(1.0));
    }

    @Test
    void theShaftIsLostFromItsFarEndUntilNothingIsLeft() {
        List<SampleTruth> truths = set.named("cine-probe-slides").scene().truths();

        assertThat(truths.get(5).needle().orElseThrow().tipVisible()).isTrue();
        assertThat(truths.get(14).needle().orElseThrow().tipVisible()).isFalse();
        assertThat(truths.get(23).needle()).isEmpty();
    }

    @Test
    void speckleOfNeighbouringFramesIsAlikeAndLosesItsLikenessWithTime() {
        List<SampleFrame> frames = set.render(set.named("cine-needle-advances"));
        double next = likeness(frames.get(0), frames.get(1), 0);
        double later = likeness(frames.get(0), frames.get(12), 0);

        assertThat(next).isBetween(0.85, 0.999);
        assertThat(later).isLessThan(next - 0.05);
    }

    /** Columns by which the second picture lies to the left of the first. */
    private static int bestShift(SampleFrame first, SampleFrame second) {
        int best = 0;
        for (int shift = -25; shift <= 25; shift++) {
            if (likeness(first, second, shift) > likeness(first, second, best)) {
                best = shift;
            }
        }
        return best;
    }

    /** Correlation of grey in a part of the picture that the needle never reaches. */
    private static double likeness(SampleFrame first, SampleFrame second, int shift) {
        double n = 0;
        double a = 0;
        double b = 0;
        double aa = 0;
        double bb = 0;
        double ab = 0;
        for (int row = 120; row < 260; row++) {
            for (int column = 150; column < 270; column++) {
                double x = first.level(column, row);
                double y = second.level(column - shift, row);
                n++;
                a += x;
                b += y;
                aa += x * x;
                bb += y * y;
                ab += x * y;
            }
        }
        return (n * ab - a * b) / Math.sqrt((n * aa - a * a) * (n * bb - b * b));
    }
}
