// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What a content item says, by value type, DICOM PS3.3 C.17.3.2.1. */
sealed interface ItemValue {
    /** The defined term of the value type. */
    String valueType();

    /**
     * CONTAINER: a heading.
     *
     * @param template where the item starts one
     */
    record Container(Optional<Template> template) implements ItemValue {
        @Override
        public String valueType() {
            return "CONTAINER";
        }
    }

    /** A template by mapping resource and identifier. */
    record Template(String resource, String identifier) {}

    record Text(String text) implements ItemValue {
        @Override
        public String valueType() {
            return "TEXT";
        }
    }

    record Coded(Code code) implements ItemValue {
        @Override
        public String valueType() {
            return "CODE";
        }
    }

    /**
     * NUM: a number, or a qualifier that says why there is none.
     *
     * @param qualifier CID 42
     */
    record Numeric(Optional<Measured> measured, Optional<Code> qualifier) implements ItemValue {
        @Override
        public String valueType() {
            return "NUM";
        }
    }

    /**
     * A number with its unit.
     *
     * @param exact where the decimal text does not hold the number exactly
     */
    record Measured(String decimal, Optional<Double> exact, Code unit) {
        /** The number in the unit: the exact one if it is there. */
        double value() {
            return exact.orElseGet(() -> Double.valueOf(decimal));
        }
    }

    record Person(String name) implements ItemValue {
        @Override
        public String valueType() {
            return "PNAME";
        }
    }

    record Uid(String uid) implements ItemValue {
        @Override
        public String valueType() {
            return "UIDREF";
        }
    }

    /** DATE, TIME or DATETIME as it stands. */
    record Moment(String valueType, String text) implements ItemValue {}

    /** SCOORD: points in pixels of the image under it, corner origin. */
    record Coordinates(GraphicType type, List<PointPx> points) implements ItemValue {
        public Coordinates {
            points = List.copyOf(points);
        }

        @Override
        public String valueType() {
            return "SCOORD";
        }
    }

    enum GraphicType {
        POINT,
        MULTIPOINT,
        POLYLINE,
        CIRCLE,
        ELLIPSE
    }

    /** IMAGE. */
    record Image(Instance instance) implements ItemValue {
        @Override
        public String valueType() {
            return "IMAGE";
        }
    }

    /** COMPOSITE: an object that is no image. */
    record Composite(Instance instance) implements ItemValue {
        @Override
        public String valueType() {
            return "COMPOSITE";
        }
    }

    /**
     * A reference to an object, or to one frame of it.
     *
     * @param frameNumber from 1; only where the object has frames
     */
    record Instance(String sopClassUid, String sopInstanceUid, OptionalInt frameNumber) {}

    /** A value type that our templates do not use, or one that cannot be read; the check names it. */
    record Unreadable(String valueType, String why) implements ItemValue {}
}
