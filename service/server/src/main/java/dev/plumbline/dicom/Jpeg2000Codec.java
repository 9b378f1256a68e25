// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.PointerByReference;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** JPEG 2000, ISO/IEC 15444-1, by OpenJPEG. */
final class Jpeg2000Codec implements NativeCodec {
    /** More than {@code opj_dparameters_t} takes in any version; it is only passed from function to function. */
    private static final int PARAMETERS_BYTES = 1 << 15;

    private static final long STREAM_BUFFER = 1 << 16;

    @Override
    public DecodedPlanes decode(byte[] frame) throws IOException {
        OpenJpegLibrary openJpeg = NativeLibrary.OPENJPEG.functions();
        int kind = Jpeg2000Boxes.areIn(frame) ? OpenJpegLibrary.CODEC_JP2 : OpenJpegLibrary.CODEC_J2K;
        Pointer codec = openJpeg.opj_create_decompress(kind);
        Pointer stream = openJpeg.opj_stream_create(STREAM_BUFFER, 1);
        Source source = new Source(frame);
        try (Memory parameters = new Memory(PARAMETERS_BYTES)) {
            openJpeg.opj_set_default_decoder_parameters(parameters);
            check(openJpeg.opj_setup_decoder(codec, parameters));
            source.feed(openJpeg, stream);
            return decode(openJpeg, codec, stream);
        } finally {
            openJpeg.opj_stream_destroy(stream);
            openJpeg.opj_destroy_codec(codec);
        }
    }

    private static DecodedPlanes decode(OpenJpegLibrary openJpeg, Pointer codec, Pointer stream) throws IOException {
        PointerByReference reference = new PointerByReference();
        check(openJpeg.opj_read_header(stream, codec, reference));
        Pointer image = reference.getValue();
        try {
            OpenJpegImage header = new OpenJpegImage(image);
            header.check();
            check(openJpeg.opj_decode(codec, stream, image));
            check(openJpeg.opj_end_decompress(codec, stream));
            return header.planes();
        } finally {
            openJpeg.opj_image_destroy(image);
        }
    }

    private static void check(int success) throws IOException {
        if (success != 1) {
            throw new IOException("OpenJPEG refuses the image.");
        }
    }

    /** The frame as a stream for the library; held by the caller for as long as the library may call back. */
    private static final class Source {
        private final byte[] bytes;
        private long position;
        private final OpenJpegLibrary.Read read = this::read;
        private final OpenJpegLibrary.Skip skip = this::skip;
        private final OpenJpegLibrary.Seek seek = this::seek;

        Source(byte[] bytes) {
            this.bytes = bytes;
        }

        void feed(OpenJpegLibrary openJpeg, Pointer stream) {
            openJpeg.opj_stream_set_read_function(stream, read);
            openJpeg.opj_stream_set_skip_function(stream, skip);
            openJpeg.opj_stream_set_seek_function(stream, seek);
            openJpeg.opj_stream_set_user_data(stream, null, null);
            openJpeg.opj_stream_set_user_data_length(stream, bytes.length);
        }

        private long read(Pointer buffer, long count, @Nullable Pointer data) {
            int length = (int) Math.min(count, bytes.length - position);
            if (length <= 0) {
                return -1;
            }
            buffer.write(0, bytes, (int) position, length);
            position += length;
            return length;
        }

        private long skip(long count, @Nullable Pointer data) {
            if (count > bytes.length - position || count < 0) {
                return -1;
            }
            position += count;
            return count;
        }

        private int seek(long to, @Nullable Pointer data) {
            if (to < 0 || to > bytes.length) {
                return 0;
            }
            position = to;
            return 1;
        }
    }
}
