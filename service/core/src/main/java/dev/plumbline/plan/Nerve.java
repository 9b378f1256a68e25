// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Shape;

/** A nerve as a person outlined it: the path goes beside it, never through. */
public record Nerve(String name, Shape shape) {}
