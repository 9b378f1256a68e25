// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static dev.plumbline.archive.InventedObjects.cine;
import static dev.plumbline.archive.InventedObjects.image;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Identifiers;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Listener.Limits;
import dev.plumbline.dimse.PeerFailure.Kind;
import dev.plumbline.dimse.ServiceUser.StoredFile;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import dev.plumbline.peer.TestCertificates;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Judged by DCMTK's programs at the other end: PS3.4 annex A (verification), B (storage), C (query), K (worklist). */
class DcmtkConformanceTest {
    private static final Requestor WE = new Requestor("PLUMBLINE", Timeouts.USUAL);

    @TempDir
    Path folder;

    private PeerProcess.Ended client(OpenListener listener, String program, String... more) throws IOException {
        List<String> command =
                new ArrayList<>(List.of(program, "-aet", OpenListener.CALLER, "-aec", OpenListener.OURS));
        List<String> last = Arrays.asList(more);
        command.addAll(last.stream()
                .filter(word ->
                        word.startsWith("-") || word.startsWith("+") || word.endsWith(".key") || word.endsWith(".crt"))
                .toList());
        command.addAll(List.of("127.0.0.1", Integer.toString(listener.port())));
        command.addAll(last.stream().filter(word -> word.endsWith(".dcm")).toList());
        return PeerProcess.run(folder, command);
    }

    @Test
    void answersEchoscu() throws Exception {
        try (OpenListener listener = new OpenListener()) {
            PeerProcess.Ended ended = client(listener, "echoscu");
            assertThat(ended.code()).as(ended.said()).isZero();
        }
    }

    @Test
    void takesWhatStorescuAndDcmsendSend() throws Exception {
        StoredFile still = OpenListener.file(folder, image(1, 1, 1));
        StoredFile moving = OpenListener.file(folder, cine(1, 1, 2, 3_000));
        try (OpenListener listener = new OpenListener()) {
            PeerProcess.Ended one =
                    client(listener, "storescu", "-xe", still.path().toString());
            assertThat(one.code()).as(one.said()).isZero();
            PeerProcess.Ended two = client(listener, "dcmsend", moving.path().toString());
            assertThat(two.code()).as(two.said()).isZero();
            for (StoredFile file : List.of(still, moving)) {
                assertThat(listener.stored.get(file.sopInstanceUid())).isEqualTo(Files.readAllBytes(file.path()));
            }
        }
    }

    /** There is no query or retrieve here: searches and objects are had by DICOMweb. */
    @Test
    void refusesWhatFindscuAndGetscuAskByName() throws Exception {
        try (OpenListener listener = new OpenListener()) {
            for (String program : List.of("findscu", "getscu")) {
                PeerProcess.Ended ended =
                        client(listener, program, "-v", "-S", "-k", "QueryRetrieveLevel=STUDY", "-k", "StudyDate");
                assertThat(ended.said()).containsIgnoringCase("presentation context");
                assertThat(ended.code()).as(ended.said()).isNotZero();
            }
            assertThat(client(listener, "echoscu").code()).isZero();
        }
    }

    @Test
    void rejectsWhoIsNotListed() throws Exception {
        try (OpenListener listener = new OpenListener()) {
            PeerProcess.Ended ended = PeerProcess.run(
                    folder,
                    List.of(
                            "echoscu",
                            "-v",
                            "-aet",
                            "STRANGER",
                            "-aec",
                            OpenListener.OURS,
                            "127.0.0.1",
                            Integer.toString(listener.port())));
            assertThat(ended.code()).isNotZero();
            assertThat(ended.said()).containsIgnoringCase("Calling AE Title Not Recognized");
        }
    }

    @Test
    void takesAndSendsOverTls() throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", "127.0.0.1");
        TestCertificates theirs = TestCertificates.make(folder, "theirs", "127.0.0.1");
        StoredFile file = OpenListener.file(folder, image(1, 1, 1));
        SSLContext context = ours.trusting(theirs);
        try (OpenListener listener = new OpenListener(Limits.USUAL, Timeouts.USUAL, Optional.of(context))) {
            PeerProcess.Ended sent = client(
                    listener,
                    "storescu",
                    "+tls",
                    theirs.key().toString(),
                    theirs.certificate().toString(),
                    "+cf",
                    ours.certificate().toString(),
                    "-xe",
                    file.path().toString());
            assertThat(sent.code()).as(sent.said()).isZero();
            assertThat(listener.stored).containsKey(file.sopInstanceUid());
            PeerProcess.Ended plain = client(listener, "echoscu");
            assertThat(plain.code()).as("without TLS nobody is let in").isNotZero();
        }
        int port = PeerProcess.freePort();
        Path received = Files.createDirectory(folder.resolve("received"));
        try (PeerProcess storescp = PeerProcess.start(
                folder,
                port,
                List.of(
                        "storescp",
                        "-aet",
                        "PACS",
                        "-od",
                        received.toString(),
                        "+tls",
                        theirs.key().toString(),
                        theirs.certificate().toString(),
                        "+cf",
                        ours.certificate().toString(),
                        Integer.toString(port)))) {
            assertThat(store(new Peer("PACS", "127.0.0.1", storescp.port(), Optional.of(() -> context)), file))
                    .isEqualTo(Reply.SUCCESS);
            try (Stream<Path> files = Files.list(received)) {
                assertThat(files).hasSize(1);
            }
            PeerFailure other = catchThrowableOfType(
                    PeerFailure.class,
                    () -> store(new Peer("PACS", "localhost", storescp.port(), Optional.of(() -> context)), file));
            assertThat(other.kind())
                    .as("the certificate is made out to 127.0.0.1")
                    .isEqualTo(Kind.TLS);
            PeerFailure untrusted = catchThrowableOfType(
                    PeerFailure.class,
                    () -> store(
                            new Peer("PACS", "127.0.0.1", storescp.port(), Optional.of(() -> ours.trusting(ours))),
                            file));
            assertThat(untrusted.kind()).isEqualTo(Kind.TLS);
        }
    }

    private static Reply store(Peer peer, StoredFile file) throws IOException {
        try (Association association =
                WE.open(peer, List.of(Wanted.use(file.sopClassUid(), List.of(file.transferSyntaxUid()))))) {
            return new ServiceUser(association, Timeouts.USUAL).store(file);
        }
    }

    @Test
    void storesFindsAndGetsBack() throws Exception {
        StoredFile still = OpenListener.file(folder, image(1, 1, 1));
        StoredFile moving = OpenListener.file(folder, cine(1, 1, 2, 3_000));
        try (QueryRetrievePeer archive = QueryRetrievePeer.start(folder);
                OpenListener memory = new OpenListener()) {
            Peer peer = new Peer(QueryRetrievePeer.AE_TITLE, "127.0.0.1", archive.port(), Optional.empty());
            List<Wanted> wanted = new ArrayList<>(OpenListener.storage());
            wanted.add(Wanted.use(SopClass.STUDY_ROOT_FIND, SopClass.PLAIN_SYNTAXES));
            wanted.add(Wanted.use(SopClass.STUDY_ROOT_GET, SopClass.PLAIN_SYNTAXES));
            try (Association association = WE.open(peer, wanted)) {
                ServiceUser user = new ServiceUser(association, Timeouts.USUAL);
                assertThat(user.echo()).isEqualTo(Reply.SUCCESS);
                assertThat(user.store(still)).isEqualTo(Reply.SUCCESS);
                assertThat(user.store(moving)).isEqualTo(Reply.SUCCESS);
                ServiceUser.Found found = user.find(SopClass.STUDY_ROOT_FIND, encoded(instances()), 10);
                assertThat(found.last()).isEqualTo(Reply.SUCCESS);
                assertThat(found.identifiers())
                        .extracting(bytes -> Identifiers.read(
                                        bytes,
                                        TransferSyntax.of(found.transferSyntaxUid())
                                                .orElseThrow())
                                .string(Tag.SOP_INSTANCE_UID)
                                .orElseThrow())
                        .containsExactlyInAnyOrder(still.sopInstanceUid(), moving.sopInstanceUid());
            }
            List<Wanted> back = List.of(
                    Wanted.use(SopClass.STUDY_ROOT_GET, SopClass.PLAIN_SYNTAXES),
                    new Wanted(InventedObjects.ULTRASOUND, List.of(OpenListener.EXPLICIT), true),
                    new Wanted(InventedObjects.MULTI_FRAME, List.of(OpenListener.EXPLICIT), true));
            try (Association association = WE.open(peer, back)) {
                Reply got = new ServiceUser(association, Timeouts.USUAL).get(encoded(study()), memory);
                assertThat(got).isEqualTo(Reply.SUCCESS);
            }
            for (StoredFile file : List.of(still, moving)) {
                assertThat(dataSet(memory.stored.get(file.sopInstanceUid())))
                        .isEqualTo(dataSet(Files.readAllBytes(file.path())));
            }
        }
    }

    private static byte[] dataSet(byte[] file) throws IOException {
        try (InputStream in = new java.io.ByteArrayInputStream(file)) {
            FileMeta.skip(in);
            return in.readAllBytes();
        }
    }

    private static ServiceUser.Encoded encoded(DataSet identifier) {
        return syntax -> Identifiers.write(identifier, TransferSyntax.of(syntax).orElseThrow());
    }

    private static DataSet study() {
        return new DataSet()
                .put(Tag.QUERY_RETRIEVE_LEVEL, "STUDY")
                .put(Tag.STUDY_INSTANCE_UID, InventedObjects.studyUid(1));
    }

    private static DataSet instances() {
        return study().put(Tag.QUERY_RETRIEVE_LEVEL, "IMAGE")
                .put(Tag.SERIES_INSTANCE_UID, InventedObjects.seriesUid(1, 1))
                .putEmpty(Tag.SOP_INSTANCE_UID);
    }
}
