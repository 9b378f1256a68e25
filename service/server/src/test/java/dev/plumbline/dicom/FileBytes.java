// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A DICOM file put together byte by byte, as wrong as a test needs it; knows nothing of the toolkit or the gate. */
final class FileBytes {
    static final String SOP_CLASS = FrameClass.US_IMAGE;
    static final String SOP_INSTANCE = "2.25.1234";
    static final int UNDEFINED = -1;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final boolean implicit;
    private final ByteOrder order;

    private FileBytes(TransferSyntax syntax) {
        this.implicit = syntax == TransferSyntax.IMPLICIT_LITTLE_ENDIAN;
        this.order = syntax == TransferSyntax.EXPLICIT_BIG_ENDIAN ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    }

    /** An empty data set, without preamble. */
    static FileBytes dataSet(TransferSyntax syntax) {
        return new FileBytes(syntax);
    }

    /** A file up to its SOP class and instance. */
    static FileBytes file(TransferSyntax syntax) {
        return file(syntax, syntax.uid(), SOP_INSTANCE);
    }

    static FileBytes file(TransferSyntax syntax, String syntaxUid, String instance) {
        FileBytes meta = new FileBytes(TransferSyntax.EXPLICIT_LITTLE_ENDIAN)
                .element(Tag.FILE_META_INFORMATION_VERSION, "OB", new byte[] {0, 1})
                .text(Tag.MEDIA_STORAGE_SOP_CLASS_UID, "UI", SOP_CLASS)
                .text(Tag.MEDIA_STORAGE_SOP_INSTANCE_UID, "UI", instance)
                .text(Tag.TRANSFER_SYNTAX_UID, "UI", syntaxUid);
        return start(syntax)
                .raw(new FileBytes(TransferSyntax.EXPLICIT_LITTLE_ENDIAN)
                        .ul(Tag.FILE_META_INFORMATION_GROUP_LENGTH, meta.bytes().length)
                        .bytes())
                .raw(meta.bytes())
                .text(Tag.SOP_CLASS_UID, "UI", SOP_CLASS)
                .text(Tag.SOP_INSTANCE_UID, "UI", instance);
    }

    static FileBytes start(TransferSyntax syntax) {
        return new FileBytes(syntax).raw(new byte[128]).raw("DICM".getBytes(StandardCharsets.US_ASCII));
    }

    /** The image pixel module of 8-bit grey frames. */
    FileBytes imagePixel(int rows, int columns, String frames) {
        return us(Tag.SAMPLES_PER_PIXEL, 1)
                .text(Tag.PHOTOMETRIC_INTERPRETATION, "CS", "MONOCHROME2")
                .text(Tag.NUMBER_OF_FRAMES, "IS", frames)
                .us(Tag.ROWS, rows)
                .us(Tag.COLUMNS, columns)
                .us(Tag.BITS_ALLOCATED, 8)
                .us(Tag.BITS_STORED, 8)
                .us(Tag.HIGH_BIT, 7)
                .us(Tag.PIXEL_REPRESENTATION, 0);
    }

    FileBytes element(int tag, String vr, byte[] value) {
        return header(tag, vr, value.length).raw(value);
    }

    FileBytes text(int tag, String vr, String value) {
        boolean odd = value.length() % 2 != 0;
        String padded = odd ? value + (vr.equals("UI") ? "\0" : " ") : value;
        return element(tag, vr, padded.getBytes(StandardCharsets.ISO_8859_1));
    }

    FileBytes us(int tag, int value) {
        return element(tag, "US", number(2).putShort((short) value).array());
    }

    FileBytes ul(int tag, int value) {
        return element(tag, "UL", number(4).putInt(value).array());
    }

    FileBytes header(int tag, String vr, int length) {
        tag(tag);
        if (implicit) {
            return raw(number(4).putInt(length).array());
        }
        raw(vr.getBytes(StandardCharsets.US_ASCII));
        boolean longForm = ValueForm.of(vr).map(ValueForm::longLength).orElse(false);
        return longForm
                ? raw(number(6).putShort((short) 0).putInt(length).array())
                : raw(number(2).putShort((short) length).array());
    }

    /** An item or a delimiter, or anything else that has a tag and a length. */
    FileBytes item(int tag, int length) {
        return tag(tag).raw(number(4).putInt(length).array());
    }

    FileBytes tag(int tag) {
        return raw(
                number(4).putShort((short) (tag >>> 16)).putShort((short) tag).array());
    }

    FileBytes raw(byte... bytes) {
        out.writeBytes(bytes);
        return this;
    }

    byte[] bytes() {
        return out.toByteArray();
    }

    Path in(Path folder) {
        try {
            return Files.write(Files.createTempFile(folder, "object", ".dcm"), bytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private ByteBuffer number(int bytes) {
        return ByteBuffer.allocate(bytes).order(order);
    }
}
