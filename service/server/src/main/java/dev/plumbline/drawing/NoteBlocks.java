// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** Sets the notes of a scene as blocks of one width. */
final class NoteBlocks {
    static final double WIDTH_EM = 25;

    private static final String KIND = "note";

    private final double em;
    private final double width;
    private final List<Role> shown;

    /** @param shown the roles on the picture, for the legend */
    NoteBlocks(double em, List<Role> shown) {
        this.em = em;
        this.width = WIDTH_EM * em;
        this.shown = shown;
    }

    List<Block> of(Scene scene, List<String> leftOver) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(heading(scene.title()));
        boolean draft = scene.standing() == Standing.DRAFT;
        blocks.add(
                draft
                        ? badge(scene.standing().words(), true)
                        : words(scene.standing().words(), true));
        scene.notes().stream()
                .map(this::block)
                .filter(block -> block.height() > 0)
                .forEach(blocks::add);
        if (!leftOver.isEmpty()) {
            blocks.add(words("Marked too, without room for a label: " + String.join("; ", leftOver) + ".", true));
        }
        return blocks;
    }

    private Block block(Note note) {
        if (note instanceof Note.Badge badge) {
            return badge(badge.text(), badge.broken());
        }
        if (note instanceof Note.Paragraph paragraph) {
            return words(paragraph.text(), paragraph.quiet());
        }
        if (note instanceof Note.Table table) {
            return new TableFigure(table, em, width).block();
        }
        if (note instanceof Note.SideView view) {
            return new SideViewFigure(view, em, width).block();
        }
        return legend();
    }

    private Block heading(String text) {
        Typesetter set = new Typesetter("title");
        set.paragraph(text, 0, width, new Element.Type(1.15 * em, true, Ink.TEXT, false));
        return new Block(set.elements(), set.height());
    }

    private Block words(String text, boolean quiet) {
        Typesetter set = new Typesetter(KIND);
        set.paragraph(
                text,
                0,
                width,
                new Element.Type((quiet ? 0.78 : 0.88) * em, false, quiet ? Ink.QUIET : Ink.TEXT, false));
        return new Block(set.elements(), set.height());
    }

    private Block badge(String text, boolean broken) {
        Element.Type type = new Element.Type(0.88 * em, true, Ink.TEXT, false);
        double pad = 0.45 * em;
        List<String> lines = Typesetter.wrapped(text, width - 2 * pad, type);
        double inner = lines.stream()
                .mapToDouble(line -> Lettering.width(line, type.size(), true))
                .max()
                .orElse(0);
        Typesetter set = new Typesetter("badge");
        set.space(0.6 * pad);
        set.paragraph(text, pad, width - 2 * pad, type);
        double height = set.height() + 0.6 * pad;
        Pen frame = new Pen(Ink.TEXT, 0.09 * em, List.of(), 0, 0);
        Box box = new Box(0, 0, inner + 2 * pad, height);
        List<Element> elements = new ArrayList<>(set.elements());
        elements.add(rectangle("badge", box, broken ? frame.dashed(0.5 * em, 0.3 * em) : frame));
        return new Block(elements, height);
    }

    static Element rectangle(String kind, Box box, Pen pen) {
        return new Element.Trace(
                kind,
                List.of(
                        new Xy(box.minX(), box.minY()),
                        new Xy(box.maxX(), box.minY()),
                        new Xy(box.maxX(), box.maxY()),
                        new Xy(box.minX(), box.maxY())),
                true,
                pen);
    }

    /** One line for each line style and symbol on the picture. */
    private Block legend() {
        Element.Type type = new Element.Type(0.78 * em, false, Ink.TEXT, false);
        double line = 1.28 * em;
        List<Element> elements = new ArrayList<>();
        double y = 0;
        for (Role role : shown) {
            double middle = y + line / 2;
            elements.addAll(sample(role, new Xy(0, middle), 2.6 * em));
            elements.add(Typesetter.text("legend", role.legend(), new Xy(3.4 * em, middle + 0.3 * type.size()), type));
            y += line;
        }
        return new Block(elements, y);
    }

    private List<Element> sample(Role role, Xy left, double length) {
        if (Look.isSymbol(role)) {
            return Look.symbol(role, left.plus(length / 2, 0), 0.8 * em);
        }
        Pen pen = Look.pen(role).times(em).withHalo(0);
        Xy right = left.plus(length, 0);
        if (role == Role.OBSERVED_SHAFT) {
            double rail = 0.3 * em;
            return List.of(
                    new Element.Trace("legend", List.of(left.plus(0, -rail), right.plus(0, -rail)), false, pen),
                    new Element.Trace("legend", List.of(left.plus(0, rail), right.plus(0, rail)), false, pen));
        }
        if (role == Role.FAN) {
            return List.of(new Element.Trace(
                    "legend",
                    List.of(left.plus(0, 0.45 * em), right.plus(0, -0.45 * em), right.plus(0, 0.45 * em)),
                    true,
                    pen));
        }
        if (role == Role.DIFFERENCE) {
            return Arrow.between("legend", left, right, pen, em);
        }
        List<Element> sample = new ArrayList<>();
        sample.add(new Element.Trace("legend", List.of(left, right), false, pen));
        if (role == Role.HAZARD) {
            for (double x = 0.3 * em; x < length; x += 0.65 * em) {
                Xy foot = left.plus(x, 0);
                sample.add(new Element.Trace("legend", List.of(foot, foot.plus(0, 0.4 * em)), false, pen));
            }
        }
        return sample;
    }
}
