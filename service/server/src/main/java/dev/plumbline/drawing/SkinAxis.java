// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.SkinCourse;
import java.util.ArrayList;
import java.util.List;

/**
 * The skin line under the probe on a frame: {@code u} millimetres along it towards the needle's side, {@code w}
 * millimetres into the patient. The core's probe frame as plain numbers, with the skin beside the face.
 *
 * @param origin the probe's midpoint on the skin line, or where nothing says where that is, the foot of the target
 * @param along unit vector of u in millimetres on the image's axes
 * @param into unit vector of w
 * @param halfFaceMm from the origin to the end of the transducer's face; 0 where that is not known
 */
record SkinAxis(PixelSize pixel, PointPx origin, Xy along, Xy into, double halfFaceMm, Course course) {

    private static final int PIECES = 40;
    private static final double LEVEL_MM = 0.05;

    /** How the skin runs beside the face; assumed to be flat where nobody stated a shape. */
    record Course(SkinCourse skin, boolean flat) {}

    static SkinAxis of(ProbeFrame<Gradient> frame, PixelSize pixel, double halfFaceMm, Course course) {
        return new SkinAxis(
                pixel,
                frame.scale().toPixel(frame.origin()),
                new Xy(frame.along().x().getReal(), frame.along().y().getReal()),
                new Xy(frame.into().x().getReal(), frame.into().y().getReal()),
                halfFaceMm,
                course);
    }

    PointPx at(double u, double w) {
        return new PointPx(
                origin.column() + (u * along.x() + w * into.x()) / pixel.mmPerColumn(),
                origin.row() + (u * along.y() + w * into.y()) / pixel.mmPerRow());
    }

    double u(PointPx point) {
        return dx(point) * along.x() + dy(point) * along.y();
    }

    double w(PointPx point) {
        return dx(point) * into.x() + dy(point) * into.y();
    }

    /** Where u meets the skin as it is taken to run; beyond the end of a round limb at that end. */
    PointPx skin(double u) {
        double end = course.skin().end();
        double held = Math.max(-end, Math.min(end, u));
        return at(held, course.skin().depthAt(Gradient.constant(held)).getReal());
    }

    /**
     * Where the drawn skin beyond the probe begins: at the face's end where it lies level with the face there, else under
     * the middle of the face, from where a round limb falls away without a step.
     */
    double leavesFaceAt(double faceEndMm) {
        boolean level = Math.abs(w(skin(faceEndMm))) < LEVEL_MM;
        return level ? faceEndMm : 0;
    }

    /** The skin from one u to another. */
    List<PointPx> skin(double from, double to) {
        int pieces = course.flat() ? 1 : PIECES;
        List<PointPx> points = new ArrayList<>();
        for (int step = 0; step <= pieces; step++) {
            points.add(skin(from + (to - from) * step / pieces));
        }
        return points;
    }

    private double dx(PointPx point) {
        return (point.column() - origin.column()) * pixel.mmPerColumn();
    }

    private double dy(PointPx point) {
        return (point.row() - origin.row()) * pixel.mmPerRow();
    }
}
