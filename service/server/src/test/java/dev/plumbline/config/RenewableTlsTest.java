// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.peer.TestCertificates;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** TLS files that change while the service runs. */
class RenewableTlsTest {
    private static final String HOST = "127.0.0.1";

    @TempDir
    Path folder;

    private TestCertificates used;
    private TestCertificates next;
    private TlsFiles files;

    @BeforeEach
    void make() throws IOException {
        used = TestCertificates.make(folder, "used", HOST);
        next = TestCertificates.make(folder, "next", HOST);
        files = new TlsFiles(Optional.of(used.certificate()), Optional.of(used.key()), Optional.of(used.certificate()));
    }

    private RenewableTls renewable(Clock clock) {
        return new RenewableTls("pacs", files, clock);
    }

    private static void replace(Path file, Path by) throws IOException {
        Files.copy(by, file, StandardCopyOption.REPLACE_EXISTING);
    }

    @Test
    void theSameContentIsTheSameContextThoughTheFilesWereWrittenAgain() throws IOException {
        RenewableTls tls = renewable(Clock.systemUTC());
        SSLContext before = tls.get();
        Files.write(used.key(), Files.readAllBytes(used.key()));
        assertThat(tls.get()).isSameAs(before);
        assertThat(tls.warning()).isEmpty();
    }

    @Test
    void halfARenewalChangesNothingAndIsToldUntilItIsWhole() throws IOException {
        RenewableTls tls = renewable(Clock.systemUTC());
        SSLContext before = tls.get();
        replace(used.certificate(), next.certificate());
        assertThat(tls.get()).isSameAs(before);
        assertThat(tls.warning().orElseThrow())
                .contains("The TLS files of pacs were changed and cannot be used", "the ones before stay in use")
                .contains("used.key is not the one of the first certificate in");
        replace(used.key(), next.key());
        assertThat(tls.get()).isNotSameAs(before);
        assertThat(tls.warning()).isEmpty();
    }

    @Test
    void filesThatAreBrokenOrGoneChangeNothingAndAreForgottenWhenTheyComeBack() throws IOException {
        RenewableTls tls = renewable(Clock.systemUTC());
        SSLContext before = tls.get();
        byte[] key = Files.readAllBytes(used.key());
        Files.writeString(used.key(), "broken");
        assertThat(tls.get()).isSameAs(before);
        assertThat(tls.warning().orElseThrow()).contains("used.key");
        Files.delete(used.key());
        assertThat(tls.get()).isSameAs(before);
        assertThat(tls.warning()).isPresent();
        Files.write(used.key(), key);
        assertThat(tls.get()).isSameAs(before);
        assertThat(tls.warning()).isEmpty();
    }

    @Test
    void aCertificateThatHasEndedDoesNotReplaceOne() throws IOException {
        RenewableTls tls = renewable(Clock.offset(Clock.systemUTC(), Duration.ofDays(30)));
        SSLContext before = tls.get();
        replace(used.certificate(), next.certificate());
        replace(used.key(), next.key());
        assertThat(tls.get()).isSameAs(before);
        assertThat(tls.warning().orElseThrow()).contains("has ended, or has not begun");
    }

    @Test
    void aKeyOfAnotherCertificateIsRefusedAtOnce() throws IOException {
        replace(used.key(), next.key());
        assertThatThrownBy(() -> renewable(Clock.systemUTC()))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is not the one of the first certificate");
    }
}
