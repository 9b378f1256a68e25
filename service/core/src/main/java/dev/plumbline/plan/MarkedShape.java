// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.MarkPx;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * A disc or outline whose marked points become inputs of the case only when a result depends on them, each once: most of an
 * outline is never the nearest part of it.
 */
final class MarkedShape<T extends RealFieldElement<T>> {
    private final String name;
    private final List<PointPx> points;
    private final double radiusMm;
    private final CaseInputs<T> inputs;
    private final List<Optional<MarkPx<T>>> marks = new ArrayList<>();

    MarkedShape(String name, Shape shape, CaseInputs<T> inputs) {
        this.name = name;
        this.inputs = inputs;
        if (shape instanceof Shape.Disc disc) {
            points = List.of(disc.center());
            radiusMm = disc.radiusMm();
        } else {
            points = ((Shape.Outline) shape).points();
            radiusMm = 0;
        }
        points.forEach(point -> marks.add(Optional.empty()));
    }

    String name() {
        return name;
    }

    /** As marked. */
    List<PointPx> points() {
        return points;
    }

    double radiusMm() {
        return radiusMm;
    }

    MarkPx<T> mark(int index) {
        MarkPx<T> mark = marks.get(index).orElseGet(() -> inputs.mark(points.get(index)));
        marks.set(index, Optional.of(mark));
        return mark;
    }
}
