// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.LongByReference;
import java.io.IOException;

/** JPEG-LS, ISO/IEC 14495-1, by CharLS. */
final class JpegLsCodec implements NativeCodec {
    private static final int FRAME_INFO_BYTES = 16;

    @Override
    public DecodedPlanes decode(byte[] frame) throws IOException {
        CharlsLibrary charls = NativeLibrary.CHARLS.functions();
        Pointer decoder = charls.charls_jpegls_decoder_create();
        if (decoder == null) {
            throw new IOException("CharLS has no memory for a decoder.");
        }
        try (Memory source = new Memory(frame.length)) {
            source.write(0, frame, 0, frame.length);
            check(charls.charls_jpegls_decoder_set_source_buffer(decoder, source, frame.length));
            check(charls.charls_jpegls_decoder_read_header(decoder));
            return planes(charls, decoder);
        } finally {
            charls.charls_jpegls_decoder_destroy(decoder);
        }
    }

    private static DecodedPlanes planes(CharlsLibrary charls, Pointer decoder) throws IOException {
        LongByReference size = new LongByReference();
        IntByReference interleave = new IntByReference();
        try (Memory info = new Memory(FRAME_INFO_BYTES)) {
            check(charls.charls_jpegls_decoder_get_frame_info(decoder, info));
            int[] frame = info.getIntArray(0, 4);
            check(charls.charls_jpegls_decoder_get_interleave_mode(decoder, interleave));
            check(charls.charls_jpegls_decoder_get_destination_size(decoder, 0, size));
            int bytesPerSample = frame[2] <= 8 ? 1 : 2;
            long expected = (long) frame[0] * frame[1] * frame[3] * bytesPerSample;
            boolean absurd = frame[0] > PixelShape.MAX_SIDE || frame[1] > PixelShape.MAX_SIDE || frame[3] > 4;
            if (absurd || size.getValue() != expected || expected > Integer.MAX_VALUE - 8) {
                throw new IOException("The image is too large.");
            }
            try (Memory destination = new Memory(expected)) {
                check(charls.charls_jpegls_decoder_decode_to_buffer(decoder, destination, expected, 0));
                byte[] bytes = destination.getByteArray(0, (int) expected);
                return new DecodedPlanes(frame[0], frame[1], frame[2], split(bytes, frame, interleave.getValue() == 0));
            }
        }
    }

    private static int[][] split(byte[] bytes, int[] frame, boolean planar) {
        int pixels = frame[0] * frame[1];
        int components = frame[3];
        int[][] planes = new int[components][pixels];
        for (int component = 0; component < components; component++) {
            for (int pixel = 0; pixel < pixels; pixel++) {
                int cell = planar ? component * pixels + pixel : pixel * components + component;
                planes[component][pixel] = frame[2] <= 8
                        ? bytes[cell] & 0xff
                        : (bytes[2 * cell] & 0xff) | (bytes[2 * cell + 1] & 0xff) << 8; // the machine's little endian
            }
        }
        return planes;
    }

    private static void check(int result) throws IOException {
        if (result != 0) {
            throw new IOException("CharLS refuses the image with code " + result + ".");
        }
    }
}
