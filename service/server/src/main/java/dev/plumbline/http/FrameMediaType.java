// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.TransferSyntax;

/** Media types of compressed frames. Source: DICOM PS3.18 table 8.7.3-5. */
final class FrameMediaType {
    private FrameMediaType() {}

    static String of(TransferSyntax syntax) {
        return switch (syntax) {
            case JPEG_BASELINE, JPEG_EXTENDED, JPEG_LOSSLESS, JPEG_LOSSLESS_FIRST_ORDER -> "image/jpeg";
            case JPEG_LS, JPEG_LS_NEAR_LOSSLESS -> "image/jls";
            case JPEG_2000_REVERSIBLE, JPEG_2000 -> "image/jp2";
            case RLE -> "image/dicom-rle";
            case IMPLICIT_LITTLE_ENDIAN, EXPLICIT_LITTLE_ENDIAN, EXPLICIT_BIG_ENDIAN -> "application/octet-stream";
        };
    }
}
