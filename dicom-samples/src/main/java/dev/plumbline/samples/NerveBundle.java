// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;

/**
 * A peripheral nerve cut across: dark fascicles in bright connective tissue inside a bright rim, the honeycomb.
 */
record NerveBundle(Oval oval, List<Fascicle> fascicles, Texture grain) implements Structure {
    private static final double CONNECTIVE_DB = -27;
    private static final double RIM_DB = -22;
    private static final double FASCICLE_DB = -45;
    private static final double LOSS = 1.0;

    /** Outline: half-axes along and across its own longer axis; {@code tilt} is the depth that axis gains per millimetre to the right. */
    record Oval(ScanPoint center, double longMm, double shortMm, double tilt) {
        Oval grown(double byMm) {
            return new Oval(center, longMm + byMm, shortMm + byMm, tilt);
        }

        double alongOf(double across, double depth) {
            double unit = Math.sqrt(1 + tilt * tilt);
            return ((across - center.acrossMm()) + tilt * (depth - center.depthMm())) / unit;
        }

        double downOf(double across, double depth) {
            double unit = Math.sqrt(1 + tilt * tilt);
            return ((depth - center.depthMm()) - tilt * (across - center.acrossMm())) / unit;
        }

        ScanPoint at(double along, double down) {
            double unit = Math.sqrt(1 + tilt * tilt);
            return center.plus((along - tilt * down) / unit, (down + tilt * along) / unit);
        }
    }

    /** A bundle of fibres, round, in the axes of the oval. */
    record Fascicle(double along, double down, double radiusMm) {}

    static NerveBundle filled(Oval oval, double fascicleMm, SampleRandom random) {
        List<Fascicle> fascicles = new ArrayList<>();
        double pitch = 2.15 * fascicleMm;
        int row = 0;
        for (double down = -oval.shortMm() + pitch / 2; down < oval.shortMm(); down += 0.88 * pitch, row++) {
            for (double along = -oval.longMm() + pitch * (row % 2 == 0 ? 0.5 : 1);
                    along < oval.longMm();
                    along += pitch) {
                Fascicle fascicle = new Fascicle(
                        along + random.between(-0.2, 0.2) * pitch,
                        down + random.between(-0.2, 0.2) * pitch,
                        fascicleMm * random.between(0.62, 1.05));
                if (fits(oval, fascicle)) {
                    fascicles.add(fascicle);
                }
            }
        }
        return new NerveBundle(oval, List.copyOf(fascicles), new Texture(random));
    }

    private static boolean fits(Oval oval, Fascicle fascicle) {
        double x = fascicle.along / (oval.longMm - 0.8 * fascicle.radiusMm);
        double y = fascicle.down / (oval.shortMm - 0.8 * fascicle.radiusMm);
        return x * x + y * y <= 1;
    }

    @Override
    public Box bounds() {
        double reach = oval.longMm + 1.2;
        return Box.round(oval.center, reach, reach);
    }

    @Override
    public void paint(Cell cell) {
        double along = oval.alongOf(cell.across, cell.depth);
        double down = oval.downOf(cell.across, cell.depth);
        double x = along / oval.longMm;
        double y = down / oval.shortMm;
        double outside = (Math.sqrt(x * x + y * y) - 1) * oval.shortMm;
        if (outside > 0.7) {
            return;
        }
        double inside = Cell.step(-outside, -0.25, 0.2);
        cell.cover(CONNECTIVE_DB + 3 * grain.at(along / 0.8, down / 0.5), inside);
        cell.damp(LOSS, inside);
        cell.mirror *= 1 - inside;
        double dark = 0;
        for (Fascicle fascicle : fascicles) {
            double dx = along - fascicle.along;
            double dy = down - fascicle.down;
            double edge = fascicle.radiusMm - Math.sqrt(dx * dx + dy * dy);
            dark = Math.max(dark, Cell.step(edge, -0.12, 0.18));
        }
        cell.cover(FASCICLE_DB, dark * inside);
        double square = y * y / Math.max(1e-9, x * x + y * y);
        cell.cover(RIM_DB, Cell.bell(outside, 0.22) * (0.5 + 0.5 * square));
        cell.mirror += 0.03 * square * Cell.bell(outside, 0.06);
    }
}
