// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

/**
 * Which objects go with a structured report, beside the annotated frames, which are always made because every viewer shows
 * them.
 *
 * @param presentationStates the drawing as graphics over each frame used
 * @param pdf the readable record on one page
 * @param keyObjects the list of frames and documents that matter
 */
public record Companions(boolean presentationStates, boolean pdf, boolean keyObjects) {
    public static final Companions ALL = new Companions(true, true, true);
}
