// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Lays a scene out on a sheet: the picture with its margins, labels where there is room, notes in columns beside it. */
final class Layout {
    /** Text of a sheet is at least this many pixels high over a frame, by enlarging small frames a whole number of times. */
    private static final double LEAST_EM_PX = 12;

    /** Alone, a drawing has no pixels of its own and takes this size of text. */
    private static final double ALONE_EM_PX = 18;

    /** A picture is not made larger than this, whatever the frame; design choice, about 160 MB. */
    private static final double MOST_PX = 40e6;

    private static final double[] BARS_MM = {100, 50, 20, 10, 5, 2, 1, 0.5};
    private static final double BAR_SHARE = 0.45;
    private static final double PAD_EM = 1.2;
    private static final double BLOCK_GAP_EM = 0.75;

    private final Scene scene;
    private final boolean overFrame;
    private final Grid grid;
    private final double em;

    private Layout(Scene scene, boolean overFrame) {
        this.scene = scene;
        this.overFrame = overFrame;
        this.grid = Grid.of(scene, overFrame);
        this.em = grid.em();
    }

    static Sheet of(Scene scene, boolean overFrame) {
        return new Layout(scene, overFrame).sheet();
    }

    private Sheet sheet() {
        Box frame = StageArea.frame(scene, grid);
        Box stage = StageArea.of(scene, grid);
        Drawn drawn = Figures.of(scene.items(), grid, stage);
        List<Element> onStage = new ArrayList<>(drawn.elements());
        onStage.addAll(scaleBar(stage, drawn.obstacles()));
        LabelPlacer labels = new LabelPlacer(grid, stage, frame, drawn.obstacles());
        labels.place(drawn.wishes());
        onStage.addAll(labels.elements());
        List<Block> blocks = new NoteBlocks(em, rolesInLegend(drawn, labels.labelled())).of(scene, labels.leftOver());
        Columns columns = Columns.beside(stage, blocks, em, BLOCK_GAP_EM * em, PAD_EM * em);
        return new Sheet(
                columns.canvas(),
                stage,
                frame,
                scale(columns.canvas()),
                overFrame ? Palette.OVER_FRAME : Palette.ALONE,
                scene.title() + ", " + scene.standing().words(),
                scene.description(),
                ground(stage, frame),
                onStage,
                columns.elements());
    }

    private double scale(Box canvas) {
        double wanted = overFrame ? Math.max(1, Math.ceil(LEAST_EM_PX / em)) : ALONE_EM_PX / em;
        return Math.min(wanted, Math.sqrt(MOST_PX / (canvas.width() * canvas.height())));
    }

    private List<Element> ground(Box stage, Box frame) {
        return List.of(
                NoteBlocks.rectangle("outside-image", stage, Pen.fill(Ink.OUTSIDE, 1)),
                NoteBlocks.rectangle("image", frame, Pen.fill(Ink.TISSUE, 1)));
    }

    /** Every line style that is drawn, and every symbol that no label explains. */
    private List<Role> rolesInLegend(Drawn drawn, Set<Role> labelled) {
        Set<String> kinds = drawn.elements().stream().map(Element::kind).collect(Collectors.toSet());
        TreeSet<Role> roles = new TreeSet<>();
        for (Role role : Role.values()) {
            boolean explained = Look.isSymbol(role) && labelled.contains(role);
            if (kinds.contains(role.kind()) && !role.legend().isEmpty() && !explained) {
                roles.add(role);
            }
        }
        for (Note note : scene.notes()) {
            if (note instanceof Note.SideView view) {
                view.planned().map(Note.Crossing::path).ifPresent(roles::add);
                view.observed().map(Note.Crossing::path).ifPresent(roles::add);
            }
        }
        return List.copyOf(roles);
    }

    /** Below the image: ten millimetres across, or what suits the width of the frame. */
    private List<Element> scaleBar(Box stage, Obstacles obstacles) {
        double mm = barMm();
        double length = mm * grid.xPerMm();
        Xy left = grid.xy(new PointPx(0, scene.rows())).plus(0.6 * em, 1.5 * em);
        Pen pen = Pen.line(Ink.SKIN, 0.16 * em).withHalo(0);
        List<Element> bar = new ArrayList<>();
        bar.add(new Element.Trace("scale-bar", List.of(left, left.plus(length, 0)), false, pen));
        for (double x : new double[] {0, length}) {
            bar.add(new Element.Trace(
                    "scale-bar-end", List.of(left.plus(x, -0.35 * em), left.plus(x, 0.35 * em)), false, pen));
        }
        Element.Type type = new Element.Type(0.76 * em, false, Ink.TEXT, true);
        String words = Wording.number(mm, mm < 1 ? 1 : 0) + " mm";
        bar.add(Typesetter.text("scale-bar-label", words, left.plus(length + 0.6 * em, 0.28 * em), type));
        obstacles.keepOff(new Box(left.x(), left.y() - 0.6 * em, left.x() + length + 5 * em, stage.maxY()));
        return bar;
    }

    private double barMm() {
        double most = BAR_SHARE * scene.columns() / grid.xPerMm();
        for (double mm : BARS_MM) {
            if (mm <= most) {
                return mm;
            }
        }
        return BARS_MM[BARS_MM.length - 1];
    }
}
