// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLHandshakeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TlsWordsTest {
    /** Source of the messages: as Java 17 gives them. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "unable to find valid certification path to requested target|leads to none that is trusted here",
                "No name matching pacs found|is not made out to the host that was called",
                "Unsupported or unrecognized SSL message|it does not speak TLS at this port",
                "Received fatal alert: protocol_version|it speaks no version of TLS that is allowed here, 1.3 and 1.2",
                "Received fatal alert: certificate_required|it wants a certificate from us",
                "Received fatal alert: bad_certificate|it does not accept our certificate",
                "Received fatal alert: unknown_ca|it does not trust our certificate",
                "something new|something new"
            })
    void saysWhyAHandshakeFailed(String message, String words) {
        SSLException failure = new SSLHandshakeException("PKIX path building failed");
        failure.initCause(new IllegalStateException(message));
        boolean known = !message.equals(words);
        assertThat(TlsWords.of(known ? failure : new SSLException(message)))
                .startsWith("The TLS handshake with the peer failed: ")
                .endsWith(words + ".");
    }

    @Test
    void aCertificateThatHasEndedOrNotBegunIsSaidToBeOne() {
        assertThat(TlsWords.of(new SSLException("PKIX", new CertificateExpiredException("NotAfter"))))
                .endsWith("its certificate has ended.");
        assertThat(TlsWords.of(new SSLException("PKIX", new CertificateNotYetValidException("NotBefore"))))
                .endsWith("its certificate has not begun.");
    }
}
