// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark.Form;
import dev.plumbline.intake.ForeignMark.Label;
import dev.plumbline.intake.Gathered.FrameKey;
import dev.plumbline.intake.Gathered.Placed;
import dev.plumbline.intake.Gathered.Question;
import dev.plumbline.intake.Gathered.RefusedObject;
import dev.plumbline.intake.Gathered.Remark;
import dev.plumbline.intake.Gathered.Unmatched;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Everything that other software has drawn in a study, read together. The same objects give the same answer, however often
 * and in whatever order they come: nothing is counted twice, nothing is lost without a word.
 *
 * <p>A later version of a report replaces what it draws again, by name and frame. What it no longer draws is kept and
 * remarked on: software that writes back what it read may drop marks that nobody took away.
 */
public final class Gathering {
    private static final double SAME_PX = 0.5;

    private final MarkRules rules;
    private final MarkFrames frames;

    private final Map<String, List<Placed>> placedIn = new LinkedHashMap<>();
    private final List<Unmatched> unmatched = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();
    private final List<RefusedObject> refused = new ArrayList<>();
    private final List<Remark> remarks = new ArrayList<>();

    private Gathering(MarkRules rules, MarkFrames frames) {
        this.rules = rules;
        this.frames = frames;
    }

    /**
     * Reads objects together.
     *
     * @param objects in the order they came
     * @param unread objects that could not be read at all
     */
    public static Gathered of(
            List<ForeignObject> objects, List<RefusedObject> unread, MarkRules rules, MarkFrames frames) {
        Gathering gathering = new Gathering(rules, frames);
        gathering.refused.addAll(unread);
        List<ForeignObject> ordered = predecessorsFirst(objects);
        ordered.forEach(gathering::take);
        List<Placed> held = gathering.withoutRepeats(gathering.afterSuccessors(ordered));
        return new Gathered(
                gathering.withoutContradictions(held),
                gathering.unmatched,
                gathering.questions,
                gathering.refused,
                gathering.remarks);
    }

    private static List<ForeignObject> predecessorsFirst(List<ForeignObject> objects) {
        Map<String, ForeignObject> left = new LinkedHashMap<>();
        objects.forEach(object -> left.putIfAbsent(object.uid(), object));
        List<ForeignObject> ordered = new ArrayList<>();
        while (!left.isEmpty()) {
            ForeignObject next = left.values().stream()
                    .filter(object -> object.predecessors().stream().noneMatch(left::containsKey))
                    .findFirst()
                    .orElseGet(() -> left.values().iterator().next()); // versions in a circle: as they came
            left.remove(next.uid());
            ordered.add(next);
        }
        return ordered;
    }

    private void take(ForeignObject object) {
        List<Admission.Taken> taken = new ArrayList<>();
        List<Question> asked = new ArrayList<>();
        Admission admission = new Admission(frames);
        for (ForeignMark mark : object.marks()) {
            Admission.Verdict verdict = admission.of(mark);
            if (verdict instanceof Admission.Impossible impossible) {
                refused.add(new RefusedObject(object.uid(), mark.at(), impossible.why(), impossible.remedy()));
                return;
            }
            if (verdict instanceof Admission.Asked question) {
                asked.add(new Question(
                        object.uid(), mark.at(), rules.of(mark).map(MarkRules.Rule::meaning), question.text()));
            } else {
                taken.add((Admission.Taken) verdict);
            }
        }
        questions.addAll(asked);
        List<Placed> placed = new ArrayList<>();
        for (Admission.Taken one : taken) {
            remark(object, one);
            place(object, one).ifPresent(placed::add);
        }
        placedIn.put(object.uid(), placed);
    }

    private void remark(ForeignObject object, Admission.Taken taken) {
        String at = taken.mark().at();
        if (taken.moved()) {
            remarks.add(
                    new Remark(object.uid(), at, "A point lay just outside the image and was brought to its edge."));
        }
        if (taken.mark().onOnlyImage()) {
            remarks.add(new Remark(
                    object.uid(),
                    at,
                    "The mark does not say on which image it is drawn; it was taken to be the only one that the report"
                            + " names."));
        }
        StatedNumbers.remark(
                        taken.mark(),
                        frames.geometry(taken.frame().image(), taken.frame().number()))
                .ifPresent(text -> remarks.add(new Remark(object.uid(), at, text)));
    }

    private Optional<Placed> place(ForeignObject object, Admission.Taken taken) {
        ForeignMark mark = taken.mark();
        Optional<MarkRules.Rule> rule = rules.of(mark);
        if (rule.isEmpty()) {
            return listed(object, mark, "No rule of the site knows it.");
        }
        MarkMeaning meaning = rule.get().meaning();
        if (!meaning.fits(mark.form())) {
            return listed(
                    object,
                    mark,
                    "Its rule says " + meaning.word() + ", but it is drawn as "
                            + mark.form().words() + ".");
        }
        List<PointPx> points = meaning.several()
                ? Outlines.corners(mark).stream().map(PointPx::onGrid).toList()
                : meaning.fits(Form.POINT) ? List.of(mark.points().get(0)) : mark.points();
        return Optional.of(new Placed(
                meaning,
                taken.frame(),
                points,
                mark.name(rule.get().met(mark)),
                rule.get().kind(),
                object.uid()));
    }

    private Optional<Placed> listed(ForeignObject object, ForeignMark mark, String why) {
        List<String> labels = mark.labels().stream().map(Label::text).distinct().toList();
        unmatched.add(new Unmatched(object.uid(), mark.at(), mark.form(), labels, why));
        return Optional.empty();
    }

    /** What holds after each report has replaced what its predecessors drew under the same name. */
    private List<Placed> afterSuccessors(List<ForeignObject> ordered) {
        Map<String, List<Placed>> standing = new LinkedHashMap<>();
        for (ForeignObject object : ordered) {
            List<Placed> drawn = placedIn.get(object.uid());
            if (drawn == null) {
                continue; // refused: its predecessors stand
            }
            List<Placed> now = new ArrayList<>(drawn);
            for (String predecessor : object.predecessors()) {
                List<Placed> before = standing.remove(predecessor);
                if (before != null) {
                    before.stream()
                            .filter(old -> drawn.stream().noneMatch(next -> replaces(next, old)))
                            .forEach(old -> {
                                now.add(old);
                                remarks.add(new Remark(
                                        object.uid(),
                                        "",
                                        "A " + old.meaning().word()
                                                + " of the earlier version is not in this one. It is kept: a missing mark"
                                                + " is no deletion."));
                            });
                }
            }
            standing.put(object.uid(), now);
        }
        return standing.values().stream().flatMap(List::stream).toList();
    }

    private static boolean replaces(Placed next, Placed old) {
        return next.meaning() == old.meaning()
                && next.frame().equals(old.frame())
                && (!old.meaning().several() || next.name().equals(old.name()));
    }

    private List<Placed> withoutRepeats(List<Placed> all) {
        List<Placed> once = new ArrayList<>();
        for (Placed mark : all) {
            if (once.stream().noneMatch(earlier -> same(earlier, mark))) {
                once.add(mark);
            }
        }
        return once;
    }

    private static boolean same(Placed a, Placed b) {
        if (a.meaning() != b.meaning()
                || !a.frame().equals(b.frame())
                || a.points().size() != b.points().size()) {
            return false;
        }
        for (int i = 0; i < a.points().size(); i++) {
            if (a.points().get(i).distanceTo(b.points().get(i)) > SAME_PX) {
                return false;
            }
        }
        return true;
    }

    /** Two different marks of one meaning on a frame that can hold only one: neither is taken, a person is asked. */
    private List<Placed> withoutContradictions(List<Placed> marks) {
        Map<List<Object>, List<Placed>> single = marks.stream()
                .filter(mark -> !mark.meaning().several())
                .collect(Collectors.groupingBy(
                        mark -> List.<Object>of(mark.meaning(), mark.frame()),
                        LinkedHashMap::new,
                        Collectors.toList()));
        Set<Placed> contradicted = new HashSet<>();
        single.values().stream().filter(rivals -> rivals.size() > 1).forEach(rivals -> {
            Placed first = rivals.get(0);
            contradicted.addAll(rivals);
            questions.add(new Question(
                    first.from(),
                    "",
                    Optional.of(first.meaning()),
                    "Which " + first.meaning().word() + "? " + rivals.size() + " different ones are drawn on frame "
                            + first.frame().number() + " of the image."));
        });
        return named(marks.stream().filter(mark -> !contradicted.contains(mark)).toList());
    }

    /** Hazards and nerves carry names of their own on a frame, as a case needs them. */
    private static List<Placed> named(List<Placed> marks) {
        Map<FrameKey, Map<String, Integer>> taken = new HashMap<>();
        List<Placed> named = new ArrayList<>();
        for (Placed mark : marks) {
            String name =
                    mark.name().isBlank() ? mark.meaning().word() : mark.name().strip();
            int times = mark.meaning().several()
                    ? taken.computeIfAbsent(mark.frame(), frame -> new HashMap<>())
                            .merge(name, 1, Integer::sum)
                    : 1;
            named.add(new Placed(
                    mark.meaning(),
                    mark.frame(),
                    mark.points(),
                    times > 1 ? name + " " + times : name,
                    mark.kind(),
                    mark.from()));
        }
        return named;
    }
}
