// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Refusal;
import java.util.Map;
import java.util.Set;

/** Which SOP classes can be frames. Source: DICOM PS3.4, B.5 (current) and PS3.6, annex A (retired). */
final class FrameClass {
    static final String US_IMAGE = "1.2.840.10008.5.1.4.1.1.6.1";
    static final String US_IMAGE_RETIRED = "1.2.840.10008.5.1.4.1.1.6";
    static final String US_MULTIFRAME = "1.2.840.10008.5.1.4.1.1.3.1";
    static final String US_MULTIFRAME_RETIRED = "1.2.840.10008.5.1.4.1.1.3";
    static final String SECONDARY_CAPTURE = "1.2.840.10008.5.1.4.1.1.7";
    static final String SECONDARY_CAPTURE_GREY_BYTE = "1.2.840.10008.5.1.4.1.1.7.2";
    static final String SECONDARY_CAPTURE_TRUE_COLOUR = "1.2.840.10008.5.1.4.1.1.7.4";
    private static final Set<String> TAKEN = Set.of(
            US_IMAGE,
            US_IMAGE_RETIRED,
            US_MULTIFRAME,
            US_MULTIFRAME_RETIRED,
            SECONDARY_CAPTURE,
            SECONDARY_CAPTURE_GREY_BYTE,
            SECONDARY_CAPTURE_TRUE_COLOUR);
    private static final Map<String, String> REFUSED = Map.of(
            "1.2.840.10008.5.1.4.1.1.6.2", "an Enhanced US Volume",
            "1.2.840.10008.5.1.4.1.1.6.3", "a Photoacoustic Image",
            "1.2.840.10008.5.1.4.1.1.7.1", "a Multi-frame Single Bit Secondary Capture Image",
            "1.2.840.10008.5.1.4.1.1.7.3", "a Multi-frame Grayscale Word Secondary Capture Image");

    private FrameClass() {}

    static boolean takes(String sopClassUid) {
        return TAKEN.contains(sopClassUid);
    }

    static Refusal refusal(String sopClassUid) {
        String name = REFUSED.getOrDefault(sopClassUid, "no ultrasound frame");
        return Fault.unsupported(
                "The object is " + name + " (SOP class " + sopClassUid + ")",
                "Send an Ultrasound Image, an Ultrasound Multi-frame Image or a Secondary Capture of the screen.");
    }
}
