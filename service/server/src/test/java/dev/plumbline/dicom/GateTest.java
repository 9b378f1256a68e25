// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One rule of the gate after the other, on files made byte by byte. */
class GateTest {
    private static final TransferSyntax EXPLICIT = TransferSyntax.EXPLICIT_LITTLE_ENDIAN;
    private static final int SEQUENCE = Tag.CONTENT_SEQUENCE;

    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource(
            value = TransferSyntax.class,
            names = {"IMPLICIT_LITTLE_ENDIAN", "EXPLICIT_LITTLE_ENDIAN", "EXPLICIT_BIG_ENDIAN"})
    void letsWholeFilesThroughInEveryPlainEncoding(TransferSyntax syntax) throws IOException {
        FileBytes file = FileBytes.file(syntax)
                .text(Tag.PATIENT_ID, "LO", "X")
                .imagePixel(3, 5, "1")
                .header(SEQUENCE, "SQ", FileBytes.UNDEFINED)
                .item(Gate.ITEM, FileBytes.UNDEFINED)
                .text(Tag.TEXT_VALUE, "UT", "some text")
                .item(Gate.ITEM_DELIMITER, 0)
                .item(Gate.SEQUENCE_DELIMITER, 0)
                .element(Tag.PIXEL_DATA, "OB", new byte[16])
                .element(Tag.DATA_SET_TRAILING_PADDING, "OB", new byte[100]);

        GateReport report = Gate.inspect(file.in(folder));

        assertThat(report.transferSyntax()).isEqualTo(syntax);
        assertThat(report.sopInstanceUid()).isEqualTo(FileBytes.SOP_INSTANCE);
        assertThat(report.elements()).isEqualTo(5 + 2 + 1 + 9 + 2);
        assertThat(report.pixels())
                .hasValueSatisfying(pixels -> assertThat(((PixelBytes.Plain) pixels).offset())
                        .isEqualTo(file.bytes().length - 100 - (syntax.implicit() ? 8 : 12) - 16));
        assertThat(DicomFile.open(file.in(folder)).header().string(Tag.PATIENT_ID))
                .hasValue("X");
    }

    @Test
    void refusesWhatIsNotDicom() {
        refuses(new byte[0], "not a DICOM file");
        refuses("just some text".repeat(50).getBytes(java.nio.charset.StandardCharsets.UTF_8), "not a DICOM file");
        refuses(new byte[4096], "not a DICOM file");
    }

    @Test
    void refusesAFileCutOffAtAnyByte() {
        byte[] whole = image().bytes();
        for (int length = 0; length < whole.length; length++) {
            byte[] cut = Arrays.copyOf(whole, length);
            assertThatThrownBy(() -> DicomFile.open(write(cut)))
                    .as("cut off at " + length)
                    .isInstanceOfSatisfying(
                            Refusal.class,
                            refusal -> assertThat(refusal.problem()).isInstanceOf(Problem.MalformedObject.class));
        }
    }

    @Test
    void refusesBytesBehindTheLastElement() {
        refuses(image().raw(new byte[1]).bytes(), "in the middle of an element");
        refuses(image().raw(new byte[64]).bytes(), "out of order");
    }

    @Test
    void readsAnyVersionOfTheMetaInformationAndAnyPreamble() throws IOException {
        byte[] file = image().bytes();
        Arrays.fill(file, 0, 128, (byte) 'M');
        file[156] = 7; // value of (0002,0001)
        assertThat(Gate.inspect(write(file)).pixels()).isPresent();
    }

    @Test
    void refusesAMissingOrWrongMetaGroupLength() {
        byte[] whole = image().bytes();
        byte[] without = new byte[whole.length - 12];
        System.arraycopy(whole, 0, without, 0, 132);
        System.arraycopy(whole, 144, without, 132, whole.length - 144);
        refuses(without, "FileMetaInformationGroupLength (0002,0000) at byte 132 is missing");
        for (int delta : new int[] {-8, -2, 2, 8, 100}) {
            byte[] wrong = whole.clone();
            wrong[140] = (byte) (wrong[140] + delta);
            assertThat(refusal(wrong).problem()).isInstanceOf(Problem.MalformedObject.class);
        }
        byte[] huge = whole.clone();
        huge[143] = 0x7f;
        refuses(huge, "more than there can be");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.2.840.10008.1.2.1.99", "1.2.840.10008.1.2.4.100", "1.2.840.10008.1.2.4.201", "1.2.3"})
    void refusesOtherTransferSyntaxesByName(String uid) {
        Refusal refusal = refusal(FileBytes.file(EXPLICIT, uid, "1.2").bytes());
        assertThat(refusal.problem()).isInstanceOf(Problem.UnsupportedObject.class);
        assertThat(refusal).hasMessageContaining(uid).hasMessageContaining("Explicit VR Little Endian");
        assertThat(refusal).hasMessageContaining(RefusedSyntax.all().getOrDefault(uid, uid));
    }

    @Test
    void everyTransferSyntaxTakenOrRefusedIsInTheConformanceStatement() throws IOException {
        String statement = Files.readString(Path.of("..", "..", "docs", "conformance.md"));
        RefusedSyntax.all().forEach((uid, name) -> {
            assertThat(TransferSyntax.of(uid)).as(uid).isEmpty();
            assertThat(statement).contains(uid).contains(name);
        });
        for (TransferSyntax taken : TransferSyntax.values()) {
            assertThat(statement).contains(taken.uid());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"../../etc/passwd", "1..2", ".1", "1.", "1.2a", "1 2", "1.2/3", "-1.2"})
    void refusesWhatIsNoUniqueIdentifier(String uid) {
        refuses(FileBytes.file(EXPLICIT, EXPLICIT.uid(), uid).bytes(), "is not a unique identifier");
        refuses(
                FileBytes.file(EXPLICIT).text(Tag.STUDY_INSTANCE_UID, "UI", uid).bytes(),
                "StudyInstanceUID (0020,000d) at byte");
    }

    @Test
    void takesUniqueIdentifiersOfUpTo64Characters() throws IOException {
        String longest = "1." + "2".repeat(62);
        assertThat(Gate.inspect(FileBytes.file(EXPLICIT, EXPLICIT.uid(), longest)
                                .in(folder))
                        .sopInstanceUid())
                .isEqualTo(longest);
        refuses(FileBytes.file(EXPLICIT, EXPLICIT.uid(), longest + "3").bytes(), "at most 64");
    }

    @Test
    void refusesAnObjectThatIsNotTheOneItsMetaInformationNames() {
        byte[] file = image().bytes();
        int inDataSet =
                new String(file, java.nio.charset.StandardCharsets.ISO_8859_1).lastIndexOf(FileBytes.SOP_INSTANCE);
        file[inDataSet] = '1';
        refuses(file, "SOPInstanceUID (0008,0018) is missing or differs");
    }

    @Test
    void refusesEveryLengthBeyondTheEnd() {
        for (String vr : new String[] {"OB", "OW", "OF", "OD", "UN", "UT", "UC", "UR", "SQ", "OL", "OV", "UV"}) {
            for (int length : new int[] {16, 0x7ffffff8, 0x80000000, 0xfffffff8}) {
                refuses(FileBytes.file(EXPLICIT).header(0x00091010, vr, length).bytes(), "where 0 are left");
            }
        }
        refuses(FileBytes.file(EXPLICIT).header(0x00100020, "LO", 2000).bytes(), "where 0 are left");
        refuses(
                FileBytes.file(TransferSyntax.IMPLICIT_LITTLE_ENDIAN)
                        .header(0x00100020, "LO", 0x7ffffffe)
                        .bytes(),
                "PatientID (0010,0020) at byte");
    }

    @Test
    void refusesAnItemLongerThanItsSequence() {
        refuses(
                sequence(16).item(Gate.ITEM, 20).raw(new byte[8]).bytes(),
                "ContentSequence (0040,a730)",
                "needs 20 bytes where 8 are left");
    }

    @Test
    void refusesElementsTwiceOrOutOfOrder() {
        refuses(
                FileBytes.file(EXPLICIT)
                        .text(Tag.PATIENT_ID, "LO", "A")
                        .text(Tag.PATIENT_ID, "LO", "B")
                        .bytes(),
                "stands twice or out of order");
        refuses(
                FileBytes.file(EXPLICIT)
                        .text(Tag.PATIENT_ID, "LO", "A")
                        .text(Tag.PATIENT_NAME, "PN", "B")
                        .bytes(),
                "stands twice or out of order");
        refuses(FileBytes.start(EXPLICIT).bytes(), "not a DICOM file");
    }

    @Test
    void refusesUnknownValueRepresentationsAndReservedBytes() {
        refuses(FileBytes.file(EXPLICIT).header(Tag.PATIENT_ID, "ZZ", 0).bytes(), "does not exist");
        refuses(
                FileBytes.file(EXPLICIT)
                        .tag(Tag.TEXT_VALUE)
                        .raw((byte) 'U', (byte) 'T', (byte) 1, (byte) 0, (byte) 0, (byte) 0, (byte) 0, (byte) 0)
                        .bytes(),
                "reserved bytes");
    }

    @Test
    void refusesLengthsThatDoNotGoWithTheValues() {
        refuses(
                FileBytes.file(EXPLICIT)
                        .element(Tag.REGION_FLAGS, "UL", new byte[6])
                        .bytes(),
                "not a multiple of 4");
        refuses(
                FileBytes.file(EXPLICIT)
                        .element(Tag.PHYSICAL_DELTA_X, "FD", new byte[4])
                        .bytes(),
                "multiple of 8");
        refuses(
                FileBytes.file(EXPLICIT)
                        .element(Tag.PATIENT_ID, "LO", new byte[3])
                        .bytes(),
                "multiple of 2");
    }

    @Test
    void refusesUndefinedLengthWhereNothingEndsIt() {
        refuses(
                FileBytes.file(EXPLICIT)
                        .header(Tag.TEXT_VALUE, "UT", FileBytes.UNDEFINED)
                        .bytes(),
                "has no length");
        refuses(
                FileBytes.file(EXPLICIT)
                        .header(SEQUENCE, "SQ", FileBytes.UNDEFINED)
                        .bytes(),
                "no proper end");
        refuses(
                sequence(FileBytes.UNDEFINED)
                        .item(Gate.ITEM, FileBytes.UNDEFINED)
                        .bytes(),
                "no proper end");
    }

    @Test
    void refusesDelimitersThatEndNothing() {
        refuses(FileBytes.file(EXPLICIT).item(Gate.ITEM_DELIMITER, 0).bytes(), "where none can be");
        refuses(FileBytes.file(EXPLICIT).item(Gate.SEQUENCE_DELIMITER, 0).bytes(), "where none can be");
        refuses(FileBytes.file(EXPLICIT).item(Gate.ITEM, 0).bytes(), "where none can be");
        refuses(sequence(8).item(Gate.SEQUENCE_DELIMITER, 0).bytes(), "not an item");
        refuses(
                sequence(FileBytes.UNDEFINED)
                        .item(Gate.ITEM, FileBytes.UNDEFINED)
                        .item(Gate.ITEM_DELIMITER, 4)
                        .raw(new byte[4])
                        .bytes(),
                "with a length");
        refuses(
                sequence(FileBytes.UNDEFINED)
                        .text(Tag.PATIENT_ID, "LO", "no item")
                        .item(Gate.SEQUENCE_DELIMITER, 0)
                        .bytes(),
                "not an item");
    }

    @Test
    void readsUnknownSequencesAsImplicit() throws IOException {
        FileBytes file = FileBytes.file(EXPLICIT)
                .header(0x00091010, "UN", FileBytes.UNDEFINED)
                .item(Gate.ITEM, 10)
                .tag(Tag.PATIENT_ID)
                .raw((byte) 2, (byte) 0, (byte) 0, (byte) 0, (byte) 'X', (byte) ' ')
                .item(Gate.SEQUENCE_DELIMITER, 0)
                .text(Tag.PATIENT_ID, "LO", "X");
        FileBytes image = file.imagePixel(1, 2, "1").element(Tag.PIXEL_DATA, "OB", new byte[2]);
        assertThat(DicomFile.open(image.in(folder)).header().items(0x00091010)).hasSize(1);
    }

    @Test
    void refusesAPrivateCreatorThatIsASequence() {
        refuses(
                FileBytes.file(EXPLICIT).header(0x00090010, "SQ", 0).bytes(),
                "should hold the name of a private creator");
    }

    @Test
    void letsSequencesNestToTheLimitOnly() throws IOException {
        assertThat(Gate.inspect(nested(Gate.MAX_DEPTH).in(folder)).elements()).isGreaterThan(Gate.MAX_DEPTH);
        for (int depth : new int[] {Gate.MAX_DEPTH + 1, 1000, 10_000, 1_000_000}) {
            refuses(nested(depth).bytes(), "more than 32 levels");
        }
    }

    @Test
    void capsElementsItemsAndBytes() {
        FileBytes items = sequence(8 * (Gate.MAX_ITEMS + 1));
        for (int i = 0; i <= Gate.MAX_ITEMS; i++) {
            items.item(Gate.ITEM, 0);
        }
        refuses(items.bytes(), "more than 20000 items");

        FileBytes elements = FileBytes.file(EXPLICIT);
        for (int i = 0; i <= Gate.MAX_ELEMENTS; i++) {
            elements.element(0x00110000 + (i >> 15 << 17) + 0x1000 + (i & 0x7fff), "UN", new byte[0]);
        }
        refuses(elements.bytes(), "more than 100000 attributes");

        refuses(
                FileBytes.file(EXPLICIT)
                        .element(Tag.TEXT_VALUE, "UT", new byte[(int) Gate.MAX_BESIDE_PIXELS])
                        .bytes(),
                "bytes beside the pixel data");
    }

    @Test
    void refusesPixelDataOfAnotherSizeThanStated() {
        for (int length : new int[] {0, 14, 18, 32}) {
            refuses(
                    pixels(f -> f.imagePixel(3, 5, "1"), length).bytes(),
                    "PixelData (7fe0,0010) at byte",
                    length + " bytes where the stated size and frames need 15");
        }
        refuses(pixels(f -> f.imagePixel(3, 5, "3"), 30).bytes(), "need 45");
    }

    @Test
    void refusesAbsurdSizesBeforeReadingAnyPixel() {
        refuses(pixels(f -> f.imagePixel(65535, 65535, "1"), 16).bytes(), "Rows (0028,0010) is 65535");
        refuses(pixels(f -> f.imagePixel(10, 8193, "1"), 16).bytes(), "Columns (0028,0011) is 8193");
        refuses(pixels(f -> f.imagePixel(1, 1, "20001"), 20002).bytes(), "20001; at most 20000");
        refuses(pixels(f -> f.imagePixel(8192, 8192, "20000"), 16).bytes(), "need 1342177280000");
        refuses(pixels(f -> f.imagePixel(0, 5, "1"), 16).bytes(), "Rows (0028,0010) is 0");
        refuses(pixels(f -> f.imagePixel(3, 5, "0"), 16).bytes(), "NumberOfFrames (0028,0008) is below 1");
        refuses(pixels(f -> f.imagePixel(3, 5, "-2147483649"), 16).bytes(), "not a whole number");
        refuses(pixels(f -> f, 16).bytes(), "stands without");
    }

    @Test
    void refusesPixelDataEncodedOtherwiseThanTheTransferSyntax() {
        refuses(
                FileBytes.file(TransferSyntax.RLE)
                        .imagePixel(3, 5, "1")
                        .element(Tag.PIXEL_DATA, "OB", new byte[16])
                        .bytes(),
                "is not encoded as RLE Lossless demands");
        refuses(
                FileBytes.file(EXPLICIT)
                        .imagePixel(3, 5, "1")
                        .header(Tag.PIXEL_DATA, "OB", FileBytes.UNDEFINED)
                        .item(Gate.ITEM, 0)
                        .item(Gate.SEQUENCE_DELIMITER, 0)
                        .bytes(),
                "is not encoded as Explicit VR Little Endian demands");
    }

    @Test
    void refusesBrokenChainsOfFragments() {
        refuses(encapsulated("1").bytes(), "ends without a delimiter");
        refuses(encapsulated("1").item(Gate.SEQUENCE_DELIMITER, 0).bytes(), "has no proper offset table");
        refuses(
                encapsulated("1")
                        .item(Gate.ITEM, 0)
                        .item(Gate.SEQUENCE_DELIMITER, 0)
                        .bytes(),
                "has 0 fragments, which do not make up the stated 1 frames");
        refuses(
                encapsulated("3")
                        .item(Gate.ITEM, 0)
                        .item(Gate.ITEM, 2)
                        .raw(new byte[2])
                        .item(Gate.ITEM, 2)
                        .raw(new byte[2])
                        .item(Gate.SEQUENCE_DELIMITER, 0)
                        .bytes(),
                "has 2 fragments");
        refuses(
                encapsulated("1")
                        .item(Gate.ITEM, 0)
                        .item(Gate.ITEM, 64)
                        .raw(new byte[20])
                        .bytes(),
                "broken or cut off fragment");
        refuses(
                encapsulated("1")
                        .item(Gate.ITEM, 0)
                        .item(Gate.ITEM, 2)
                        .raw(new byte[2])
                        .bytes(),
                "ends without a delimiter");
    }

    @Test
    void sharesFragmentsOutByTheOffsetTable() throws IOException {
        FileBytes file = encapsulated("2").item(Gate.ITEM, 8).raw(new byte[] {0, 0, 0, 0, 24, 0, 0, 0});
        for (int length : new int[] {4, 4, 6}) {
            file.item(Gate.ITEM, length).raw(new byte[length]);
        }
        GateReport report = Gate.inspect(file.item(Gate.SEQUENCE_DELIMITER, 0).in(folder));

        Fragments fragments = ((PixelBytes.Encapsulated) report.pixels().orElseThrow()).fragments();
        assertThat(fragments.frameLength(0)).isEqualTo(8);
        assertThat(fragments.frameLength(1)).isEqualTo(6);
    }

    @Test
    void neverRepeatsAValueInItsWords() {
        byte[] file = FileBytes.file(EXPLICIT)
                .text(Tag.PATIENT_NAME, "PN", "Secret^Name")
                .text(Tag.PATIENT_NAME, "PN", "Secret^Name")
                .bytes();
        assertThat(refusal(file)).hasMessageContaining("PatientName (0010,0010) at byte");
        assertThat(refusal(file).getMessage()).doesNotContain("Secret");
    }

    private static FileBytes image() {
        return FileBytes.file(EXPLICIT).imagePixel(3, 5, "1").element(Tag.PIXEL_DATA, "OB", new byte[16]);
    }

    private static FileBytes pixels(UnaryOperator<FileBytes> module, int length) {
        return module.apply(FileBytes.file(EXPLICIT)).element(Tag.PIXEL_DATA, "OB", new byte[length]);
    }

    private static FileBytes encapsulated(String frames) {
        return FileBytes.file(TransferSyntax.RLE)
                .imagePixel(3, 5, frames)
                .header(Tag.PIXEL_DATA, "OB", FileBytes.UNDEFINED);
    }

    private static FileBytes sequence(int length) {
        return FileBytes.file(EXPLICIT).header(SEQUENCE, "SQ", length);
    }

    private static FileBytes nested(int depth) {
        FileBytes file = FileBytes.file(EXPLICIT);
        for (int i = 0; i < depth; i++) {
            file.header(SEQUENCE, "SQ", FileBytes.UNDEFINED).item(Gate.ITEM, FileBytes.UNDEFINED);
        }
        for (int i = 0; i < depth; i++) {
            file.item(Gate.ITEM_DELIMITER, 0).item(Gate.SEQUENCE_DELIMITER, 0);
        }
        return file;
    }

    private void refuses(byte[] file, String... words) {
        assertThatThrownBy(() -> Gate.inspect(write(file)))
                .isInstanceOf(Refusal.class)
                .hasMessageContainingAll(words);
    }

    private Refusal refusal(byte[] file) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Gate.inspect(write(file)));
        assertThat(refusal).isNotNull();
        return refusal;
    }

    private Path write(byte[] file) throws IOException {
        return Files.write(folder.resolve("object.dcm"), file);
    }
}
