// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import org.apache.commons.math3.RealFieldElement;

/**
 * The frame of reference in which paths are computed: origin on the skin line, u along it towards the needle's side, w
 * into the tissue; millimetres.
 *
 * @param origin on the display's axes
 * @param along unit vector of u on the display's axes
 * @param into unit vector of w on the display's axes
 */
public record ProbeFrame<T extends RealFieldElement<T>>(
        Scale<T> scale, PointMm<T> origin, PointMm<T> along, PointMm<T> into) {
    /**
     * On a skin line, with the origin at the foot of a point.
     *
     * @param skin on the display's axes, not upright
     * @param anchor on the display's axes; usually the midpoint of the transducer face
     */
    public static <T extends RealFieldElement<T>> ProbeFrame<T> on(
            StraightLine<T> skin, PointMm<T> anchor, Scale<T> scale, Orientation orientation) {
        boolean rightwards = skin.direction().x().getReal() > 0;
        PointMm<T> right = rightwards ? skin.direction() : skin.direction().opposite();
        PointMm<T> down = right.turned();
        return new ProbeFrame<>(
                scale,
                skin.through().plus(skin.direction(), skin.position(anchor)),
                orientation.needleSide() == Side.RIGHT ? right : right.opposite(),
                orientation.inverted() ? down.opposite() : down);
    }

    public PointMm<T> of(MarkPx<T> mark) {
        return ofDisplay(scale.onDisplay(mark));
    }

    public PointMm<T> ofDisplay(PointMm<T> display) {
        PointMm<T> fromOrigin = display.minus(origin);
        return new PointMm<>(fromOrigin.along(along), fromOrigin.along(into));
    }

    public PointMm<T> toDisplay(PointMm<T> point) {
        return new PointMm<>(acrossDisplay(point), downDisplay(point));
    }

    /** The x alone of a point on the display's axes. */
    public T acrossDisplay(PointMm<T> point) {
        return origin.x().add(along.x().multiply(point.x())).add(into.x().multiply(point.y()));
    }

    /** The y alone of a point on the display's axes. */
    public T downDisplay(PointMm<T> point) {
        return origin.y().add(along.y().multiply(point.x())).add(into.y().multiply(point.y()));
    }

    /** In pixels at the nominal values; may lie outside the image. */
    public PointPx toPixel(PointMm<T> point) {
        double u = point.x().getReal();
        double w = point.y().getReal();
        double x = origin.x().getReal() + along.x().getReal() * u + into.x().getReal() * w;
        double y = origin.y().getReal() + along.y().getReal() * u + into.y().getReal() * w;
        return new PointPx(
                x / scale.mmPerColumn().getReal(), y / scale.mmPerRow().getReal());
    }
}
