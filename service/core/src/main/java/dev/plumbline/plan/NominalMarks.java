// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.MarkPx;
import dev.plumbline.geometry.PointPx;

/** Marks that state a decision and so are no measured inputs. */
final class NominalMarks {
    private NominalMarks() {}

    static MarkPx<Gradient> of(PointPx point) {
        return new MarkPx<>(Gradient.constant(point.column()), Gradient.constant(point.row()));
    }
}
