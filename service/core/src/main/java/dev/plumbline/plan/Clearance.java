// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Reading;

/**
 * Distance between the path and a marked structure.
 *
 * @param path of the part entry to target, mm (a hazard's includes the overshoot)
 * @param overshoot of the extension beyond the target alone, mm
 * @param marginLimitedByTarget the target itself lies nearer than the margin, so less was asked
 */
public record Clearance(String name, Reading path, Reading overshoot, boolean marginLimitedByTarget) {}
