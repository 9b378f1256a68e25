// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.peer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** DCMTK's dcmqrscp: an archive that stores, finds and hands out. */
public final class QueryRetrievePeer implements AutoCloseable {
    public static final String AE_TITLE = "QRSCP";

    private final PeerProcess process;
    private final Path store;

    private QueryRetrievePeer(PeerProcess process, Path store) {
        this.process = process;
        this.store = store;
    }

    public static QueryRetrievePeer start(Path folder) throws IOException {
        return start(folder, PeerProcess.freePort());
    }

    public static QueryRetrievePeer start(Path folder, int port) throws IOException {
        Path store = Files.createDirectories(folder.resolve("qr"));
        Path config = folder.resolve("dcmqrscp.cfg");
        Files.writeString(config, """
                NetworkTCPPort = %d
                MaxPDUSize = 65536
                MaxAssociations = 16
                HostTable BEGIN
                HostTable END
                VendorTable BEGIN
                VendorTable END
                AETable BEGIN
                QRSCP %s RW (5000, 1024mb) ANY
                AETable END
                """.formatted(port, store));
        return new QueryRetrievePeer(
                PeerProcess.start(folder, port, List.of("dcmqrscp", "-c", config.toString())), store);
    }

    public int port() {
        return process.port();
    }

    /** Where it keeps what it was sent. */
    public Path store() {
        return store;
    }

    @Override
    public void close() throws IOException {
        process.close();
    }
}
