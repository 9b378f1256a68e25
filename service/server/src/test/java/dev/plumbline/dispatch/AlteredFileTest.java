// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.StoreDamaged;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file whose bytes changed on the disk is neither sent nor taken as the measure of what an archive has. TRUST 3.1, T18. */
class AlteredFileTest {
    @TempDir
    Path data;

    private final List<String> sent = new ArrayList<>();
    private Runnable afterSending = () -> {};

    private final Carrier everythingArrives = new Carrier() {
        @Override
        public Outcome send(HeldObject object) {
            sent.add(object.sopInstanceUid());
            if (sent.size() == 2) {
                afterSending.run();
            }
            return Outcome.of(Verdict.SENT, "0000", "");
        }

        @Override
        public Proof prove(Question question) {
            return Proof.of(Proof.Finding.PROVED, "as the test says");
        }

        @Override
        public void rest() {
            // holds nothing
        }
    };

    private static HeldObject altered(FiledRecords records, String uid) {
        HeldObject object = records.archive.held(uid);
        Path file = records.archive.file(object);
        try {
            byte[] bytes = Files.readAllBytes(file);
            bytes[bytes.length - 10] ^= 4;
            Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return object;
    }

    @Test
    void isHeldAndNotSent() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            String image = InventedObjects.instanceUid(1, 1, 1);
            altered(records, image);
            new Courier(
                            new Destination(FiledRecords.TO, true, () -> everythingArrives),
                            records.archive,
                            records.times())
                    .round();
            assertThat(sent).isEmpty();
            Dispatch dispatch = records.dispatch();
            assertThat(dispatch.state()).isEqualTo(State.HELD);
            assertThat(dispatch.lastAnswer().words()).contains("damaged");
        }
    }

    @Test
    void isHeldAndNotProved() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            String report = InventedObjects.instanceUid(1, 2, 2);
            afterSending = () -> altered(records, report);
            new Courier(
                            new Destination(FiledRecords.TO, true, () -> everythingArrives),
                            records.archive,
                            records.times())
                    .round();
            assertThat(sent).hasSize(2);
            assertThat(records.dispatch().state()).isEqualTo(State.HELD);
            assertThat(records.dispatch().lastAnswer().words()).contains("damaged");
        }
    }

    @Test
    void isNoMeasureOfWhatComesBack() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            HeldObject object = altered(records, InventedObjects.instanceUid(1, 1, 1));
            byte[] same = Files.readAllBytes(records.archive.file(object));
            assertThatThrownBy(() -> records.archive.differences(object, new ByteArrayInputStream(same)))
                    .isInstanceOf(StoreDamaged.class)
                    .hasMessageContaining(object.digest());
        }
    }
}
