// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * A mark with its place in the case document, so that a refusal can name it.
 *
 * @param pointer RFC 6901
 */
public record NamedMark(String pointer, PointPx at) {}
