// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Optional;

/**
 * What the gate saw in a whole and well-formed file.
 *
 * @param elements attributes before the pixel data, file meta information included, private sequences counted as one each
 * @param pixels empty where the object has no pixel data
 * @param behindPixels where the attributes after the pixel data begin; the size of the file where there are none
 * @param placed where everything stands; only for small objects that can be read there
 */
record GateReport(
        TransferSyntax transferSyntax,
        String sopClassUid,
        String sopInstanceUid,
        int elements,
        Optional<PixelBytes> pixels,
        long behindPixels,
        Optional<PlacedObject> placed) {}
