// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.InventedObjects;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One altered value anywhere makes another object of it; TRUST 2.2 (object substitution), T9. */
class ObjectComparisonTest {
    private static final String COMPREHENSIVE_SR = "1.2.840.10008.5.1.4.1.1.88.33";
    private static final Set<String> SHORT_FORM = Set.of(
            "AE", "AS", "AT", "CS", "DA", "DS", "DT", "FD", "FL", "IS", "LO", "LT", "PN", "SH", "SL", "SS", "ST", "TM",
            "UI", "UL", "US");
    private static final int SEQUENCE = 0x00720080;
    private static final int SIGNATURES = 0xfffafffa;

    @TempDir
    Path folder;

    private static byte[] bytes(int tag) {
        return ByteBuffer.allocate(4)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putShort((short) (tag >>> 16))
                .putShort((short) tag)
                .array();
    }

    private static byte[] element(int tag, String vr, byte[] value) {
        ByteBuffer out = ByteBuffer.allocate(12 + value.length).order(ByteOrder.LITTLE_ENDIAN);
        out.put(bytes(tag)).put(vr.getBytes(StandardCharsets.US_ASCII));
        if (SHORT_FORM.contains(vr)) {
            out.putShort((short) value.length);
        } else {
            out.putShort((short) 0).putInt(value.length);
        }
        out.put(value).flip();
        byte[] whole = new byte[out.remaining()];
        out.get(whole);
        return whole;
    }

    private static byte[] inItem(int sequence, byte[] element) {
        byte[] item = ByteBuffer.allocate(8 + element.length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(bytes(0xfffee000))
                .putInt(element.length)
                .put(element)
                .array();
        return element(sequence, "SQ", item);
    }

    private static byte[] joined(byte[]... parts) {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            whole.writeBytes(part);
        }
        return whole.toByteArray();
    }

    private DicomFile open(byte[] file) throws IOException {
        Path path = Files.createTempFile(folder, "object", ".dcm");
        return DicomFile.open(Files.write(path, file));
    }

    private static byte[] report(byte[] last) {
        DataSet report = new DataSet()
                .put(Tag.SOP_CLASS_UID, COMPREHENSIVE_SR)
                .put(Tag.SOP_INSTANCE_UID, InventedObjects.instanceUid(1, 1, 1));
        return joined(DicomFile.encode(report), last);
    }

    private static byte[] image(byte[] beforePixels, byte[] behind) {
        byte[] image = InventedObjects.imageFile(1, 1, 1);
        byte[] pixels = bytes(Tag.PIXEL_DATA);
        for (int at = image.length - 1; ; at--) {
            if (ByteBuffer.wrap(image, at, image.length - at).slice().mismatch(ByteBuffer.wrap(pixels)) >= 4) {
                byte[] head = Arrays.copyOf(image, at);
                return joined(head, beforePixels, Arrays.copyOfRange(image, at, image.length), behind);
            }
        }
    }

    private static byte[] value(String vr, String text) {
        return switch (vr) {
            case "OB", "OD", "OF", "OL", "OV", "OW", "UN", "FD", "FL", "SL", "SS", "SV", "UL", "US", "UV", "AT" -> {
                byte[] binary = {0, 0, 1, 0x3f, 2, 0, 4, 0x40};
                binary[2] = Byte.parseByte(text);
                yield binary;
            }
            default -> text.getBytes(StandardCharsets.UTF_8);
        };
    }

    @ParameterizedTest
    @CsvSource({
        "005E, AE, ONE, TWO1",
        "005F, AS, 030Y, 031Y",
        "0060, AT, 1, 3",
        "0061, DA, 20260101, 20260102",
        "0062, CS, ONES, TWOS",
        "0063, DT, 20260101, 20260102",
        "0064, IS, 10, 11",
        "0065, OB, 1, 3",
        "0066, LO, ones, twos",
        "0067, OF, 1, 3",
        "0068, LT, ones, twos",
        "0069, OW, 1, 3",
        "006A, PN, A^B1, A^B2",
        "006B, TM, 1010, 1011",
        "006C, SH, ones, twos",
        "006D, UN, 1, 3",
        "006E, ST, ones, twos",
        "006F, UC, ones, twos",
        "0070, UT, ones, twos",
        "0071, UR, u:ones, u:twos",
        "0072, DS, 1.01, 1.02",
        "0073, OD, 1, 3",
        "0074, FD, 1, 3",
        "0075, OL, 1, 3",
        "0076, FL, 1, 3",
        "0078, UL, 1, 3",
        "007A, US, 1, 3",
        "007C, SL, 1, 3",
        "007E, SS, 1, 3",
        "007F, UI, 1.23, 1.24",
        "0081, OV, 1, 3",
        "0082, SV, 1, 3",
        "0083, UV, 1, 3",
        "005E, UN, 1, 3"
    })
    void tellsAnAlteredValueOfEachRepresentationWhereverItStands(String number, String vr, String one, String other)
            throws Exception {
        int tag = 0x00720000 | Integer.parseInt(number, 16);
        byte[] first = element(tag, vr, value(vr, one.length() % 2 == 0 || one.length() < 2 ? one : one + " "));
        byte[] second =
                element(tag, vr, value(vr, other.length() % 2 == 0 || other.length() < 2 ? other : other + " "));
        byte[] none = {};
        List<byte[][]> pairs = List.of(
                new byte[][] {report(first), report(second)},
                new byte[][] {report(inItem(SEQUENCE, first)), report(inItem(SEQUENCE, second))},
                new byte[][] {image(first, none), image(second, none)},
                new byte[][] {image(inItem(SEQUENCE, first), none), image(inItem(SEQUENCE, second), none)},
                new byte[][] {image(none, inItem(SIGNATURES, first)), image(none, inItem(SIGNATURES, second))});
        for (byte[][] pair : pairs) {
            assertThat(ObjectComparison.differences(open(pair[0]), open(pair[1])))
                    .as("pair " + pairs.indexOf(pair))
                    .containsExactly(Fault.name(tag));
            assertThat(ObjectComparison.differences(open(pair[0]), open(pair[0])))
                    .isEmpty();
        }
    }

    @Test
    void tellsWhatOnlyOneOfTwoHasBehindItsPixels() throws Exception {
        byte[] none = {};
        byte[] signed = inItem(SIGNATURES, element(Tag.SOP_INSTANCE_UID, "UI", value("UI", "1.23")));
        assertThat(ObjectComparison.differences(open(image(none, none)), open(image(none, signed))))
                .containsExactly(Fault.name(SIGNATURES));
    }

    @Test
    void tellsAnAlteredPrivateValueBehindThePixels() throws Exception {
        byte[] none = {};
        byte[] creator = element(0x7fe10010, "LO", value("LO", "INVENTED"));
        byte[] one = joined(creator, element(0x7fe11001, "OB", value("OB", "1")));
        byte[] other = joined(creator, element(0x7fe11001, "OB", value("OB", "3")));
        assertThat(ObjectComparison.differences(open(image(none, one)), open(image(none, other))))
                .containsExactly(Fault.name(0x7fe11001));
    }

    @Test
    void tellsAlteredPixelsOfAnIcon() throws Exception {
        byte[] none = {};
        byte[] one = inItem(SEQUENCE, element(Tag.PIXEL_DATA, "OB", value("OB", "1")));
        byte[] other = inItem(SEQUENCE, element(Tag.PIXEL_DATA, "OB", value("OB", "3")));
        assertThat(ObjectComparison.differences(open(image(one, none)), open(image(other, none))))
                .containsExactly(Fault.name(Tag.PIXEL_DATA));
    }

    @Test
    void tellsAlteredLettersThatTheStatedCharacterSetDoesNotHave() throws Exception {
        byte[] one = element(0x0072006a, "PN", new byte[] {'A', (byte) 0xe9, 'B', (byte) 0xe9});
        byte[] other = element(0x0072006a, "PN", new byte[] {'A', (byte) 0xe8, 'B', (byte) 0xe9});
        assertThat(ObjectComparison.differences(open(report(one)), open(report(other))))
                .containsExactly(Fault.name(0x0072006a));
        byte[] none = {};
        assertThat(ObjectComparison.differences(open(image(one, none)), open(image(other, none))))
                .containsExactly(Fault.name(0x0072006a));
    }

    @Test
    void passesOverWhatSaysHowAnObjectIsEncodedOrPadded() throws Exception {
        byte[] none = {};
        byte[] padding = element(0xfffcfffc, "OB", new byte[64]);
        assertThat(ObjectComparison.differences(open(image(none, none)), open(image(none, padding))))
                .isEmpty();
    }
}
