// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import java.util.List;

/** How far the picture reaches beyond the frame: as far as entries, probe and scales need, within reason. */
final class StageArea {
    /** Not farther beyond the frame than this many times its longer side; design choice. */
    private static final double FARTHEST = 1.1;

    private static final double MARGIN_EM = 5;
    private static final double RULER_EM = 4.2;
    private static final double DEPTH_EM = 3.4;
    private static final double FOOT_EM = 2.6;

    private StageArea() {}

    static Box of(Scene scene, Grid grid) {
        double em = grid.em();
        Box frame = frame(scene, grid);
        Box stage = frame;
        for (Item item : scene.items()) {
            stage = with(stage, item, frame, grid);
        }
        stage = stage.with(new Xy(frame.minX(), frame.maxY() + FOOT_EM * em));
        return stage.cutTo(frame.grown(FARTHEST * Math.max(frame.width(), frame.height())));
    }

    static Box frame(Scene scene, Grid grid) {
        Xy far = grid.xy(new PointPx(scene.columns(), scene.rows()));
        return new Box(0, 0, far.x(), far.y());
    }

    private static Box with(Box stage, Item item, Box frame, Grid grid) {
        double em = grid.em();
        if (item instanceof Item.Spot spot) {
            Xy at = grid.xy(spot.at());
            return frame.holds(at)
                    ? stage
                    : stage.with(List.of(at.plus(-MARGIN_EM * em, -em), at.plus(MARGIN_EM * em, FOOT_EM * em)));
        }
        if (item instanceof Item.Probe probe) {
            Xy middle = grid.xy(probe.midpoint());
            Xy out = grid.xy(probe.outward());
            double lift = RULER_EM * em / middle.distanceTo(out);
            List<Xy> face = probe.face().stream().map(grid::xy).toList();
            return stage.with(face)
                    .with(face.stream()
                            .map(point -> point.plus((out.x() - middle.x()) * lift, (out.y() - middle.y()) * lift))
                            .toList());
        }
        if (item instanceof Item.Ruler ruler && ruler.role() == Role.DEPTH_SCALE) {
            Xy zero = grid.xy(ruler.zero());
            double side = Math.signum(grid.xy(ruler.outward()).x() - zero.x());
            return stage.with(zero.plus(side * DEPTH_EM * em, 0))
                    .with(new Xy(grid.xy(ruler.end()).x() + side * DEPTH_EM * em, zero.y()));
        }
        if (item instanceof Item.Ruler ruler) {
            Xy zero = grid.xy(ruler.zero());
            double side = Math.signum(grid.xy(ruler.outward()).y() - zero.y());
            return stage.with(zero.plus(0, side * RULER_EM * em));
        }
        return stage;
    }
}
