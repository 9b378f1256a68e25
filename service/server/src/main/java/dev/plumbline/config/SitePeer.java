// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Another system a site's service speaks with: by associations or by DICOMweb.
 *
 * @param name ours for it, in lists and messages
 * @param uses what it is used for
 */
public record SitePeer(String name, Optional<Dicom> dicom, Optional<Web> web, List<Use> uses) {
    public SitePeer {
        uses = List.copyOf(uses);
    }

    /** What a peer is used for; one that is used for nothing may only call us. */
    public enum Use {
        /** Signed records are sent to it. */
        ARCHIVE("archive"),
        /** It is asked for scheduled procedures. */
        WORKLIST("worklist");

        private final String word;

        Use(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * By associations.
     *
     * @param at where we call it; empty for one that only calls us
     * @param from how it calls us
     * @param proof how what was sent to it is proved
     */
    public record Dicom(String aeTitle, Optional<Place> at, CalledFrom from, ProofBy proof) {
        /** From where it may call us. */
        public List<String> addresses() {
            return from.addresses();
        }
    }

    /**
     * How it calls us.
     *
     * @param addresses from where it may, addresses or ranges
     * @param certificates one of which it must show over TLS, by subject or SHA-256 fingerprint; any trusted one where empty
     * @param dailyBytes how much it may add to the archive in one day; any number where empty
     */
    public record CalledFrom(List<String> addresses, List<String> certificates, OptionalLong dailyBytes) {
        public CalledFrom {
            addresses = List.copyOf(addresses);
            certificates = List.copyOf(certificates);
        }
    }

    /** Where a peer is called; with TLS its certificate must be made out to the host. */
    public record Place(String host, int port, Optional<TlsFiles> tls) {}

    /**
     * By DICOMweb.
     *
     * @param url such as {@code https://pacs.example.org/dicom-web}
     * @param tokenFile holds the bearer token; read for each request
     */
    public record Web(URI url, Optional<Path> tokenFile, Optional<TlsFiles> tls) {}
}
