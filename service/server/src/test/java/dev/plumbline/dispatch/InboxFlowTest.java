// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.HostileUids;
import dev.plumbline.archive.Intake;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.Quotas;
import dev.plumbline.archive.Sender;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dimse.AddressRange;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Callers;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.ServiceUser;
import dev.plumbline.dimse.ServiceUser.StoredFile;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.dimse.Wanted;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What our storage provider answers to what it is sent, at the wire. TRUST 2.2 (traversal, mismatch, substitution). */
class InboxFlowTest {
    private static final String EXPLICIT = "1.2.840.10008.1.2.1";
    private static final long QUOTA = 100_000_000;
    private static final Sender US1 = Sender.peer("US1");
    private static final String UID = InventedObjects.instanceUid(1, 1, 1);

    @TempDir
    Path root;

    private DataFolder folder;
    private SqliteStore store;
    private Listener listener;
    private Association association;

    @BeforeEach
    void open() throws IOException {
        folder = DataFolder.open(Files.createDirectories(root.resolve("deep/er/data")));
        store = SqliteStore.open(folder.database());
        Quotas quotas = new Quotas(Map.of(US1, QUOTA), Clock.systemUTC());
        Archive archive =
                new Archive(folder, store, new Intake(new LowWater(0, 0), Intake.MOST_BYTES, quotas), Outbound.NOWHERE);
        listener = Listener.start(
                new Listener.Settings(
                        "PLUMBLINE",
                        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
                        Optional.empty(),
                        new Callers(Map.of("US1", List.of(AddressRange.of("127.0.0.1")))),
                        Listener.Limits.USUAL,
                        Timeouts.USUAL),
                new Inbox(archive, Clock.systemUTC()));
        Peer peer = new Peer("PLUMBLINE", "127.0.0.1", listener.port(), Optional.empty());
        association = new Requestor("US1", Timeouts.USUAL)
                .open(
                        peer,
                        List.of(
                                Wanted.use(InventedObjects.ULTRASOUND, List.of(EXPLICIT)),
                                Wanted.use(InventedObjects.MULTI_FRAME, List.of(EXPLICIT))));
    }

    @AfterEach
    void close() throws IOException {
        association.close();
        listener.close();
        store.close();
        folder.close();
    }

    private Status sent(byte[] file, String sopClass, String uid) throws IOException {
        Path path = Files.write(Files.createTempFile("sent", ".dcm"), file);
        try {
            Reply reply =
                    new ServiceUser(association, Timeouts.USUAL).store(new StoredFile(path, sopClass, uid, EXPLICIT));
            return Status.of(reply.status());
        } finally {
            Files.delete(path);
        }
    }

    private Status sent(DataSet object) throws IOException {
        return sent(DicomFile.encode(object), InventedObjects.ULTRASOUND, UID);
    }

    private void assertNothingOutsideTheStore() throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            assertThat(files.filter(Files::isRegularFile))
                    .allSatisfy(file -> assertThat(file).startsWith(folder.root()));
        }
    }

    @Test
    void keepsAnObjectAndKnowsItAgain() throws IOException {
        DataSet image = InventedObjects.image(1, 1, 1);
        assertThat(sent(image)).isEqualTo(Status.SUCCESS);
        assertThat(sent(image)).isEqualTo(Status.SUCCESS);
        assertThat(store.objects()).hasSize(1);
        assertNothingOutsideTheStore();
    }

    @Test
    void answersA700WithTheQuotaToAPeerThatHasUsedItUp() throws IOException {
        assertThat(sent(InventedObjects.image(1, 1, 1))).isEqualTo(Status.SUCCESS);
        store.write(writing -> writing.received(US1, LocalDate.now(Clock.systemUTC()), QUOTA));
        assertThat(sent(InventedObjects.image(1, 1, 2))).isEqualTo(Status.OUT_OF_RESOURCES);
        assertThat(store.objects()).hasSize(1);
    }

    @Test
    void answers0111ToAnotherObjectUnderAHeldUid() throws IOException {
        assertThat(sent(InventedObjects.image(1, 1, 1))).isEqualTo(Status.SUCCESS);
        assertThat(sent(InventedObjects.image(1, 1, 1).put(Tag.PATIENT_NAME, "Other^Person")))
                .isEqualTo(Status.DUPLICATE_INSTANCE);
        assertThat(store.objects()).hasSize(1);
        assertThat(folder.root().resolve("quarantine")).isNotEmptyDirectory();
    }

    @Test
    void answersA900WhereTheDataSetIsAnotherThanTheCommandSays() throws IOException {
        byte[] image = InventedObjects.imageFile(1, 1, 1);
        String other = InventedObjects.instanceUid(1, 1, 2);
        assertThat(sent(image, InventedObjects.ULTRASOUND, other)).isEqualTo(Status.DATA_SET_DOES_NOT_MATCH);
        assertThat(sent(image, InventedObjects.MULTI_FRAME, UID)).isEqualTo(Status.DATA_SET_DOES_NOT_MATCH);
        assertThat(sent(image, InventedObjects.MULTI_FRAME, other)).isEqualTo(Status.DATA_SET_DOES_NOT_MATCH);
        assertThat(store.objects()).isEmpty();
    }

    @Test
    void answersC000ToWhatIsNotWhole() throws IOException {
        byte[] image = InventedObjects.imageFile(1, 1, 1);
        for (int missing : List.of(1, 10, 100, 200)) {
            byte[] cut = Arrays.copyOf(image, image.length - missing);
            assertThat(sent(cut, InventedObjects.ULTRASOUND, UID))
                    .as("without its last " + missing + " bytes")
                    .isIn(Status.CANNOT_UNDERSTAND, Status.DATA_SET_DOES_NOT_MATCH);
        }
        assertThat(sent(Arrays.copyOf(image, image.length - 1), InventedObjects.ULTRASOUND, UID))
                .isEqualTo(Status.CANNOT_UNDERSTAND);
        assertThat(store.objects()).isEmpty();
    }

    @Test
    void answers0122ToAnObjectBeyondItsLimits() throws IOException {
        DataSet innermost = new DataSet().put(Tag.CODE_VALUE, "1");
        for (int depth = 0; depth < 40; depth++) {
            innermost = new DataSet().put(Tag.CONCEPT_NAME_CODE_SEQUENCE, List.of(innermost));
        }
        DataSet deep = InventedObjects.image(1, 1, 1).put(Tag.CONCEPT_NAME_CODE_SEQUENCE, List.of(innermost));
        assertThat(sent(deep)).isEqualTo(Status.CLASS_NOT_SUPPORTED);
        assertThat(store.objects()).isEmpty();
    }

    @Test
    void writesNothingUnderAHostileUid() throws IOException {
        for (String uid : HostileUids.all()) {
            assertThat(sent(InventedObjects.imageFile(1, 1, 1), InventedObjects.ULTRASOUND, uid))
                    .as(uid)
                    .isEqualTo(Status.INVALID_INSTANCE);
            for (int tag : List.of(Tag.SOP_INSTANCE_UID, Tag.STUDY_INSTANCE_UID, Tag.SERIES_INSTANCE_UID)) {
                assertThat(sent(InventedObjects.image(1, 1, 1).put(tag, uid)))
                        .as(uid)
                        .isIn(Status.DATA_SET_DOES_NOT_MATCH, Status.CANNOT_UNDERSTAND);
            }
        }
        assertThat(store.objects()).isEmpty();
        assertThat(folder.root().resolve("incoming")).isEmptyDirectory();
        try (Stream<Path> files = Files.walk(folder.root().resolve("objects"))) {
            assertThat(files.filter(Files::isRegularFile)).isEmpty();
        }
        assertNothingOutsideTheStore();
    }
}
