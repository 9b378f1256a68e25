// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Our own reading of structured reports says what the toolkit's says, for whole files and for damaged ones. */
class PlacedObjectPropertyTest {
    private static final long SEED = 20260105;
    private static final int MUTATIONS = Integer.getInteger("plumbline.mutations", 1000);

    @TempDir
    Path folder;

    private static List<byte[]> originals() throws IOException {
        List<byte[]> originals = new ArrayList<>();
        for (RecordFixtures fixture : RecordFixtures.values()) {
            originals.add(DicomFile.encode(fixture.report()));
        }
        originals.add(Files.readAllBytes(RealObject.pydicom("test-SR.dcm")));
        return originals;
    }

    @Test
    void readsWhatTheToolkitReads() throws IOException {
        int own = 0;
        for (byte[] original : originals()) {
            own += compare(original) ? 1 : 0;
        }
        assertThat(own).as("read by our own reader").isGreaterThanOrEqualTo(RecordFixtures.values().length);
    }

    @Test
    void readsDamagedFilesAsTheToolkitDoesOrLeavesThemToIt() throws IOException {
        List<byte[]> originals = originals();
        Random seeds = new Random(SEED);
        int own = 0;
        for (int i = 0; i < MUTATIONS; i++) {
            long seed = seeds.nextLong();
            byte[] mutated = mutated(originals.get(i % originals.size()), new Random(seed));
            try {
                own += compare(mutated) ? 1 : 0;
            } catch (AssertionError e) {
                throw new AssertionError("seed " + seed + ": " + e.getMessage(), e);
            }
        }
        assertThat(own).as("harmless damage passes").isGreaterThan(MUTATIONS / 20);
    }

    private static byte[] mutated(byte[] original, Random random) {
        byte[] mutated = original.clone();
        int changes = 1 + random.nextInt(3);
        for (int i = 0; i < changes; i++) {
            mutated[132 + random.nextInt(mutated.length - 132)] = (byte) random.nextInt(256);
        }
        return mutated;
    }

    /** Whether our own reader read it; what the gate refuses is refused for both. */
    private boolean compare(byte[] bytes) throws IOException {
        Path file = folder.resolve("report.dcm");
        Files.write(file, bytes);
        DicomFile opened;
        try {
            opened = DicomFile.open(file);
        } catch (Refusal refused) {
            return false;
        }
        AttributeList toolkit = new AttributeList();
        toolkit.setDecompressPixelData(false);
        try {
            ToolkitLog.watch(() -> toolkit.read(file.toFile()));
        } catch (DicomException | Refusal e) {
            throw new AssertionError("the toolkit refuses what was read", e);
        }
        boolean own = opened.header().isReadWhereItStands();
        same(opened.header(), new DataSet(toolkit), "");
        return own;
    }

    private static void same(DataSet ours, DataSet theirs, String place) {
        assertThat(ours.tags()).as(place).isEqualTo(theirs.tags());
        for (int tag : theirs.tags()) {
            String at = place + "/" + Tag.text(tag);
            assertThat(ours.vr(tag)).as(at).isEqualTo(theirs.vr(tag));
            List<DataSet> items = theirs.items(tag);
            assertThat(ours.items(tag)).as(at).hasSameSizeAs(items);
            for (int i = 0; i < items.size(); i++) {
                same(ours.items(tag).get(i), items.get(i), at + "/" + i);
            }
            assertThat(ours.holds(tag)).isTrue();
            assertThat(ours.strings(tag)).as(at).isEqualTo(theirs.strings(tag));
            assertThat(ours.string(tag)).as(at).isEqualTo(theirs.string(tag));
            if (List.of("FL", "FD").contains(theirs.vr(tag).orElse(""))) {
                assertThat(ours.numbers(tag)).as(at).isEqualTo(theirs.numbers(tag));
            }
            if (theirs.vr(tag).filter("IS"::equals).isPresent()) {
                assertThat(ours.integer(tag)).as(at).isEqualTo(theirs.integer(tag));
            }
        }
    }

    /** What is put into an item, however it was reached, is in the object; nothing stays behind in the bytes. */
    @Test
    void aChangeInAnItemIsSeenFromEverywhere() throws IOException {
        Path file = folder.resolve("report.dcm");
        Files.write(file, DicomFile.encode(RecordFixtures.IN_PLANE.report()));
        DataSet report = DicomFile.open(file).header();
        assertThat(report.isReadWhereItStands()).isTrue();
        DataSet other = report.items(Tag.CONTENT_SEQUENCE).get(3);
        report.items(Tag.CONTENT_SEQUENCE).get(3).put(Tag.VALUE_TYPE, "TEXT");
        assertThat(other.string(Tag.VALUE_TYPE)).contains("TEXT");
        assertThat(report.items(Tag.CONTENT_SEQUENCE).get(3).string(Tag.VALUE_TYPE))
                .contains("TEXT");
        assertThat(report.isReadWhereItStands()).isFalse();
    }
}
