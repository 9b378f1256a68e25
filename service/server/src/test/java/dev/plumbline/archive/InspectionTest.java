// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static dev.plumbline.archive.InventedObjects.image;
import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class InspectionTest {
    @TempDir
    Path root;

    private DataFolder folder;
    private Store store;
    private Archive archive;

    @BeforeEach
    void open() throws IOException {
        folder = DataFolder.open(root.resolve("data"));
        store = SqliteStore.open(folder.database());
        archive = new Archive(folder, store, new LowWater(0, 0));
    }

    @AfterEach
    void close() throws Exception {
        store.close();
        folder.close();
    }

    @Test
    void rebuildsTheIndexFromTheFilesAlone() throws Exception {
        receive(imageFile(1, 1, 1));
        receive(imageFile(1, 1, 2));
        receive(imageFile(2, 1, 1));
        List<HeldObject> before = store.objects();
        loseTheIndex();
        assertThat(store.objects()).isEmpty();
        assertThat(inspection().reindex()).isEqualTo(new Inspection.Reindexed(3, List.of()));
        assertThat(store.objects()).containsExactlyInAnyOrderElementsOf(before);
        assertThat(inspection().reindex()).isEqualTo(new Inspection.Reindexed(0, List.of()));
        assertThat(store.search(Search.of(QueryLevel.STUDY))).hasSize(2);
    }

    @Test
    void letsTheOlderOfTwoFilesWithOneUidStand() throws Exception {
        HeldObject first = receive(imageFile(1, 1, 1));
        byte[] other = DicomFile.encode(image(1, 1, 1).put(Tag.PATIENT_ID, "SOMEBODY-ELSE"));
        loseTheIndex();
        HeldObject second = receive(other);
        Files.setLastModifiedTime(archive.file(first), FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
        loseTheIndex();
        Inspection.Reindexed reindexed = inspection().reindex();
        assertThat(reindexed.added()).isEqualTo(1);
        assertThat(reindexed.damages())
                .singleElement()
                .satisfies(damage ->
                        assertThat(damage.toString()).contains(second.digest()).contains("quarantine"));
        assertThat(store.objects()).containsExactly(first);
        try (Stream<Path> aside = Files.list(folder.quarantine())) {
            assertThat(aside).hasSize(1);
        }
    }

    @Test
    void namesFilesThatAreMissingOrShortened() throws Exception {
        HeldObject gone = receive(imageFile(1, 1, 1));
        HeldObject shortened = receive(imageFile(1, 1, 2));
        receive(imageFile(1, 1, 3));
        Files.delete(archive.file(gone));
        Path file = archive.file(shortened);
        Files.write(file, Arrays.copyOf(Files.readAllBytes(file), 500));
        assertThat(inspection().missing())
                .extracting(damage -> damage.file().getFileName().toString())
                .containsExactly(gone.digest() + ".dcm", shortened.digest() + ".dcm");
        assertThatThrownBy(() -> archive.file(gone))
                .isInstanceOf(StoreDamaged.class)
                .hasMessageContaining(gone.digest());
    }

    @Test
    void namesFilesWithAFlippedBit() throws Exception {
        HeldObject flipped = receive(imageFile(1, 1, 1));
        receive(imageFile(1, 1, 2));
        Path file = archive.file(flipped);
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length - 10] ^= 4;
        Files.write(file, bytes);
        assertThat(inspection().missing()).isEmpty();
        assertThat(inspection().altered())
                .singleElement()
                .satisfies(damage -> assertThat(damage.file()).isEqualTo(file));
        loseTheIndex();
        assertThat(inspection().reindex().added()).isEqualTo(1);
        assertThat(store.object(instanceUid(1, 1, 1))).isEmpty();
    }

    /** Killed between the file and its row, or forgotten by a damaged store: said, and taken in by order only. */
    @Test
    void countsFilesThatNoRowSpeaksOf() throws Exception {
        receive(imageFile(1, 1, 1));
        receive(imageFile(1, 1, 2));
        assertThat(inspection().quick()).isEqualTo(Findings.NONE);
        loseTheIndex();
        receive(imageFile(1, 1, 2));
        assertThat(inspection().quick()).isEqualTo(new Findings(List.of(), 1));
        inspection().reindex();
        assertThat(inspection().unindexed()).isZero();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void beginsNoNewStoreBesideObjectsOfALostOne(boolean empty) throws Exception {
        assertThat(folder.databaseInUse()).isEqualTo(folder.database());
        receive(imageFile(1, 1, 1));
        store.close();
        for (String name : List.of("store.sqlite", "store.sqlite-wal", "store.sqlite-shm")) {
            Files.deleteIfExists(root.resolve("data").resolve(name));
        }
        if (empty) {
            Files.createFile(folder.database());
        }
        assertThatThrownBy(() -> folder.databaseInUse())
                .isInstanceOf(StoreDamaged.class)
                .hasMessageContainingAll("store.sqlite", "copy", "reindex");
    }

    @Test
    void theUidOfTheInstallationOutlivesTheStoreAndTheFileBesideIt() throws Exception {
        String uid = folder.observerUid(store, () -> "2.25.77");
        assertThat(uid).isEqualTo("2.25.77");
        loseTheIndex();
        assertThat(folder.observerUid(store, () -> "2.25.88")).isEqualTo(uid);
        Files.delete(root.resolve("data/device-observer-uid"));
        assertThat(folder.observerUid(store, () -> "2.25.99")).isEqualTo(uid);
        assertThat(root.resolve("data/device-observer-uid")).hasContent(uid);
    }

    private void loseTheIndex() throws Exception {
        close();
        for (String name : List.of("store.sqlite", "store.sqlite-wal", "store.sqlite-shm")) {
            Files.deleteIfExists(root.resolve("data").resolve(name));
        }
        open();
    }

    private Inspection inspection() {
        return new Inspection(folder, store);
    }

    private HeldObject receive(byte[] bytes) {
        return archive.receive(new ByteArrayInputStream(bytes)).object();
    }
}
