// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the notes go: in one column beside the picture where that is tall enough, else beside or below it, whichever
 * leaves the picture the larger share of the sheet.
 */
record Columns(Box canvas, List<Element> elements) {

    /** One column may reach this much lower than the picture; design choice. */
    private static final double TALLER = 1.3;

    static Columns beside(Box stage, List<Block> blocks, double em, double gap, double pad) {
        Columns right = right(stage, blocks, em, new Gaps(gap, pad));
        if (tallest(blocks, 1, gap) + 2 * pad <= TALLER * stage.height()) {
            return right;
        }
        Columns below = below(stage, blocks, em, new Gaps(gap, pad));
        return area(right.canvas()) <= area(below.canvas()) ? right : below;
    }

    private record Gaps(double between, double around) {}

    private static double area(Box box) {
        return box.width() * box.height();
    }

    private static Columns right(Box stage, List<Block> blocks, double em, Gaps gaps) {
        double width = NoteBlocks.WIDTH_EM * em;
        double room = stage.height() - 2 * gaps.around();
        int count = 1;
        while (count < blocks.size() && tallest(blocks, count, gaps.between()) > TALLER * room) {
            count++;
        }
        Xy corner = new Xy(stage.maxX() + gaps.around(), stage.minY() + gaps.around());
        List<Element> elements = flow(corner, blocks, count, width, gaps);
        double bottom = Math.max(stage.maxY(), corner.y() + tallest(blocks, count, gaps.between()) + gaps.around());
        double farSide = corner.x() + count * (width + gaps.around());
        return new Columns(new Box(stage.minX(), stage.minY(), farSide, bottom), elements);
    }

    private static Columns below(Box stage, List<Block> blocks, double em, Gaps gaps) {
        double width = NoteBlocks.WIDTH_EM * em;
        int count = (int) Math.max(1, Math.floor((stage.width() - gaps.around()) / (width + gaps.around())));
        Xy corner = new Xy(stage.minX() + gaps.around(), stage.maxY() + gaps.around());
        List<Element> elements = flow(corner, blocks, count, width, gaps);
        double bottom = corner.y() + tallest(blocks, count, gaps.between()) + gaps.around();
        double farSide = Math.max(stage.maxX(), corner.x() + width + gaps.around());
        return new Columns(new Box(stage.minX(), stage.minY(), farSide, bottom), elements);
    }

    private static List<Element> flow(Xy corner, List<Block> blocks, int count, double width, Gaps gaps) {
        double limit = tallest(blocks, count, gaps.between());
        List<Element> elements = new ArrayList<>();
        double x = corner.x();
        double y = corner.y();
        for (Block block : blocks) {
            if (y > corner.y() && y + block.height() > corner.y() + limit + 1e-6) {
                x += width + gaps.around();
                y = corner.y();
            }
            elements.addAll(block.at(new Xy(x, y)));
            y += block.height() + gaps.between();
        }
        return elements;
    }

    /** The least height that lets the blocks flow into that many columns in their order. */
    private static double tallest(List<Block> blocks, int count, double gap) {
        double low = blocks.stream().mapToDouble(Block::height).max().orElse(0);
        double high = blocks.stream().mapToDouble(block -> block.height() + gap).sum();
        for (int step = 0; step < 50; step++) {
            double middle = (low + high) / 2;
            if (columnsNeeded(blocks, middle, gap) <= count) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    private static int columnsNeeded(List<Block> blocks, double limit, double gap) {
        int count = 1;
        double y = 0;
        for (Block block : blocks) {
            if (y > 0 && y + block.height() > limit + 1e-9) {
                count++;
                y = 0;
            }
            y += block.height() + gap;
        }
        return count;
    }
}
