// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Refusal;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/** Transfer syntaxes that are known and not taken, by their names in DICOM PS3.6, A; {@code docs/conformance.md} lists them. */
final class RefusedSyntax {
    /** What every such refusal begins with. */
    static final String SUBJECT = "The transfer syntax ";

    private static final String CONVERT =
            "Send it as Explicit VR Little Endian (1.2.840.10008.1.2.1) or another syntax of the conformance statement.";
    private static final String EXPORT =
            "Export the cine as a multi-frame object in Explicit VR Little Endian (1.2.840.10008.1.2.1) or JPEG Baseline.";
    private static final Map<String, String> NAMES = names();

    private RefusedSyntax() {}

    /** UID and name, in the order of the UIDs. */
    static Map<String, String> all() {
        return NAMES;
    }

    static Refusal refusal(String uid) {
        String name = NAMES.get(uid);
        if (name == null) {
            return Fault.unsupported(SUBJECT + uid + " is not taken", CONVERT);
        }
        boolean video = name.startsWith("MPEG") || name.startsWith("HEVC") || name.startsWith("SMPTE");
        return Fault.unsupported(SUBJECT + name + " (" + uid + ") is not taken", video ? EXPORT : CONVERT);
    }

    private static Map<String, String> names() {
        Map<String, String> names = new TreeMap<>();
        String standard = "1.2.840.10008.1.2.";
        names.put(standard + "1.98", "Encapsulated Uncompressed Explicit VR Little Endian");
        names.put(standard + "1.99", "Deflated Explicit VR Little Endian");
        names.put(standard + "4.52", "JPEG Extended (Process 3 & 5)");
        names.put(standard + "4.53", "JPEG Spectral Selection, Non-Hierarchical (Process 6 & 8)");
        names.put(standard + "4.54", "JPEG Spectral Selection, Non-Hierarchical (Process 7 & 9)");
        names.put(standard + "4.55", "JPEG Full Progression, Non-Hierarchical (Process 10 & 12)");
        names.put(standard + "4.56", "JPEG Full Progression, Non-Hierarchical (Process 11 & 13)");
        names.put(standard + "4.58", "JPEG Lossless, Non-Hierarchical (Process 15)");
        names.put(standard + "4.59", "JPEG Extended, Hierarchical (Process 16 & 18)");
        names.put(standard + "4.60", "JPEG Extended, Hierarchical (Process 17 & 19)");
        names.put(standard + "4.61", "JPEG Spectral Selection, Hierarchical (Process 20 & 22)");
        names.put(standard + "4.62", "JPEG Spectral Selection, Hierarchical (Process 21 & 23)");
        names.put(standard + "4.63", "JPEG Full Progression, Hierarchical (Process 24 & 26)");
        names.put(standard + "4.64", "JPEG Full Progression, Hierarchical (Process 25 & 27)");
        names.put(standard + "4.65", "JPEG Lossless, Hierarchical (Process 28)");
        names.put(standard + "4.66", "JPEG Lossless, Hierarchical (Process 29)");
        names.put(standard + "4.92", "JPEG 2000 Part 2 Multi-component (Lossless Only)");
        names.put(standard + "4.93", "JPEG 2000 Part 2 Multi-component");
        names.put(standard + "4.94", "JPIP Referenced");
        names.put(standard + "4.95", "JPIP Referenced Deflate");
        names.put(standard + "4.100", "MPEG2 Main Profile / Main Level");
        names.put(standard + "4.100.1", "MPEG2 Main Profile / Main Level, fragmentable");
        names.put(standard + "4.101", "MPEG2 Main Profile / High Level");
        names.put(standard + "4.101.1", "MPEG2 Main Profile / High Level, fragmentable");
        names.put(standard + "4.102", "MPEG-4 AVC/H.264 High Profile / Level 4.1");
        names.put(standard + "4.102.1", "MPEG-4 AVC/H.264 High Profile / Level 4.1, fragmentable");
        names.put(standard + "4.103", "MPEG-4 AVC/H.264 BD-compatible High Profile / Level 4.1");
        names.put(standard + "4.103.1", "MPEG-4 AVC/H.264 BD-compatible High Profile / Level 4.1, fragmentable");
        names.put(standard + "4.104", "MPEG-4 AVC/H.264 High Profile / Level 4.2 for 2D Video");
        names.put(standard + "4.104.1", "MPEG-4 AVC/H.264 High Profile / Level 4.2 for 2D Video, fragmentable");
        names.put(standard + "4.105", "MPEG-4 AVC/H.264 High Profile / Level 4.2 for 3D Video");
        names.put(standard + "4.105.1", "MPEG-4 AVC/H.264 High Profile / Level 4.2 for 3D Video, fragmentable");
        names.put(standard + "4.106", "MPEG-4 AVC/H.264 Stereo High Profile / Level 4.2");
        names.put(standard + "4.106.1", "MPEG-4 AVC/H.264 Stereo High Profile / Level 4.2, fragmentable");
        names.put(standard + "4.107", "HEVC/H.265 Main Profile / Level 5.1");
        names.put(standard + "4.108", "HEVC/H.265 Main 10 Profile / Level 5.1");
        names.put(standard + "4.110", "JPEG XL Lossless");
        names.put(standard + "4.111", "JPEG XL JPEG Recompression");
        names.put(standard + "4.112", "JPEG XL");
        names.put(standard + "4.201", "High-Throughput JPEG 2000 (Lossless Only)");
        names.put(standard + "4.202", "High-Throughput JPEG 2000 with RPCL Options (Lossless Only)");
        names.put(standard + "4.203", "High-Throughput JPEG 2000");
        names.put(standard + "4.204", "JPIP HTJ2K Referenced");
        names.put(standard + "4.205", "JPIP HTJ2K Referenced Deflate");
        names.put(standard + "6.1", "RFC 2557 MIME encapsulation");
        names.put(standard + "6.2", "XML Encoding");
        names.put(standard + "7.1", "SMPTE ST 2110-20 Uncompressed Progressive Active Video");
        names.put(standard + "7.2", "SMPTE ST 2110-20 Uncompressed Interlaced Active Video");
        names.put(standard + "7.3", "SMPTE ST 2110-30 PCM Digital Audio");
        names.put(standard + "8.1", "Deflated Image Frame Compression");
        return Collections.unmodifiableMap(names);
    }
}
