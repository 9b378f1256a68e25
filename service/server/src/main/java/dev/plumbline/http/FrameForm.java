// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.TransferSyntax;
import java.io.IOException;
import java.util.Optional;

/**
 * How frames are handed out: as they are stored, or plain. Plain is what is meant where no transfer syntax is named; who
 * names no type either gets what lost something in its compression as it is stored.
 *
 * <p>Source: DICOM PS3.18 8.7.3 and its tables 8.7.3-4 and 8.7.3-5.
 *
 * @param type of the bytes
 * @param syntax empty for plain samples
 */
record FrameForm(String type, Optional<TransferSyntax> syntax) {
    private static final String OCTETS = "application/octet-stream";

    /** Empty where the range means no form that these frames have. */
    static Optional<FrameForm> of(MediaRange range, DicomFile file) {
        TransferSyntax syntax = file.transferSyntax();
        if (!syntax.encapsulated()) {
            return range.covers(OCTETS) && coversPlain(range) ? Optional.of(plain()) : Optional.empty();
        }
        boolean anything = range.inner().equals("*/*");
        boolean named = range.parameter("transfer-syntax").isPresent();
        boolean stored = range.coversSyntax(syntax.uid()) && (named || (anything && isLossy(syntax, file)));
        if (range.covers(OCTETS) && !stored && coversPlain(range) && file.givesPlainFrames()) {
            return Optional.of(plain());
        }
        String own = FrameMediaType.of(syntax);
        if (range.covers(own) && range.coversSyntax(syntax.uid())) {
            return Optional.of(new FrameForm(own, Optional.of(syntax)));
        }
        return range.covers(OCTETS) && stored
                ? Optional.of(new FrameForm(OCTETS, Optional.of(syntax)))
                : Optional.empty();
    }

    private static FrameForm plain() {
        return new FrameForm(OCTETS, Optional.empty());
    }

    private static boolean coversPlain(MediaRange range) {
        return range.coversSyntax(TransferSyntax.EXPLICIT_LITTLE_ENDIAN.uid());
    }

    private static boolean isLossy(TransferSyntax syntax, DicomFile file) {
        return switch (syntax) {
            case JPEG_BASELINE, JPEG_EXTENDED, JPEG_LS_NEAR_LOSSLESS, JPEG_2000 -> true;
            default -> !file.givesPlainFrames();
        };
    }

    String partType() {
        return syntax.map(stored -> type + ";transfer-syntax=" + stored.uid()).orElse(type);
    }

    /** @param number from 1 */
    byte[] bytes(DicomFile file, int number) throws IOException {
        return syntax.isPresent() ? file.storedFrame(number) : file.plainFrame(number);
    }
}
