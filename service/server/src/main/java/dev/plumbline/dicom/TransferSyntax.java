// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Arrays;
import java.util.Optional;

/** The encodings that are taken, with their names. Source: DICOM PS3.5, annex A. */
public enum TransferSyntax {
    IMPLICIT_LITTLE_ENDIAN("1.2.840.10008.1.2", "Implicit VR Little Endian"),
    EXPLICIT_LITTLE_ENDIAN("1.2.840.10008.1.2.1", "Explicit VR Little Endian"),
    EXPLICIT_BIG_ENDIAN("1.2.840.10008.1.2.2", "Explicit VR Big Endian"),
    JPEG_BASELINE("1.2.840.10008.1.2.4.50", "JPEG Baseline"),
    JPEG_EXTENDED("1.2.840.10008.1.2.4.51", "JPEG Extended"),
    JPEG_LOSSLESS("1.2.840.10008.1.2.4.57", "JPEG Lossless"),
    JPEG_LOSSLESS_FIRST_ORDER("1.2.840.10008.1.2.4.70", "JPEG Lossless, First-Order Prediction"),
    JPEG_LS("1.2.840.10008.1.2.4.80", "JPEG-LS Lossless"),
    JPEG_LS_NEAR_LOSSLESS("1.2.840.10008.1.2.4.81", "JPEG-LS Near-Lossless"),
    JPEG_2000_REVERSIBLE("1.2.840.10008.1.2.4.90", "JPEG 2000 Lossless Only"),
    JPEG_2000("1.2.840.10008.1.2.4.91", "JPEG 2000"),
    RLE("1.2.840.10008.1.2.5", "RLE Lossless");

    private final String uid;
    private final String title;

    TransferSyntax(String uid, String title) {
        this.uid = uid;
        this.title = title;
    }

    public static Optional<TransferSyntax> of(String uid) {
        return Arrays.stream(values()).filter(syntax -> syntax.uid.equals(uid)).findFirst();
    }

    public String uid() {
        return uid;
    }

    /** Name in the standard. */
    public String title() {
        return title;
    }

    /** Whether pixel data are in fragments rather than plain samples. */
    public boolean encapsulated() {
        return compareTo(JPEG_BASELINE) >= 0;
    }

    /** Whether a library outside Java decodes it. */
    boolean nativeCodec() {
        return switch (this) {
            case JPEG_LS, JPEG_LS_NEAR_LOSSLESS, JPEG_2000, JPEG_2000_REVERSIBLE -> true;
            default -> false;
        };
    }

    boolean bigEndian() {
        return this == EXPLICIT_BIG_ENDIAN;
    }

    boolean implicit() {
        return this == IMPLICIT_LITTLE_ENDIAN;
    }
}
