// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;

/** Why a TLS handshake failed, as somebody who has to mend it needs it; the platform's own words where nothing else is known. */
public final class TlsWords {
    /** What the platform says, and what that means. Source: as seen with Java 17; what is not found here is shown as it is. */
    private static final List<Map.Entry<String, String>> KNOWN = List.of(
            Map.entry("unable to find valid certification path", "its certificate leads to none that is trusted here"),
            Map.entry(
                    "Path does not chain with any of the trust anchors",
                    "its certificate leads to none that is trusted here"),
            Map.entry("No subject alternative", "its certificate is not made out to the host that was called"),
            Map.entry("No name matching", "its certificate is not made out to the host that was called"),
            Map.entry("SSL message", "it does not speak TLS at this port"),
            Map.entry(
                    "Remote host terminated the handshake",
                    "it ended the connection instead; perhaps it speaks no TLS"),
            Map.entry("protocol_version", "it speaks no version of TLS that is allowed here, 1.3 and 1.2"),
            Map.entry("certificate_required", "it wants a certificate from us"),
            Map.entry("bad_certificate", "it does not accept our certificate"),
            Map.entry("unknown_ca", "it does not trust our certificate"));

    private TlsWords() {}

    /** One sentence. */
    public static String of(SSLException failure) {
        List<Throwable> causes = Stream.iterate((Throwable) failure, each -> each != null, Throwable::getCause)
                .toList();
        String why = ofValidity(causes)
                .or(() -> KNOWN.stream()
                        .filter(known -> causes.stream()
                                .anyMatch(cause ->
                                        String.valueOf(cause.getMessage()).contains(known.getKey())))
                        .map(Map.Entry::getValue)
                        .findFirst())
                .orElseGet(() -> String.valueOf(failure.getMessage()));
        return "The TLS handshake with the peer failed: " + why + ".";
    }

    private static Optional<String> ofValidity(List<Throwable> causes) {
        if (causes.stream().anyMatch(CertificateExpiredException.class::isInstance)) {
            return Optional.of("its certificate has ended");
        }
        return causes.stream().anyMatch(CertificateNotYetValidException.class::isInstance)
                ? Optional.of("its certificate has not begun")
                : Optional.empty();
    }
}
