// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.MarkPx;
import dev.plumbline.geometry.PointPx;
import org.apache.commons.math3.util.Decimal64;

/** Marks that state a decision and so are no measured inputs. */
final class NominalMarks {
    private NominalMarks() {}

    static MarkPx<Decimal64> of(PointPx point) {
        return new MarkPx<>(new Decimal64(point.column()), new Decimal64(point.row()));
    }
}
