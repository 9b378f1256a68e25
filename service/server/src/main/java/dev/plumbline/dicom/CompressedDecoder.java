// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.CompressedFrameDecoder;
import com.pixelmed.dicom.DicomException;
import dev.plumbline.problem.Refusal;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;

/** Compressed frames, through the toolkit and the image readers it finds. */
final class CompressedDecoder {
    private static final int RLE_HEADER = 64;
    private static final int RLE_SEGMENTS = 15;
    private static final String NATIVE = "Send it as Explicit VR Little Endian (1.2.840.10008.1.2.1).";

    private final TransferSyntax syntax;
    private final ImageDescription description;
    private final PixelShape shape;

    CompressedDecoder(TransferSyntax syntax, ImageDescription description) {
        this.syntax = syntax;
        this.description = description;
        this.shape = description.shape();
    }

    Samples decode(byte[] frame) {
        checkLibrary();
        if (syntax == TransferSyntax.RLE) {
            checkRle(frame);
        } else {
            checkCodestream(frame);
        }
        Raster raster = decoded(frame).getRaster();
        if (raster.getWidth() != shape.columns()
                || raster.getHeight() != shape.rows()
                || raster.getNumBands() != shape.samples()) {
            throw damaged("does not decode to the stated size");
        }
        return new Samples(shape, RasterCells.of(raster), converts());
    }

    private BufferedImage decoded(byte[] frame) {
        try {
            CompressedFrameDecoder decoder = new CompressedFrameDecoder(
                    syntax.uid(),
                    shape.bitsAllocated() / 8,
                    shape.columns(),
                    shape.rows(),
                    shape.samples(),
                    ColorSpace.getInstance(ColorSpace.CS_sRGB),
                    shape.photometric().startsWith("YBR"));
            return ToolkitLog.watch(() -> decoder.getDecompressedFrameAsBufferedImage(frame));
        } catch (DicomException | IOException | IndexOutOfBoundsException | IllegalArgumentException e) {
            Refusal refusal = damaged("cannot be decoded");
            refusal.initCause(e);
            throw refusal;
        }
    }

    /** JPEG and JPEG 2000 say in themselves that they are YBR, and their readers undo it; the others do not. */
    private boolean converts() {
        return switch (syntax) {
            case JPEG_BASELINE, JPEG_EXTENDED -> true;
            case JPEG_2000, JPEG_2000_REVERSIBLE -> !shape.photometric().startsWith("YBR_FULL");
            default -> false;
        };
    }

    private void checkLibrary() {
        switch (syntax) {
            case JPEG_LS, JPEG_LS_NEAR_LOSSLESS -> check(NativeLibrary.CHARLS, "libcharls2");
            case JPEG_2000, JPEG_2000_REVERSIBLE -> check(NativeLibrary.OPENJPEG, "libopenjp2-7");
            default -> {
                // decoded in Java
            }
        }
    }

    private void check(NativeLibrary<?> library, String debianPackage) {
        if (!library.isPresent()) {
            throw Fault.unsupported(
                    syntax.title() + " cannot be decoded here: " + library.file() + " is missing",
                    "Install the Debian package " + debianPackage + " where the service runs.");
        }
    }

    private void checkRle(byte[] frame) {
        int segments = shape.samples() * shape.bitsAllocated() / 8;
        if (segments == 6) {
            throw Fault.unsupported("RLE of colour with 16 bits per sample is not decoded", NATIVE);
        }
        if (frame.length < RLE_HEADER || littleEndian(frame, 0) != segments) {
            throw damaged("does not have " + segments + " RLE segments");
        }
        long last = RLE_HEADER;
        for (int segment = 1; segment <= RLE_SEGMENTS; segment++) {
            long offset = littleEndian(frame, segment);
            boolean used = segment <= segments;
            if (used ? offset < last || offset >= frame.length : offset != 0) {
                throw damaged("has RLE segments out of order or beyond its end");
            }
            last = used ? offset : last;
        }
    }

    private static long littleEndian(byte[] bytes, int word) {
        long value = 0;
        for (int i = 3; i >= 0; i--) {
            value = value << 8 | (bytes[4 * word + i] & 0xff);
        }
        return value;
    }

    private void checkCodestream(byte[] frame) {
        CodestreamHeader header = CodestreamHeader.of(frame).orElseThrow(() -> damaged("has no image header"));
        if (header.columns() != shape.columns()
                || header.rows() != shape.rows()
                || header.components() != shape.samples()
                || header.precision() > shape.bitsAllocated()) {
            throw damaged("is an image of " + header.columns() + " x " + header.rows() + " pixels, "
                    + header.components() + " samples and " + header.precision()
                    + " bits, other than the object states");
        }
        boolean lossyJpeg = syntax == TransferSyntax.JPEG_BASELINE || syntax == TransferSyntax.JPEG_EXTENDED;
        if (lossyJpeg && (header.precision() > 8 || description.bitsStored() > 8)) {
            throw Fault.unsupported(syntax.title() + " with 12 bits per sample is not decoded", NATIVE);
        }
    }

    private Refusal damaged(String what) {
        return Fault.malformed("A frame encoded as " + syntax.title() + " " + what);
    }
}
