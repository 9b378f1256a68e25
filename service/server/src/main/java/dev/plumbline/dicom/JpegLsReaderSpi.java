// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** JPEG-LS for ImageIO; public because ImageIO makes it. */
public final class JpegLsReaderSpi extends NativeImageReaderSpi {
    public JpegLsReaderSpi() {
        super("jpeg-ls", new JpegLsCodec());
    }

    @Override
    public String getDescription(@Nullable Locale locale) {
        return "JPEG-LS by CharLS";
    }
}
