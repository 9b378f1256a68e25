// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * A place in the image plane in millimetres, seen from the middle of the transducer face.
 *
 * @param acrossMm along the face, positive towards the right of the image
 * @param depthMm away from the face, measured from its middle
 */
public record ScanPoint(double acrossMm, double depthMm) {
    ScanPoint plus(double across, double depth) {
        return new ScanPoint(acrossMm + across, depthMm + depth);
    }

    double distanceTo(ScanPoint other) {
        double across = acrossMm - other.acrossMm;
        double depth = depthMm - other.depthMm;
        return Math.sqrt(across * across + depth * depth);
    }
}
