// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static dev.plumbline.archive.InventedObjects.image;
import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static dev.plumbline.archive.InventedObjects.studyUid;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ArchiveTest {
    private static final LowWater NONE = new LowWater(0, 0);

    @TempDir
    Path root;

    private DataFolder folder;
    private SqliteStore store;
    private Archive archive;

    @BeforeEach
    void open() throws IOException {
        folder = DataFolder.open(root.resolve("data"));
        store = SqliteStore.open(folder.database());
        archive = new Archive(folder, store, NONE);
    }

    @AfterEach
    void close() throws IOException {
        store.close();
        folder.close();
    }

    @Test
    void keepsTheBytesAsTheyCame() throws IOException {
        byte[] sent = imageFile(1, 1, 1);
        HeldObject held = receive(sent).object();
        assertThat(Files.readAllBytes(archive.file(held))).isEqualTo(sent);
        assertThat(archive.held(instanceUid(1, 1, 1))).isEqualTo(held);
        assertThat(filesIn("incoming")).isEmpty();
    }

    @Test
    void showsFilesAndFoldersToTheirOwnerOnly() throws IOException {
        receive(imageFile(1, 1, 1));
        try (Stream<Path> all = Files.walk(folder.root())) {
            List<String> others = all.filter(path -> !mode(path).endsWith("------"))
                    .map(Path::toString)
                    .toList();
            assertThat(others).isEmpty();
        }
    }

    @Test
    void takesTheSameObjectAgainAsKnown() throws IOException {
        assertThat(receive(imageFile(1, 1, 1)).known()).isFalse();
        assertThat(receive(imageFile(1, 1, 1)).known()).isTrue();
        assertThat(filesIn("objects")).hasSize(1);
    }

    /** 0000 is only said of what is on disk. */
    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 500})
    void putsALostOrCutFileBackWhenItIsSentAgain(int left) throws IOException {
        byte[] bytes = imageFile(1, 1, 1);
        Path file = archive.file(receive(bytes).object());
        Files.delete(file);
        if (left >= 0) {
            Files.write(file, Arrays.copyOf(bytes, left));
        }
        assertThat(receive(bytes).known()).isTrue();
        assertThat(file).hasBinaryContent(bytes);
        assertThat(filesIn("incoming")).isEmpty();
    }

    @Test
    void neverOverwritesAndQuarantinesAnotherObjectWithTheSameUid() throws IOException {
        HeldObject first = receive(imageFile(1, 1, 1)).object();
        byte[] other = DicomFile.encode(image(1, 1, 1).put(Tag.PATIENT_ID, "SOMEBODY-ELSE"));
        assertThatThrownBy(() -> receive(other))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem()).isInstanceOf(Problem.Conflict.class));
        assertThat(Files.readAllBytes(archive.file(first))).isEqualTo(imageFile(1, 1, 1));
        assertThat(filesIn("objects")).hasSize(1);
        assertThat(filesIn("quarantine")).hasSize(1);
        assertThat(Files.readAllBytes(filesIn("quarantine").get(0))).isEqualTo(other);
    }

    @Test
    void keepsOneOfTwentySentAtOnce() throws Exception {
        byte[] bytes = imageFile(1, 1, 1);
        List<Reception.Kept> kept = atOnce(20, () -> receive(bytes));
        assertThat(kept.stream().filter(one -> !one.known())).hasSize(1);
        assertThat(filesIn("objects")).hasSize(1);
        assertThat(store.objects()).hasSize(1);
    }

    @Test
    void letsOneOfTwentyContradictingObjectsStand() throws Exception {
        List<byte[]> different = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            different.add(DicomFile.encode(image(1, 1, 1).put(Tag.PATIENT_ID, "PERSON-" + i)));
        }
        List<Reception> receptions = atOnce(different.stream()
                .map(bytes ->
                        (Callable<Reception>) () -> archive.receive(new ByteArrayInputStream(bytes), Optional.empty()))
                .toList());
        assertThat(receptions.stream().filter(Reception.Kept.class::isInstance)).hasSize(1);
        assertThat(filesIn("objects")).hasSize(1);
        assertThat(filesIn("quarantine")).hasSize(19);
        assertThat(archive.file(store.objects().get(0))).exists();
    }

    @Test
    void zeroesAPreambleThatCouldBeAProgram() throws IOException {
        byte[] sent = imageFile(1, 1, 1);
        byte[] program = sent.clone();
        System.arraycopy("MZ this could run".getBytes(StandardCharsets.US_ASCII), 0, program, 0, 17);
        HeldObject held = receive(program).object();
        assertThat(Files.readAllBytes(archive.file(held))).isEqualTo(sent);
        assertThat(receive(sent).known()).isTrue();
    }

    @Test
    void keepsATiffPreamble() throws IOException {
        byte[] tiff = imageFile(1, 1, 1);
        System.arraycopy(new byte[] {'I', 'I', 42, 0, 8}, 0, tiff, 0, 5);
        assertThat(Files.readAllBytes(archive.file(receive(tiff).object()))).isEqualTo(tiff);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 127, 128, 131, 132, 200, 840})
    void leavesNothingOfATruncatedObject(int length) throws IOException {
        byte[] whole = imageFile(1, 1, 1);
        assertThat(length).isLessThan(whole.length);
        assertThatThrownBy(() -> receive(java.util.Arrays.copyOf(whole, length)))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem()).isInstanceOf(Problem.MalformedObject.class));
        assertThat(everyFile()).isEmpty();
    }

    @Test
    void leavesNothingWhenTheSenderBreaksOff() throws IOException {
        byte[] whole = imageFile(1, 1, 1);
        InputStream broken = new SequenceInputStream(
                new ByteArrayInputStream(whole, 0, 700), new Failing(new IOException("the line is dead")));
        assertThatThrownBy(() -> archive.receive(broken)).isInstanceOf(UncheckedIOException.class);
        assertThat(everyFile()).isEmpty();
        assertThat(receive(whole).known()).isFalse();
    }

    @Test
    void removesLeftoversOfAnInterruptedReceiptAtTheStart() throws IOException {
        close();
        Files.write(root.resolve("data/incoming/1.tmp"), new byte[10]);
        open();
        assertThat(everyFile()).isEmpty();
    }

    @Test
    void refusesBeforeReadingWhenTheDiskIsTooFull() {
        Archive full = new Archive(folder, store, new LowWater(Long.MAX_VALUE, 0));
        InputStream untouched = new Failing(new IOException("nothing may be read"));
        assertThatThrownBy(() -> full.receive(untouched))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem()).isInstanceOf(Problem.NoRoom.class));
    }

    @Test
    void refusesObjectsThatAreNoStoredInstances() {
        byte[] directory = DicomFile.encode(image(1, 1, 1).put(Tag.SOP_CLASS_UID, "1.2.840.10008.1.3.10"));
        assertThatThrownBy(() -> receive(directory))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem()).isInstanceOf(Problem.UnsupportedObject.class));
    }

    @Test
    void refusesAnObjectOfAnotherStudyThanAddressed() throws IOException {
        Reception reception = archive.receive(new ByteArrayInputStream(imageFile(1, 1, 1)), Optional.of(studyUid(2)));
        assertThat(reception).isInstanceOf(Reception.Refused.class);
        assertThat(everyFile()).isEmpty();
    }

    @Test
    void keepsARecordWithCaseRevisionAndObjectsTogether() throws IOException {
        Filing filing = filing("case-1", "{\"a\":1}", List.of(imageFile(1, 1, 1), imageFile(1, 2, 1)));
        assertThat(archive.file(filing).added()).isTrue();
        assertThat(archive.file(filing).added()).isFalse();
        assertThat(store.revisions("case-1")).containsExactly(filing.revision());
        assertThat(store.revisionOfReport(instanceUid(1, 1, 1))).contains(filing.revision());
        assertThat(store.objects()).hasSize(2);
    }

    @Test
    void keepsNothingOfARecordWhoseCaseContradicts() throws IOException {
        archive.file(filing("case-1", "{\"a\":1}", List.of(imageFile(1, 1, 1))));
        Filing other = filing("case-1", "{\"a\":2}", List.of(imageFile(2, 1, 1)));
        assertThatThrownBy(() -> archive.file(other)).isInstanceOf(Refusal.class);
        assertThat(store.objects()).hasSize(1);
        assertThat(store.object(instanceUid(2, 1, 1))).isEmpty();
        assertThat(filesIn("incoming")).isEmpty();
    }

    @Test
    void keepsNothingOfARecordWithOneBrokenObject() throws IOException {
        Filing broken = filing("case-1", "{}", List.of(imageFile(1, 1, 1), new byte[500]));
        assertThatThrownBy(() -> archive.file(broken)).isInstanceOf(Refusal.class);
        assertThat(everyFile()).isEmpty();
        assertThat(store.storedCase("case-1")).isEmpty();
    }

    private static Filing filing(String caseId, String document, List<byte[]> objects) {
        List<String> uids = objects.size() == 2
                ? List.of(instanceUid(1, 1, 1), instanceUid(1, 2, 1))
                : List.of(instanceUid(1, 1, 1));
        StoredRevision revision = new StoredRevision(
                caseId,
                1,
                OffsetDateTime.parse("2026-01-05T10:15:00+01:00"),
                StoredRevision.State.SIGNED,
                "{}",
                uids.get(0),
                uids);
        return new Filing(
                new StoredCase(caseId, document, Instant.parse("2026-01-05T09:15:00Z")),
                revision,
                objects,
                Optional.empty(),
                Instant.parse("2026-01-05T09:15:00Z"));
    }

    private Reception.Kept receive(byte[] bytes) {
        return archive.receive(new ByteArrayInputStream(bytes));
    }

    private static <T> List<T> atOnce(int times, Callable<T> task) throws Exception {
        return atOnce(Stream.generate(() -> task).limit(times).toList());
    }

    private static <T> List<T> atOnce(List<Callable<T>> tasks) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(tasks.size());
        try {
            List<T> results = new ArrayList<>();
            for (Future<T> result : threads.invokeAll(tasks)) {
                results.add(result.get());
            }
            return results;
        } finally {
            threads.shutdownNow();
        }
    }

    private List<Path> everyFile() throws IOException {
        List<Path> all = new ArrayList<>(filesIn("incoming"));
        all.addAll(filesIn("objects"));
        all.addAll(filesIn("quarantine"));
        return all;
    }

    private List<Path> filesIn(String name) throws IOException {
        try (Stream<Path> paths = Files.walk(root.resolve("data").resolve(name))) {
            return paths.filter(Files::isRegularFile).collect(Collectors.toList());
        }
    }

    private static String mode(Path path) {
        try {
            return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Fails at the first byte asked for. */
    private static final class Failing extends InputStream {
        private final IOException problem;

        Failing(IOException problem) {
            this.problem = problem;
        }

        @Override
        public int read() throws IOException {
            throw problem;
        }

        @Override
        public int read(byte[] into, int offset, int length) throws IOException {
            throw problem;
        }
    }
}
