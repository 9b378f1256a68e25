// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.util.HexFormat;
import java.util.Locale;
import javax.security.auth.x500.X500Principal;

/** Which certificate a caller has to show: by its subject, or by its SHA-256 fingerprint. */
public sealed interface CertificateName {
    boolean names(X509Certificate certificate);

    /** Whatever certificate has this subject; those that issue certificates see to it that only one peer has it. */
    record Subject(X500Principal subject) implements CertificateName {
        @Override
        public boolean names(X509Certificate certificate) {
            return certificate.getSubjectX500Principal().equals(subject);
        }
    }

    /** This one certificate; 64 hexadecimal digits in small letters. */
    record Fingerprint(String sha256) implements CertificateName {
        @Override
        public boolean names(X509Certificate certificate) {
            try {
                byte[] digest = MessageDigest.getInstance("SHA-256").digest(certificate.getEncoded());
                return HexFormat.of().formatHex(digest).equals(sha256);
            } catch (NoSuchAlgorithmException | CertificateEncodingException e) {
                throw new IllegalStateException("Java has SHA-256, and the certificate was read.", e);
            }
        }
    }

    /**
     * Reads a fingerprint, with colons or without, or a subject such as {@code CN=us1,O=Hospital} (RFC 2253).
     *
     * @throws IllegalArgumentException where it is neither
     */
    static CertificateName of(String text) {
        String digits = text.replace(":", "").toLowerCase(Locale.ROOT);
        if (digits.matches("[0-9a-f]{64}")) {
            return new Fingerprint(digits);
        }
        if (text.isBlank()) {
            throw new IllegalArgumentException("A subject has at least one part, such as CN=us1.");
        }
        return new Subject(new X500Principal(text));
    }
}
