// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.problem.Refusal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * When a certificate that a site's TLS stands on ends: one of ours, or one that peers' certificates must lead to.
 *
 * @param user the door or the peer that it is used for
 * @param end of the first one that ends in the file
 */
public record CertificateEnd(String user, Path file, Instant end) {
    /** How long before somebody has to be told. Source: design choice, TRUST 3.5. */
    private static final Duration SOON = Duration.ofDays(30);

    /** Of every file of the configuration that can be read. */
    public static List<CertificateEnd> of(Network network) {
        Map<String, TlsFiles> users = new LinkedHashMap<>();
        network.door().flatMap(Network.Door::tls).ifPresent(tls -> users.put("the DICOM door", tls));
        for (SitePeer peer : network.peers()) {
            peer.dicom()
                    .flatMap(SitePeer.Dicom::at)
                    .flatMap(SitePeer.Place::tls)
                    .ifPresent(tls -> users.put(peer.name(), tls));
            peer.web().flatMap(SitePeer.Web::tls).ifPresent(tls -> users.put(peer.name(), tls));
        }
        List<CertificateEnd> ends = new ArrayList<>();
        users.forEach((user, tls) -> {
            tls.certificate().flatMap(file -> read(user, file)).ifPresent(ends::add);
            tls.trust().flatMap(file -> read(user, file)).ifPresent(ends::add);
        });
        return ends;
    }

    /** Empty where the file cannot be read; who connects with it says so. */
    private static Optional<CertificateEnd> read(String user, Path file) {
        try {
            return TlsFiles.end(file).map(end -> new CertificateEnd(user, file, end));
        } catch (Refusal unreadable) {
            return Optional.empty();
        }
    }

    private static String days(Duration left) {
        return left.toDays() == 1 ? "1 day" : left.toDays() + " days";
    }

    /** What somebody has to be told, if it is time. */
    public Optional<String> warning(Instant now) {
        Duration left = Duration.between(now, end);
        if (left.compareTo(SOON) >= 0) {
            return Optional.empty();
        }
        String which = "A certificate of " + user + " (" + file + ") ";
        return Optional.of(
                left.isNegative()
                        ? which + "ended on " + end + ". Renew it: a running service takes the new files by itself."
                        : which + "ends in " + days(left)
                                + ". Renew it: a running service takes the new files by itself.");
    }
}
