// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A whole screen, still or moving: panes of tissue and the furniture round them. The first pane is the one measured. */
public final class SampleScene {
    private final Layout layout;
    private final List<SamplePane> panes;
    private final Motion motion;

    SampleScene(Layout layout, List<SamplePane> panes, Motion motion) {
        this.layout = layout;
        this.panes = List.copyOf(panes);
        this.motion = motion;
    }

    /**
     * The screen.
     *
     * @param colour three samples a pixel
     */
    public record Layout(int columns, int rows, boolean colour, ScaleStatement scale) {}

    /** How the object that carries the picture states the size of a pixel. */
    public enum ScaleStatement {
        REGIONS,
        PIXEL_SPACING,
        NONE
    }

    public Layout layout() {
        return layout;
    }

    public int frames() {
        return motion.frames();
    }

    /** Time between two pictures of a cine. */
    public double millisecondsPerFrame() {
        return 1000 / Motion.FRAMES_PER_SECOND;
    }

    /** Code word of the block this could be. */
    public String block() {
        return panes.get(0).anatomy().block();
    }

    List<SamplePane> panes() {
        return panes;
    }

    /** Every picture, in order. */
    public List<SampleFrame> render(SampleRandom random) {
        List<PaneRenderer> renderers = new ArrayList<>();
        for (int i = 0; i < panes.size(); i++) {
            renderers.add(new PaneRenderer(panes.get(i), motion, random.of("pane " + i)));
        }
        List<SampleFrame> frames = new ArrayList<>();
        for (int frame = 0; frame < motion.frames(); frame++) {
            Screen screen = new Screen(layout.columns, layout.rows);
            for (int i = 0; i < panes.size(); i++) {
                renderers.get(i).paint(frame, screen);
                Furniture.draw(panes.get(i), screen);
            }
            Furniture.caption(screen);
            frames.add(layout.colour ? screen.asColour() : screen.asGrey());
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
