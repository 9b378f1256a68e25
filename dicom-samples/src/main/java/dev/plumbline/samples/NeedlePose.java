// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Where the needle really is. */
public sealed interface NeedlePose permits InPlaneNeedle, CrossingNeedle {
    /** The tip, or where the needle crosses the plane. */
    ScanPoint end();

    /** Its echo as the probe sees it. */
    Structure echo(Transducer transducer);

    /** The same needle this far drawn back along its way. */
    NeedlePose withdrawn(double byMm);

    /** The same needle with only this share of its visible way left in the beam. */
    NeedlePose lostFromItsFarEnd(double left);
}
