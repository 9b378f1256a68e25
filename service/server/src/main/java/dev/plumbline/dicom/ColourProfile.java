// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The sRGB profile as an input profile, which a colour presentation state needs (DICOM PS3.3 C.11.15.1.1); the platform's
 * own is one of a display.
 */
final class ColourProfile {
    static final String INPUT = "scnr";
    private static final int CLASS_AT = 12;
    private static final int IDENTIFIER_AT = 84;
    private static final int IDENTIFIER_LENGTH = 16;

    private ColourProfile() {}

    static byte[] sRgb() {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        byte[] input = Arrays.copyOf(profile, profile.length + profile.length % 2);
        System.arraycopy(INPUT.getBytes(StandardCharsets.US_ASCII), 0, input, CLASS_AT, INPUT.length());
        // a checksum of the bytes as they were; zero says that none was made (ICC.1, 7.2.18)
        Arrays.fill(input, IDENTIFIER_AT, IDENTIFIER_AT + IDENTIFIER_LENGTH, (byte) 0);
        return input;
    }

    /** The class that a profile states; empty where it is too short to state one. */
    static String deviceClass(byte[] profile) {
        return profile.length < CLASS_AT + INPUT.length()
                ? ""
                : new String(profile, CLASS_AT, INPUT.length(), StandardCharsets.US_ASCII);
    }
}
