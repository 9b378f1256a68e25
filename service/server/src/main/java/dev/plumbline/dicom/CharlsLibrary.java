// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.LongByReference;

/** The decoder half of CharLS, the JPEG-LS library of Debian package libcharls2; names are the library's own. */
interface CharlsLibrary extends Library {
    String FILE = "libcharls.so.2";

    Pointer charls_jpegls_decoder_create();

    void charls_jpegls_decoder_destroy(Pointer decoder);

    int charls_jpegls_decoder_set_source_buffer(Pointer decoder, Memory source, long size);

    int charls_jpegls_decoder_read_header(Pointer decoder);

    /** Gives width, height, bits per sample and components: four 32-bit numbers. */
    int charls_jpegls_decoder_get_frame_info(Pointer decoder, Memory info);

    /** 0: planes one after the other; else samples of a pixel together. */
    int charls_jpegls_decoder_get_interleave_mode(Pointer decoder, IntByReference mode);

    int charls_jpegls_decoder_get_destination_size(Pointer decoder, int stride, LongByReference size);

    int charls_jpegls_decoder_decode_to_buffer(Pointer decoder, Memory destination, long size, int stride);
}
