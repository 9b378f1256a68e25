// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dimse.Listener.Limits;
import dev.plumbline.dimse.ServiceUser.StoredFile;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import javax.net.ssl.SSLContext;

/** Our listener on a free loopback port; what it is sent is kept in memory. */
final class OpenListener implements AutoCloseable, Services {
    static final String OURS = "PLUMBLINE";
    static final String CALLER = "CALLER";
    static final Timeouts QUICK =
            new Timeouts(Duration.ofSeconds(1), Duration.ofSeconds(2), Duration.ofSeconds(2), Duration.ofSeconds(2));

    final Map<String, byte[]> stored = new ConcurrentHashMap<>();
    final Queue<CommitmentReport> reports = new ConcurrentLinkedQueue<>();
    private final Listener listener;

    OpenListener(Limits limits, Timeouts timeouts, Optional<SSLContext> tls) {
        listener = Listener.start(
                new Listener.Settings(
                        OURS,
                        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
                        tls.map(each -> () -> each),
                        new Callers(Map.of(CALLER, List.of(AddressRange.of("127.0.0.0/8")))),
                        limits,
                        timeouts),
                this);
    }

    OpenListener() {
        this(Limits.USUAL, Timeouts.USUAL, Optional.empty());
    }

    int port() {
        return listener.port();
    }

    int associations() {
        return listener.associations();
    }

    Peer peer() {
        return new Peer(OURS, "127.0.0.1", port(), Optional.empty());
    }

    /** An association in which we are the caller that is let in. */
    Association open(List<Wanted> wanted) throws PeerFailure {
        return new Requestor(CALLER, Timeouts.USUAL).open(peer(), wanted);
    }

    @Override
    public Reply store(Incoming object, InputStream file) throws IOException {
        stored.put(object.sopInstanceUid(), file.readAllBytes());
        return Reply.SUCCESS;
    }

    @Override
    public Reply commitment(CommitmentReport report) {
        reports.add(report);
        return Reply.SUCCESS;
    }

    static final String EXPLICIT = "1.2.840.10008.1.2.1";

    static List<Wanted> storage() {
        return List.of(
                Wanted.use(SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES),
                Wanted.use(InventedObjects.ULTRASOUND, List.of(EXPLICIT)),
                Wanted.use(InventedObjects.MULTI_FRAME, List.of(EXPLICIT)));
    }

    /** An object as a file in the folder. */
    static StoredFile file(Path folder, DataSet object) throws IOException {
        String uid = object.string(Tag.SOP_INSTANCE_UID).orElseThrow();
        Path path = folder.resolve(uid + ".dcm");
        Files.write(path, DicomFile.encode(object));
        return new StoredFile(path, object.string(Tag.SOP_CLASS_UID).orElseThrow(), uid, EXPLICIT);
    }

    @Override
    public void close() {
        listener.close();
    }
}
