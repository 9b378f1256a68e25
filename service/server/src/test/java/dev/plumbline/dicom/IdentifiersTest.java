// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import dev.plumbline.problem.Refusal;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Data sets that peers answer with: what is broken never reaches the toolkit. TRUST 2.2 (huge VL, fuzzed identifiers). */
class IdentifiersTest {
    private static final int FUZZED = Integer.getInteger("plumbline.fuzzedIdentifiers", 5_000);
    private static final long SEED = Long.getLong("plumbline.seed", 20261129L);
    private static final List<TransferSyntax> SYNTAXES =
            List.of(TransferSyntax.EXPLICIT_LITTLE_ENDIAN, TransferSyntax.IMPLICIT_LITTLE_ENDIAN);

    private static DataSet answer() {
        return new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .put(Tag.ACCESSION_NUMBER, "ACC1")
                .put(Tag.PATIENT_NAME, "Invented^Person")
                .put(
                        Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE,
                        List.of(new DataSet()
                                .put(Tag.MODALITY, "US")
                                .put(Tag.SCHEDULED_STATION_AE_TITLE, "US1")
                                .put(Tag.SCHEDULED_PROCEDURE_STEP_ID, "S1")))
                .put(Tag.REQUESTED_PROCEDURE_ID, "R1");
    }

    private static byte[] header(int tag, String vr, int length, TransferSyntax syntax) {
        ByteBuffer out = ByteBuffer.allocate(12).order(ByteOrder.LITTLE_ENDIAN);
        out.putShort((short) (tag >>> 16)).putShort((short) tag);
        if (!syntax.implicit() && !vr.isEmpty()) {
            out.put((byte) vr.charAt(0)).put((byte) vr.charAt(1)).putShort((short) 0);
        }
        out.putInt(length).flip();
        byte[] bytes = new byte[out.remaining()];
        out.get(bytes);
        return bytes;
    }

    private static byte[] joined(byte[]... parts) {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            whole.writeBytes(part);
        }
        return whole.toByteArray();
    }

    @Test
    void readsWhatWasWritten() {
        for (TransferSyntax syntax : SYNTAXES) {
            DataSet read = Identifiers.read(Identifiers.write(answer(), syntax), syntax);
            assertThat(read.string(Tag.PATIENT_NAME)).hasValue("Invented^Person");
            assertThat(read.items(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE)).hasSize(1);
        }
    }

    @Test
    void readsSequencesOfUndefinedLength() {
        for (TransferSyntax syntax : SYNTAXES) {
            byte[] bytes = joined(
                    header(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE, "SQ", -1, syntax),
                    header(Gate.ITEM, "", -1, syntax),
                    Identifiers.write(new DataSet().put(Tag.MODALITY, "US"), syntax),
                    header(Gate.ITEM_DELIMITER, "", 0, syntax),
                    header(Gate.SEQUENCE_DELIMITER, "", 0, syntax),
                    Identifiers.write(new DataSet().put(Tag.REQUESTED_PROCEDURE_ID, "R1"), syntax));
            DataSet read = Identifiers.read(bytes, syntax);
            assertThat(read.string(Tag.REQUESTED_PROCEDURE_ID)).hasValue("R1");
            assertThat(read.items(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE).get(0).string(Tag.MODALITY))
                    .hasValue("US");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {100, 0x7ffffffe, 0x80000000, 0xfffffffe})
    void refusesALengthThatLiesWhereverItStands(int length) {
        for (TransferSyntax syntax : SYNTAXES) {
            byte[] lie = header(0x00420011, "OB", length, syntax);
            byte[] sequence = header(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE, "SQ", -1, syntax);
            byte[] item = header(Gate.ITEM, "", -1, syntax);
            byte[] itemEnd = header(Gate.ITEM_DELIMITER, "", 0, syntax);
            byte[] sequenceEnd = header(Gate.SEQUENCE_DELIMITER, "", 0, syntax);
            List<byte[]> places = List.of(
                    lie,
                    joined(sequence, sequenceEnd, lie),
                    joined(sequence, item, itemEnd, sequenceEnd, lie),
                    joined(sequence, item, lie, itemEnd, sequenceEnd),
                    joined(
                            header(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE, "SQ", 8 + lie.length, syntax),
                            header(Gate.ITEM, "", lie.length, syntax),
                            lie),
                    joined(sequence, header(Gate.ITEM, "", length, syntax), itemEnd, sequenceEnd));
            for (byte[] place : places) {
                assertThatThrownBy(() -> Identifiers.read(place, syntax))
                        .as(syntax + " " + places.indexOf(place))
                        .isInstanceOf(Refusal.class);
            }
        }
    }

    @Test
    void refusesTooDeepATree() {
        for (TransferSyntax syntax : SYNTAXES) {
            byte[] level = joined(
                    header(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE, "SQ", -1, syntax), header(Gate.ITEM, "", -1, syntax));
            byte[] end =
                    joined(header(Gate.ITEM_DELIMITER, "", 0, syntax), header(Gate.SEQUENCE_DELIMITER, "", 0, syntax));
            byte[] deep = {};
            for (int i = 0; i < 900; i++) {
                deep = joined(level, deep, end);
            }
            byte[] tree = deep;
            assertThatThrownBy(() -> Identifiers.read(tree, syntax)).isInstanceOf(Refusal.class);
        }
    }

    @Test
    void survivesFuzzedDataSets() {
        Random random = new Random(SEED);
        System.out.println("fuzzed identifiers, seed " + SEED);
        int read = 0;
        for (int i = 0; i < FUZZED; i++) {
            TransferSyntax syntax = SYNTAXES.get(i % 2);
            byte[] bytes = Identifiers.write(answer(), syntax);
            for (int changes = random.nextInt(4); changes >= 0; changes--) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            try {
                Identifiers.read(bytes, syntax);
                read++;
            } catch (Refusal refusal) {
                assertThat(refusal.problem().detail()).isNotBlank();
            } catch (RuntimeException e) {
                fail("case " + i, e);
            }
        }
        assertThat(read).isBetween(1, FUZZED - 1);
    }
}
