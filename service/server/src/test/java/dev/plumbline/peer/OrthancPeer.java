// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.peer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Orthanc with its DICOMweb plugin: an independent archive. */
public final class OrthancPeer implements AutoCloseable {
    public static final String AE_TITLE = "ORTHANC";

    private final PeerProcess process;
    private final int httpPort;
    private final int dicomPort;

    private OrthancPeer(PeerProcess process, int httpPort, int dicomPort) {
        this.process = process;
        this.httpPort = httpPort;
        this.dicomPort = dicomPort;
    }

    /**
     * One that sends us on whatever others store in it, and whose DICOMweb is where a viewer of ours looks for it.
     *
     * @param ourPort where we accept associations
     */
    public static OrthancPeer forwarding(Path folder, int ourPort) throws IOException {
        Path script = Files.writeString(folder.resolve("forward.lua"), """
                function OnStoredInstance(instanceId, tags, metadata, origin)
                  if origin['RemoteAet'] ~= 'PLUMBLINE' then
                    SendToModality(instanceId, 'us')
                  end
                end
                """);
        return start(folder, ourPort, "/dicomweb/", "\"" + script + "\"");
    }

    /** @param ourPort where it reports on storage commitment */
    public static OrthancPeer start(Path folder, int ourPort) throws IOException {
        return start(folder, ourPort, "/dicom-web/", "");
    }

    private static OrthancPeer start(Path folder, int ourPort, String dicomWeb, String scripts) throws IOException {
        int http = PeerProcess.freePort();
        int dicom = PeerProcess.freePort();
        Path store = Files.createDirectories(folder.resolve("orthanc"));
        Path config = folder.resolve("orthanc.json");
        Files.writeString(config, """
                { "Name": "test", "StorageDirectory": "%1$s", "IndexDirectory": "%1$s", "HttpPort": %2$d,
                  "RemoteAccessAllowed": false, "AuthenticationEnabled": false, "DicomAet": "ORTHANC", "DicomPort": %3$d,
                  "DicomCheckCalledAet": false, "DicomAlwaysAllowEcho": true, "DicomAlwaysAllowStore": true,
                  "DicomAlwaysAllowFind": true, "DicomAlwaysAllowGet": true, "DicomAlwaysAllowMove": true,
                  "OverwriteInstances": false,
                  "DicomModalities": { "us": { "AET": "PLUMBLINE", "Host": "127.0.0.1", "Port": %4$d,
                    "AllowStorageCommitment": true } },
                  "Plugins": ["/usr/share/orthanc/plugins/libOrthancDicomWeb.so"],
                  "DicomWeb": { "Enable": true, "Root": "%5$s" }, "LuaScripts": [%6$s] }
                """.formatted(store, http, dicom, ourPort, dicomWeb, scripts));
        return new OrthancPeer(
                PeerProcess.start(folder, http, List.of("/usr/sbin/Orthanc", config.toString())), http, dicom);
    }

    public int httpPort() {
        return httpPort;
    }

    public int dicomPort() {
        return dicomPort;
    }

    @Override
    public void close() throws IOException {
        process.close();
    }
}
