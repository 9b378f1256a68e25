// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** JPEG 2000 for ImageIO; public because ImageIO makes it. */
public final class Jpeg2000ReaderSpi extends NativeImageReaderSpi {
    public Jpeg2000ReaderSpi() {
        super("JPEG2000", new Jpeg2000Codec());
    }

    @Override
    public String getDescription(@Nullable Locale locale) {
        return "JPEG 2000 by OpenJPEG";
    }
}
