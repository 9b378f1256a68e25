// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Locale;
import javax.imageio.ImageReader;
import javax.imageio.spi.ImageReaderSpi;
import javax.imageio.stream.ImageInputStream;
import org.jspecify.annotations.Nullable;

/**
 * Makes a native codec known to ImageIO under the format name by which the toolkit asks for it. It never claims a stream
 * by looking at it, so that it changes nothing for others.
 */
abstract class NativeImageReaderSpi extends ImageReaderSpi {
    private final NativeCodec codec;

    NativeImageReaderSpi(String format, NativeCodec codec) {
        super(
                "Plumbline",
                "0.1",
                new String[] {format, format.toLowerCase(Locale.ROOT), format.toUpperCase(Locale.ROOT)},
                null,
                null,
                NativeImageReader.class.getName(),
                new Class<?>[] {ImageInputStream.class},
                null,
                false,
                null,
                null,
                null,
                null,
                false,
                null,
                null,
                null,
                null);
        this.codec = codec;
    }

    @Override
    public boolean canDecodeInput(Object source) {
        return false;
    }

    @Override
    public ImageReader createReaderInstance(@Nullable Object extension) {
        return new NativeImageReader(this, codec);
    }
}
