// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import dev.plumbline.geometry.Readings;

/** How one observation differs from the plan. A difference is not by itself a fault. */
public record Deviation(String id, Readings<DeviationQuantity> readings) {}
