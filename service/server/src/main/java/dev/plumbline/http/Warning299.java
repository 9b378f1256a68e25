// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.http.Context;

/**
 * A warning beside an answer that was given all the same. Source: DICOM PS3.18 8.3.4; RFC 7234 5.5, whose code 299 is a
 * persistent warning of any other kind.
 */
final class Warning299 {
    private static final int LONGEST = 200;

    private Warning299() {}

    /** Whatever cannot stand in a quoted text of a header becomes a question mark. */
    static void add(Context ctx, String text) {
        String harmless = text.substring(0, Math.min(text.length(), LONGEST)).replaceAll("[^ !#-\\[\\]-~]", "?");
        ctx.res().addHeader("Warning", "299 plumbline \"" + harmless + "\"");
    }
}
