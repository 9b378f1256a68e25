// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A whole screen, still or moving: panes of tissue and the furniture round them.
 *
 * @param scale how the object that carries the picture states its scale
 * @param colour three samples a pixel
 */
public record SampleScene(
        String title,
        int columns,
        int rows,
        boolean colour,
        ScaleStatement scale,
        List<SamplePane> panes,
        Motion motion) {
    /** How an object states the size of a pixel. */
    public enum ScaleStatement {
        REGIONS,
        PIXEL_SPACING,
        NONE
    }

    public SampleScene {
        panes = List.copyOf(panes);
    }

    public int frames() {
        return motion.frames();
    }

    /** Every picture, in order. */
    public List<SampleFrame> render(SampleRandom random) {
        List<PaneRenderer> renderers = new ArrayList<>();
        for (int i = 0; i < panes.size(); i++) {
            renderers.add(new PaneRenderer(panes.get(i), motion, random.of("pane " + i)));
        }
        List<SampleFrame> frames = new ArrayList<>();
        for (int frame = 0; frame < motion.frames(); frame++) {
            Screen screen = new Screen(columns, rows);
            for (int i = 0; i < panes.size(); i++) {
                renderers.get(i).paint(frame, screen);
                Furniture.draw(panes.get(i), screen);
            }
            Furniture.caption(title, screen);
            frames.add(colour ? screen.asColour() : screen.asGrey());
        }
        return frames;
    }

    /** What each picture shows, in order. */
    public List<SampleTruth> truths() {
        List<SampleTruth> truths = new ArrayList<>();
        for (int frame = 0; frame < motion.frames(); frame++) {
            SamplePane first = panes.get(0);
            Optional<NeedlePose> pose = PaneRenderer.pose(first, motion, frame);
            truths.add(SampleTruth.of(this, pose, PaneRenderer.movedMm(first, motion, frame)));
        }
        return truths;
    }
}
