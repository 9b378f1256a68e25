// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Draws one pane frame by frame; keeps the scatterers from one frame to the next. */
final class PaneRenderer {
    /** Beams under the face. */
    private static final int LINES = 320;

    private static final double SAMPLES_PER_PULSE = 1.6;

    private final SamplePane pane;
    private final Motion motion;
    private final SampleRandom random;
    private final Medium.Grid grid;
    private final ScanConverter converter;
    private List<Scatterers> tissue;
    private int movedLines;

    PaneRenderer(SamplePane pane, Motion motion, SampleRandom random) {
        this.pane = pane;
        this.motion = motion;
        this.random = random;
        this.grid = grid(pane);
        this.converter = new ScanConverter(grid, pane.area());
        this.tissue = IntStream.range(0, pane.machine().scanner().looks())
                .mapToObj(look -> Scatterers.drawn(grid, random.of("tissue " + look)))
                .toList();
    }

    private static Medium.Grid grid(SamplePane pane) {
        double step = pane.machine().scanner().pulse().axialMm() / SAMPLES_PER_PULSE;
        int samples = (int) Math.ceil(pane.depthMm() / step) + 4;
        return new Medium.Grid(pane.machine().transducer(), LINES, samples, step);
    }

    void paint(int frame, Screen screen) {
        advanceTissue(frame);
        List<Structure> structures = new ArrayList<>(pane.anatomy().structures());
        pose(pane, motion, frame)
                .ifPresent(needle -> structures.add(needle.echo(pane.machine().transducer())));
        Medium medium = Medium.of(grid, structures, movedMm(pane, motion, frame));
        Scatterers noise = Scatterers.drawn(grid, random.of("noise " + frame));
        float[] levels = new Beamformer(grid, pane.machine().scanner()).levels(medium, tissue, noise);
        converter.paint(levels, pane.machine().scanner().display(), screen);
        pane.flow().ifPresent(flow -> flow.paint(pane.area(), screen));
    }

    private void advanceTissue(int frame) {
        if (frame == 0) {
            return;
        }
        int lines = movedLines(pane, motion, frame);
        List<Scatterers> moved = new ArrayList<>();
        for (int look = 0; look < tissue.size(); look++) {
            Scatterers fresh = Scatterers.drawn(grid, random.of("fresh " + frame + " " + look));
            moved.add(tissue.get(look).moved(lines - movedLines, fresh).later(motion.correlation(), fresh));
        }
        tissue = List.copyOf(moved);
        movedLines = lines;
    }

    /** The probe moves by whole beams, so that the scatterers move with the tissue. */
    private static int movedLines(SamplePane pane, Motion motion, int frame) {
        double pitch = pane.machine().transducer().spreadMm(0) / LINES;
        return (int) Math.rint(motion.drift().slideMm() * motion.share(frame) / pitch);
    }

    static double movedMm(SamplePane pane, Motion motion, int frame) {
        return motion.frames() == 1
                ? 0
                : movedLines(pane, motion, frame) * pane.machine().transducer().spreadMm(0) / LINES;
    }

    static Optional<NeedlePose> pose(SamplePane pane, Motion motion, int frame) {
        double share = motion.share(frame);
        double left = motion.drift().left(share);
        return pane.needle()
                .map(needle -> needle.withdrawn((1 - share) * motion.advanceMm()))
                .map(needle -> left < 1 ? needle.lostFromItsFarEnd(left) : needle);
    }
}
