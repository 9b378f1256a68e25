// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.peer;

import dev.plumbline.config.TlsFiles;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLContext;

/** A self-signed certificate for 127.0.0.1 and its key, made by openssl for one test. */
public record TestCertificates(Path certificate, Path key) {
    public static TestCertificates make(Path folder, String name, String host) throws IOException {
        Path certificate = folder.resolve(name + ".crt");
        Path key = folder.resolve(name + ".key");
        String names = host.matches("[0-9.]+") ? "IP:" + host : "DNS:" + host;
        PeerProcess.Ended ended = PeerProcess.run(
                folder,
                List.of(
                        "openssl",
                        "req",
                        "-x509",
                        "-newkey",
                        "rsa:2048",
                        "-nodes",
                        "-days",
                        "2",
                        "-subj",
                        "/CN=" + name,
                        "-addext",
                        "subjectAltName=" + names,
                        "-keyout",
                        key.toString(),
                        "-out",
                        certificate.toString()));
        if (ended.code() != 0) {
            throw new IOException(ended.said());
        }
        return new TestCertificates(certificate, key);
    }

    /** Shows this certificate and trusts the other. */
    public SSLContext trusting(TestCertificates other) {
        return new TlsFiles(Optional.of(certificate), Optional.of(key), Optional.of(other.certificate)).context();
    }
}
