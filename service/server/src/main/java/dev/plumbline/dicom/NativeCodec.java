// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;

/** Decodes one compressed frame with a library of the system. */
interface NativeCodec {
    /** Decodes one frame, or says in an IOException that it is damaged. */
    DecodedPlanes decode(byte[] frame) throws IOException;
}
