// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * One entry of the sample set.
 *
 * @param name of its files: lower case words joined by hyphens
 * @param shows one line for a reader
 */
public record Sample(String name, String shows, SampleScene scene) {}
