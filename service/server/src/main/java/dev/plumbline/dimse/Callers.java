// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.net.InetAddress;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Who may call us, from where and with which certificate; nobody else is answered.
 *
 * @param ranges by calling AE title
 * @param certificates one of which a caller must show, by calling AE title; any trusted one where none is named
 */
public record Callers(Map<String, List<AddressRange>> ranges, Map<String, List<CertificateName>> certificates) {
    public Callers {
        ranges = Map.copyOf(ranges);
        certificates = Map.copyOf(certificates);
    }

    public Callers(Map<String, List<AddressRange>> ranges) {
        this(ranges, Map.of());
    }

    boolean mayCall(String aeTitle, Caller caller) {
        return ranges.getOrDefault(aeTitle, List.of()).stream().anyMatch(range -> range.holds(caller.from()))
                && showsItsCertificate(aeTitle, caller);
    }

    private boolean showsItsCertificate(String aeTitle, Caller caller) {
        List<CertificateName> named = certificates.getOrDefault(aeTitle, List.of());
        return named.isEmpty()
                || caller.certificate().stream()
                        .anyMatch(shown -> named.stream().anyMatch(name -> name.names(shown)));
    }

    boolean mayAnybodyCallFrom(InetAddress from) {
        return ranges.values().stream().flatMap(List::stream).anyMatch(range -> range.holds(from));
    }

    public Set<String> aeTitles() {
        return ranges.keySet();
    }
}
