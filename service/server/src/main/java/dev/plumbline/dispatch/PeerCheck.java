// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.config.CertificateEnd;
import dev.plumbline.config.Network;
import dev.plumbline.config.ProofBy;
import dev.plumbline.config.SitePeer;
import dev.plumbline.config.TlsFiles;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.ServiceUser;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Wanted;
import dev.plumbline.problem.Refusal;
import dev.plumbline.worklist.Worklist;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.UnknownHostException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tries everything a site configured about a peer, step by step, and says in words what is wrong. Changes nothing there. */
public final class PeerCheck {
    /** The objects of a record, with their names. Source: DICOM PS3.4, B.5. */
    static final Map<String, String> RECORD_CLASSES = Map.of(
            "1.2.840.10008.5.1.4.1.1.88.33", "Comprehensive SR",
            "1.2.840.10008.5.1.4.1.1.88.59", "Key Object Selection",
            "1.2.840.10008.5.1.4.1.1.11.1", "Grayscale Presentation State",
            "1.2.840.10008.5.1.4.1.1.11.2", "Color Presentation State",
            "1.2.840.10008.5.1.4.1.1.104.1", "Encapsulated PDF",
            "1.2.840.10008.5.1.4.1.1.7", "Secondary Capture Image");

    private static final Duration CERTIFICATE_WARNING = Duration.ofDays(30);
    private static final int HTTP_OK = 200;
    private static final int HTTP_NO_CONTENT = 204;
    private static final int HTTP_UNAUTHORISED = 401;
    private static final int HTTP_NOT_FOUND = 404;
    private static final int HTTP_FORBIDDEN = 403;

    private final Network network;
    private final SitePeers peers;
    private final Clock clock;

    /** One step with one peer. */
    public record Step(String peer, String step, boolean ok, String words) {}

    public PeerCheck(Network network, Clock clock) {
        this.network = network;
        this.peers = new SitePeers(network, clock);
        this.clock = clock;
    }

    /** All steps of all peers that we call; after a failed step the rest of that peer is left out. */
    public List<Step> run() {
        List<Step> steps = new ArrayList<>();
        for (CertificateEnd end : CertificateEnd.of(network)) {
            end.warning(clock.instant())
                    .ifPresent(words -> steps.add(
                            new Step(end.user(), "certificate", end.end().isAfter(clock.instant()), words)));
        }
        for (SitePeer peer : network.peers()) {
            OnePeer one = new OnePeer(peer, steps);
            try {
                one.run();
            } catch (Refusal unusable) {
                one.says("tls", false, String.valueOf(unusable.getMessage())); // the others are tried all the same
            }
        }
        return steps;
    }

    private final class OnePeer {
        private final SitePeer site;
        private final List<Step> steps;

        OnePeer(SitePeer site, List<Step> steps) {
            this.site = site;
            this.steps = steps;
        }

        private boolean says(String step, boolean ok, String words) {
            steps.add(new Step(site.name(), step, ok, words));
            return ok;
        }

        void run() {
            Optional<SitePeer.Place> place = site.dicom().flatMap(SitePeer.Dicom::at);
            if (place.isPresent()) {
                boolean there = dns(place.get().host())
                        && tcp(place.get().host(), place.get().port())
                        && certificate(place.get().tls());
                if (there) {
                    association();
                }
            } else if (site.web().isPresent()) {
                web(site.web().get());
            } else {
                says("calls us", true, "It only calls us; there is nothing to call.");
            }
        }

        private boolean dns(String host) {
            try {
                return says(
                        "dns", true, host + " is " + InetAddress.getByName(host).getHostAddress() + ".");
            } catch (UnknownHostException e) {
                return says("dns", false, "The host name " + host + " is not known. Check its spelling, or the DNS.");
            }
        }

        private boolean tcp(String host, int port) {
            try (Socket socket = new Socket()) {
                socket.connect(
                        new InetSocketAddress(host, port),
                        Math.toIntExact(peers.timeouts().connect().toMillis()));
                return says("tcp", true, "Port " + port + " is open.");
            } catch (IOException e) {
                return says(
                        "tcp",
                        false,
                        "Nothing answers at port " + port + ". Check the port, the firewall, and that it runs.");
            }
        }

        private boolean certificate(Optional<TlsFiles> files) {
            Optional<Instant> end = files.flatMap(TlsFiles::end);
            if (end.isEmpty()) {
                return true;
            }
            Duration left = Duration.between(clock.instant(), end.get());
            if (left.isNegative()) {
                return says("certificate", false, "Our certificate ended on " + end.get() + ".");
            }
            String soon = left.compareTo(CERTIFICATE_WARNING) < 0 ? " Renew it soon." : "";
            return says("certificate", true, "Our certificate ends in " + left.toDays() + " days." + soon);
        }

        private void association() {
            List<Wanted> wanted = new ArrayList<>();
            wanted.add(Wanted.use(SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES));
            boolean archive = site.uses().contains(SitePeer.Use.ARCHIVE);
            if (archive) {
                List<String> explicit = List.of(SopClass.PLAIN_SYNTAXES.get(0));
                RECORD_CLASSES.keySet().forEach(uid -> wanted.add(Wanted.use(uid, explicit)));
                proof().ifPresent(uid -> wanted.add(Wanted.use(uid, SopClass.PLAIN_SYNTAXES)));
            }
            boolean worklist = site.uses().contains(SitePeer.Use.WORKLIST);
            if (worklist) {
                wanted.add(Wanted.use(SopClass.MODALITY_WORKLIST, SopClass.PLAIN_SYNTAXES));
            }
            Peer peer = peers.peer(site).orElseThrow();
            try (Association association = peers.requestor().open(peer, wanted)) {
                says(
                        "association",
                        true,
                        "Accepted by " + peer.aeTitle() + (peer.tls().isPresent() ? " over TLS." : "."));
                Reply echo = new ServiceUser(association, peers.timeouts()).echo();
                says("echo", echo.isSuccess(), echo.isSuccess() ? "C-ECHO is answered." : "C-ECHO: " + echo.code());
                if (archive) {
                    contexts(association);
                }
                if (worklist && !offersWorklist(association)) {
                    return;
                }
            } catch (PeerFailure e) {
                says(step(e), false, e.getMessage() + hint(e.kind(), peer.tls().isPresent()));
                return;
            } catch (IOException | Refusal e) {
                says("association", false, String.valueOf(e.getMessage()));
                return;
            }
            if (worklist) {
                worklist(peer);
            }
        }

        private boolean offersWorklist(Association association) {
            boolean offered = association
                    .negotiated(SopClass.MODALITY_WORKLIST, SopClass.PLAIN_SYNTAXES)
                    .isPresent();
            return offered
                    || says("worklist", false, "It offers no modality worklist. Check port, AE title and \"uses\".");
        }

        private Optional<String> proof() {
            return switch (site.dicom().orElseThrow().proof()) {
                case GET -> Optional.of(SopClass.STUDY_ROOT_GET);
                case COMMITMENT -> Optional.of(SopClass.STORAGE_COMMITMENT);
                case NONE -> Optional.empty();
            };
        }

        private void contexts(Association association) {
            List<String> explicit = List.of(SopClass.PLAIN_SYNTAXES.get(0));
            RECORD_CLASSES.forEach((uid, name) -> {
                boolean taken = association.negotiated(uid, explicit).isPresent();
                says(
                        "context",
                        taken,
                        name + (taken ? " is taken." : " (" + uid + ") is not: " + association.refusal(uid) + "."));
            });
            proof().ifPresent(uid -> {
                boolean offered =
                        association.negotiated(uid, SopClass.PLAIN_SYNTAXES).isPresent();
                ProofBy by = site.dicom().orElseThrow().proof();
                says(
                        "proof",
                        offered,
                        "Proof by " + by.word() + (offered ? " is offered." : " is not offered: change \"proof\"."));
            });
        }

        private String step(PeerFailure failure) {
            return failure.kind() == PeerFailure.Kind.TLS ? "tls" : "association";
        }

        private String hint(PeerFailure.Kind kind, boolean overTls) {
            return switch (kind) {
                case REJECTED -> " Check the AE titles at both ends.";
                case TLS -> " Check both certificates, what each end trusts, and the host name in the certificate.";
                case ABORTED ->
                    overTls
                            ? " Perhaps it does not accept our certificate, or wants one and is shown none, or does not"
                                    + " speak TLS here."
                            : " Perhaps it speaks TLS at this port, which this peer is configured without.";
                case PROTOCOL -> " Perhaps another kind of service answers at this port: check it.";
                case TIMEOUT -> " Perhaps another kind of service, or one with TLS, is at this port.";
                case UNREACHABLE, REJECTED_TRANSIENT, CONTEXT_REFUSED -> "";
            };
        }

        private void worklist(Peer peer) {
            try {
                Worklist.Day today =
                        new Worklist(site.name(), peers.requestor(), peer, clock).scheduled(Optional.empty());
                says("worklist", true, today.procedures().size() + " procedures are scheduled today.");
                today.unreadable().ifPresent(words -> says("worklist", false, words));
            } catch (Refusal e) {
                says("worklist", false, e.problem().detail());
            }
        }

        private void web(SitePeer.Web web) {
            int usual = "https".equals(web.url().getScheme()) ? 443 : 80;
            int port = web.url().getPort() < 0 ? usual : web.url().getPort();
            if (!dns(web.url().getHost()) || !tcp(web.url().getHost(), port) || !certificate(web.tls())) {
                return;
            }
            try {
                WebPeer peer = peers.web(site).orElseThrow();
                int status = status(peer, peer.request("/studies?limit=1").GET());
                boolean found = status == HTTP_OK || status == HTTP_NO_CONTENT;
                String path = status == HTTP_NOT_FOUND ? " Check the path in \"url\"." : "";
                says("qido", found, "A search is answered " + words(status) + path);
                int stow =
                        status(peer, peer.request("/studies").method("OPTIONS", HttpRequest.BodyPublishers.noBody()));
                says(
                        "stow",
                        stow != HTTP_UNAUTHORISED && stow != HTTP_FORBIDDEN,
                        "OPTIONS for storing is answered " + words(stow));
            } catch (WebPeer.Unanswered e) {
                says("http", false, e.getMessage() + " Check port and scheme (http or https) of \"url\".");
            } catch (IOException e) {
                says("http", false, "The answer broke off.");
            }
        }

        private int status(WebPeer peer, HttpRequest.Builder request) throws IOException {
            HttpResponse<InputStream> answer = peer.send(request.header("Accept", "application/dicom+json"));
            answer.body().close();
            return answer.statusCode();
        }

        private String words(int status) {
            boolean token = status == HTTP_UNAUTHORISED || status == HTTP_FORBIDDEN;
            return status + "." + (token ? " Check the bearer token." : "");
        }
    }
}
