// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Side;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NeedleEchoTest {
    private final SampleSet set = new SampleSet(7);

    @Test
    void theBrightestRidgeOfTheInPlaneFrameLiesOnTheTrueShaft() {
        Sample sample = set.inPlaneNeedle();
        SampleFrame frame = set.render(sample).get(0);
        SampleTruth.NeedleTruth needle = sample.scene().truths().get(0).needle().orElseThrow();
        ImageArea area = sample.scene().panes().get(0).area();

        LineFinder.Ridge ridge = new LineFinder(frame, area).between(410, 630);

        assertThat(distanceToShaft(needle, ridge.shallow())).isLessThan(1);
        assertThat(distanceToShaft(needle, ridge.deep())).isLessThan(1);
    }

    @Test
    void theShaftEndsWhereTheTruthSaysTheTipIs() {
        Sample sample = set.inPlaneNeedle();
        SampleFrame frame = set.render(sample).get(0);
        SampleTruth.NeedleTruth needle = sample.scene().truths().get(0).needle().orElseThrow();

        double before = brightestNear(frame, along(needle, -0.012));
        double beyond = brightestNear(frame, along(needle, 0.025));

        assertThat(before).isGreaterThan(230);
        assertThat(beyond).isLessThan(190);
    }

    @Test
    void brightnessFallsSteadilyAsTheShaftGetsSteeper() {
        double former = 1000;
        for (int angle = 5; angle <= 75; angle += 5) {
            double mean = meanBrightness(angle, true);
            assertThat(mean).as("brightness at %d degrees", angle).isLessThan(former);
            former = mean;
        }
        assertThat(former).as("still above the tissue at 75 degrees").isGreaterThan(meanBrightness(75, false) + 5);
    }

    @Test
    void repetitionsFollowBelowTheShaftAtTheNeedlesDiameter() {
        InPlaneNeedle needle = new InPlaneNeedle(new ScanPoint(-15, 22), 12, Side.RIGHT, InPlaneNeedle.Seen.WHOLE, 0.8);
        SamplePane pane = Phantom.pane(Phantom.scanner(-14, 3)).with(needle);
        SampleFrame frame = Phantom.still(pane).render(new SampleRandom(3)).get(0);
        List<Double> profile = new ArrayList<>();
        for (int offset = -6; offset <= 40; offset++) {
            profile.add(meanAlong(frame, pane, needle, offset));
        }

        assertThat(peaks(profile)).contains(6, 16, 26);
    }

    @Test
    void anUnseenNeedleLeavesThePictureAsItWas() {
        SamplePane pane = Phantom.pane(Phantom.scanner(0, 1));
        InPlaneNeedle unseen = new InPlaneNeedle(new ScanPoint(0, 20), 30, Side.RIGHT, InPlaneNeedle.Seen.NOTHING, 0.7);

        assertThat(Phantom.still(pane.with(unseen))
                        .render(new SampleRandom(3))
                        .get(0)
                        .pixels())
                .isEqualTo(
                        Phantom.still(pane).render(new SampleRandom(3)).get(0).pixels());
    }

    @Test
    void theDotOfACrossingNeedleIsTheBrightestSpotAtTheTruePlace() {
        Sample sample = set.outOfPlaneNeedle();
        SampleFrame frame = set.render(sample).get(0);
        PointPx end = sample.scene().truths().get(0).needle().orElseThrow().end();
        double columns = 0;
        double rows = 0;
        int count = 0;
        for (int row = 300; row < 420; row++) {
            for (int column = 250; column < 420; column++) {
                if (frame.level(column, row) == 255) {
                    columns += column + 0.5;
                    rows += row + 0.5;
                    count++;
                }
            }
        }

        assertThat(count).isPositive();
        assertThat(columns / count).isCloseTo(end.column(), within(1.0));
        assertThat(rows / count).isCloseTo(end.row(), within(1.0));
    }

    private static double meanBrightness(int angle, boolean seen) {
        InPlaneNeedle needle = new InPlaneNeedle(
                new ScanPoint(0, 24),
                angle,
                Side.RIGHT,
                seen ? InPlaneNeedle.Seen.WHOLE : InPlaneNeedle.Seen.NOTHING,
                0.7);
        SamplePane pane = Phantom.pane(Phantom.scanner(-26, 1)).with(needle);
        SampleFrame frame = Phantom.still(pane).render(new SampleRandom(3)).get(0);
        double sum = 0;
        int count = 0;
        for (double behind = 3; behind < 10; behind += 0.1) {
            sum += brightestNear(frame, pane.area().toPx(needle.behindTip(behind)));
            count++;
        }
        return sum / count;
    }

    private static double meanAlong(SampleFrame frame, SamplePane pane, InPlaneNeedle needle, int rowsBelow) {
        double sum = 0;
        int count = 0;
        for (double behind = 4; behind < 24; behind += 0.05) {
            PointPx at = pane.area().toPx(needle.behindTip(behind));
            sum += frame.level((int) at.column(), (int) (at.row() + rowsBelow));
            count++;
        }
        return sum / count;
    }

    private static List<Integer> peaks(List<Double> profile) {
        List<Integer> peaks = new ArrayList<>();
        for (int i = 2; i < profile.size() - 2; i++) {
            double here = profile.get(i);
            if (here > profile.get(i - 1) && here >= profile.get(i + 1) && here > profile.get(i - 2) + 4) {
                peaks.add(i);
            }
        }
        return peaks;
    }

    private static double brightestNear(SampleFrame frame, PointPx at) {
        int brightest = 0;
        for (int row = (int) at.row() - 2; row <= (int) at.row() + 2; row++) {
            brightest = Math.max(brightest, frame.level((int) at.column(), row));
        }
        return brightest;
    }

    /** A place on the shaft's line, as a share of the visible part beyond the tip. */
    private static PointPx along(SampleTruth.NeedleTruth needle, double share) {
        PointPx shallow = needle.visible().get(0);
        PointPx tip = needle.end();
        return new PointPx(
                tip.column() + share * (tip.column() - shallow.column()),
                tip.row() + share * (tip.row() - shallow.row()));
    }

    private static double distanceToShaft(SampleTruth.NeedleTruth needle, PointPx point) {
        PointPx a = needle.entry().orElseThrow();
        PointPx b = needle.end();
        double cross = (b.column() - a.column()) * (point.row() - a.row())
                - (b.row() - a.row()) * (point.column() - a.column());
        return Math.abs(cross) / a.distanceTo(b);
    }
}
