// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.config.Network;
import dev.plumbline.config.RenewableTls;
import dev.plumbline.config.SitePeer;
import dev.plumbline.config.TlsFiles;
import dev.plumbline.dimse.AddressRange;
import dev.plumbline.dimse.Callers;
import dev.plumbline.dimse.CertificateName;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import javax.net.ssl.SSLContext;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a site configured about its peers, as what speaks with them needs it. */
public final class SitePeers {
    private static final Logger LOG = LoggerFactory.getLogger(SitePeers.class);

    private final Network network;
    private final Clock clock;
    private final Map<Use, RenewableTls> tls = new ConcurrentHashMap<>();

    /** Files in the hands of one user; others may have the same ones and have to be named, too. */
    private record Use(String user, TlsFiles files) {}

    public SitePeers(Network network, Clock clock) {
        this.network = network;
        this.clock = clock;
    }

    /**
     * Certificates to show and to trust, as their files hold them at the time.
     *
     * @param user the door or the peer that they are used for
     * @throws Refusal where they cannot be used now
     */
    public Supplier<SSLContext> tls(String user, TlsFiles files) {
        return tls.computeIfAbsent(new Use(user, files), use -> new RenewableTls(user, files, clock));
    }

    /** Of TLS files that were changed since they were first used and cannot be used now. */
    public List<String> brokenTls() {
        return tls.values().stream()
                .flatMap(each -> each.warning().stream())
                .sorted()
                .toList();
    }

    /** How long is waited. */
    public Timeouts timeouts() {
        Network.Waits waits = network.waits();
        return new Timeouts(
                Duration.ofSeconds(waits.artimSeconds()),
                Duration.ofSeconds(waits.idleSeconds()),
                Duration.ofSeconds(waits.connectSeconds()),
                Duration.ofSeconds(waits.responseSeconds()));
    }

    /** We, when we call. */
    public Requestor requestor() {
        return new Requestor(network.aeTitle(), timeouts());
    }

    /** A peer that we call by associations. */
    public Optional<Peer> peer(SitePeer site) {
        return site.dicom()
                .flatMap(dicom -> dicom.at()
                        .map(place -> new Peer(
                                dicom.aeTitle(),
                                place.host(),
                                place.port(),
                                place.tls().map(files -> tls(site.name(), files)))));
    }

    /** A peer that we call by DICOMweb. */
    public Optional<WebPeer> web(SitePeer site) {
        return site.web()
                .map(web -> new WebPeer(
                        new WebPeer.Place(web.url(), web.tokenFile(), web.tls().map(files -> tls(site.name(), files))),
                        timeouts().connect(),
                        timeouts().response()));
    }

    /** The archives that records are sent to. */
    public List<Destination> destinations(Archive archive) {
        List<Destination> destinations = new ArrayList<>();
        for (SitePeer site : network.peers(SitePeer.Use.ARCHIVE)) {
            web(site).ifPresent(web -> destinations.add(Destinations.web(site.name(), archive, web, clock)));
            peer(site)
                    .ifPresent(peer -> destinations.add(Destinations.dicom(
                            site.name(),
                            archive,
                            requestor(),
                            peer,
                            site.dicom().orElseThrow().proof())));
        }
        return destinations;
    }

    /**
     * Who may call us, from where and with which certificate: from the addresses that are stated, else those of the host
     * that we call. Where several peers have one AE title, what is stated of each of them holds for all.
     *
     * @throws Refusal where an address or a certificate's name is none
     */
    public Callers callers() {
        Map<String, List<AddressRange>> ranges = new LinkedHashMap<>();
        Map<String, List<CertificateName>> certificates = new LinkedHashMap<>();
        List<SitePeer> peers = network.peers();
        for (int i = 0; i < peers.size(); i++) {
            if (peers.get(i).dicom().isPresent()) {
                SitePeer.Dicom dicom = peers.get(i).dicom().get();
                ranges.computeIfAbsent(dicom.aeTitle(), title -> new ArrayList<>())
                        .addAll(ranges(dicom, "/peers/" + i + "/addresses"));
                certificates
                        .computeIfAbsent(dicom.aeTitle(), title -> new ArrayList<>())
                        .addAll(certificates(dicom, "/peers/" + i + "/certificates"));
            }
        }
        return new Callers(ranges, certificates);
    }

    private static List<CertificateName> certificates(SitePeer.Dicom dicom, String pointer) {
        try {
            return dicom.from().certificates().stream().map(CertificateName::of).toList();
        } catch (IllegalArgumentException e) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "One of the certificates is neither a subject nor a fingerprint.",
                    "Give such as CN=us1,O=Hospital, or the 64 digits of: openssl x509 -noout -fingerprint -sha256."));
        }
    }

    private static List<AddressRange> ranges(SitePeer.Dicom dicom, String pointer) {
        if (dicom.addresses().isEmpty()) {
            return dicom.at().map(place -> ofHost(place.host())).orElse(List.of());
        }
        try {
            return dicom.addresses().stream().map(AddressRange::of).toList();
        } catch (IllegalArgumentException e) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "One of the addresses is neither an address nor a range.",
                    "Give such as 10.1.2.3 or 10.1.2.0/24; names are not looked up here."));
        }
    }

    private static List<AddressRange> ofHost(String host) {
        try {
            List<AddressRange> all = new ArrayList<>();
            for (InetAddress address : InetAddress.getAllByName(host)) {
                all.add(new AddressRange(address, address.getAddress().length * Byte.SIZE));
            }
            return all;
        } catch (UnknownHostException e) {
            LOG.warn("The host {} is not known now; nobody is let in from there until the next start.", host);
            return List.of();
        }
    }
}
