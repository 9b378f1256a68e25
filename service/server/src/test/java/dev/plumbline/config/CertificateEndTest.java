// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.peer.TestCertificates;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CertificateEndTest {
    @TempDir
    Path folder;

    private List<CertificateEnd> ends() throws Exception {
        TestCertificates.make(folder, "ours", "127.0.0.1");
        TestCertificates.make(folder, "theirs", "127.0.0.1");
        Path file = folder.resolve("plumbline.json");
        Files.writeString(file, """
                { "schema": "plumbline-service/1",
                  "dicom": { "port": 0, "tls": { "certificate": "ours.crt", "key": "ours.key", "trust": "theirs.crt" } },
                  "peers": [ { "name": "web", "url": "https://localhost/", "tls": { "trust": "absent.crt" } } ] }
                """);
        return CertificateEnd.of(ServiceConfig.read(file).network());
    }

    @Test
    void tellsOfEveryCertificateThatEndsWithinThirtyDays() throws Exception {
        List<CertificateEnd> ends = ends();
        assertThat(ends)
                .extracting(end -> end.file().getFileName().toString())
                .containsExactly("ours.crt", "theirs.crt");
        Instant end = ends.get(0).end();
        assertThat(ends.get(0).warning(end.minus(Duration.ofDays(31)))).isEmpty();
        assertThat(ends.get(0).warning(end.minus(Duration.ofDays(29))).orElseThrow())
                .contains("the DICOM door", "ours.crt", "ends in 29 days");
        assertThat(ends.get(0).warning(end.minus(Duration.ofHours(30))).orElseThrow())
                .contains("ends in 1 day.");
        assertThat(ends.get(0).warning(end.plusSeconds(1)).orElseThrow()).contains("ended on");
    }
}
