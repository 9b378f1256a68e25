// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import java.util.List;
import java.util.Optional;

/**
 * What a group draws: the thin numbers that viewers show, each with the rich twin that says what it is, where no other
 * rich number of the group says so already.
 *
 * @param calibration of the frame drawn on; needed only where a path is cut at the image's border
 * @param twins whether this group has rich numbers
 */
record GroupDrawing(FrameMarks marks, MeasurementGroup group, Optional<Calibration> calibration, boolean twins) {
    /** A marked point with its depth; without one its distance from the image's top edge. */
    void point(Code name, PointPx at, Quantity depth, Reading reading) {
        marks.point(name, at);
        if (reading instanceof Reading.Seen seen) {
            thin(depth.concept(), DecimalText.measured(seen.value(), depth.unit()), name);
        } else {
            row(name, at);
        }
    }

    /** A marked point that has no depth of its own: how far it lies below the image's top edge, in pixels. */
    void row(Code name, PointPx at) {
        marks.point(name, at);
        twinned(Quantity.of("Q-ROW"), at.row(), name);
    }

    /** A path with its length; where a part of it is cut off, the length of what is drawn, as a mere distance. */
    void path(DrawnPath path, Reading length) {
        marks.line(Concepts.PATH, path.points());
        if (path.whole() && length instanceof Reading.Seen seen) {
            Quantity whole = Quantity.of("Q-PATH");
            thin(whole.concept(), DecimalText.measured(seen.value(), whole.unit()), Concepts.PATH);
        } else {
            calibration.ifPresent(c -> twinned(Quantity.of("Q-PATHSHOWN"), path.lengthMm(c.pixel()), Concepts.PATH));
        }
    }

    /** The seen part of a shaft, as a mere distance, so that nobody takes it for the needle's length. */
    void shaft(List<PointPx> skinEndFirst, Reading seenLength) {
        marks.line(Concepts.PATH, skinEndFirst);
        Quantity seen = Quantity.of("Q-SEENLEN");
        if (seenLength instanceof Reading.Seen length) {
            thin(seen.concept(), DecimalText.measured(length.value(), seen.unit()), Concepts.PATH);
        } else {
            twinned(Quantity.of("Q-ROW"), skinEndFirst.get(0).row(), Concepts.PATH);
        }
    }

    private void twinned(Quantity quantity, double value, Code drawn) {
        thin(quantity.concept(), DecimalText.measured(value, quantity.unit()), drawn);
        if (twins) {
            group.rich(Measurement.drawn(quantity, value, marks.items(List.of(drawn))));
        }
    }

    private void thin(Code concept, Measured value, Code drawn) {
        group.thin(Measurement.thin(concept, value, marks.item(drawn)));
    }
}
