// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.sun.jna.Callback;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.PointerByReference;
import org.jspecify.annotations.Nullable;

/** The decoder half of OpenJPEG, the JPEG 2000 library of Debian package libopenjp2-7; names are the library's own. */
interface OpenJpegLibrary extends Library {
    String FILE = "libopenjp2.so.7";
    int CODEC_J2K = 0;
    int CODEC_JP2 = 2;

    Pointer opj_create_decompress(int codec);

    void opj_destroy_codec(Pointer codec);

    void opj_set_default_decoder_parameters(Memory parameters);

    int opj_setup_decoder(Pointer codec, Memory parameters);

    /** Makes a stream; input 1 is for reading. */
    Pointer opj_stream_create(long bufferSize, int input);

    void opj_stream_destroy(Pointer stream);

    void opj_stream_set_read_function(Pointer stream, Read function);

    void opj_stream_set_skip_function(Pointer stream, Skip function);

    void opj_stream_set_seek_function(Pointer stream, Seek function);

    void opj_stream_set_user_data(Pointer stream, @Nullable Pointer data, @Nullable Pointer free);

    void opj_stream_set_user_data_length(Pointer stream, long length);

    int opj_read_header(Pointer stream, Pointer codec, PointerByReference image);

    int opj_decode(Pointer codec, Pointer stream, Pointer image);

    int opj_end_decompress(Pointer codec, Pointer stream);

    void opj_image_destroy(Pointer image);

    /** Fills the buffer; -1 at the end. */
    interface Read extends Callback {
        long invoke(Pointer buffer, long count, @Nullable Pointer data);
    }

    /** Steps over bytes; -1 at the end. */
    interface Skip extends Callback {
        long invoke(long count, @Nullable Pointer data);
    }

    /** Goes to a place; 1 if it exists. */
    interface Seek extends Callback {
        int invoke(long position, @Nullable Pointer data);
    }
}
