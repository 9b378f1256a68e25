// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.config.SitePeer.Use;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The fields {@code dicom} and {@code peers} of the service's configuration. */
final class NetworkFile {
    static final String[] DICOM_FIELDS = {
        "aeTitle",
        "host",
        "port",
        "tls",
        "associations",
        "associationsPerPeer",
        "artimSeconds",
        "idleSeconds",
        "connectSeconds",
        "responseSeconds"
    };
    static final String[] PEER_FIELDS = {
        "name",
        "aeTitle",
        "host",
        "port",
        "addresses",
        "certificates",
        "dailyMegabytes",
        "url",
        "tokenFile",
        "tls",
        "uses",
        "proof"
    };

    /** AE: at most 16 characters, no backslash, no control characters. Source: DICOM PS3.5, 6.2. */
    private static final String AE_TITLE =
            "[\\x21-\\x5B\\x5D-\\x7E]([\\x20-\\x5B\\x5D-\\x7E]{0,14}[\\x21-\\x5B\\x5D-\\x7E])?";

    private static final String NAME = "[A-Za-z0-9][A-Za-z0-9._-]{0,39}";
    private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "::1");
    private static final int LAST_PORT = 65_535;
    private static final int LONGEST_WAIT = 3_600;
    private static final int MOST_ASSOCIATIONS = 1_000;

    private final SiteObject file;
    private final Path path;

    NetworkFile(SiteObject file, Path path) {
        this.file = file;
        this.path = path;
    }

    Network read() {
        Optional<SiteObject> dicom = file.optionalObject("dicom", DICOM_FIELDS);
        List<SitePeer> peers =
                file.objects("peers", PEER_FIELDS).stream().map(this::peer).toList();
        requireDistinct(peers);
        requireTlsWhereCertificatesAreNamed(dicom, peers);
        return new Network(
                dicom.flatMap(d -> d.optionalText("aeTitle").map(title -> aeTitle(d, title)))
                        .orElse(Network.NONE.aeTitle()),
                dicom.map(NetworkFile::waits).orElse(Network.Waits.USUAL),
                dicom.filter(d -> d.optionalWhole("port").isPresent()).map(this::door),
                peers);
    }

    private static Network.Waits waits(SiteObject dicom) {
        Network.Waits usual = Network.Waits.USUAL;
        return new Network.Waits(
                bounded(dicom, "artimSeconds", usual.artimSeconds(), LONGEST_WAIT),
                bounded(dicom, "idleSeconds", usual.idleSeconds(), LONGEST_WAIT),
                bounded(dicom, "connectSeconds", usual.connectSeconds(), LONGEST_WAIT),
                bounded(dicom, "responseSeconds", usual.responseSeconds(), LONGEST_WAIT));
    }

    private static int bounded(SiteObject object, String name, int usual, int most) {
        int number = object.optionalWhole(name).orElse(usual);
        if (number < 1 || number > most) {
            throw invalid(object.at(name), "This must be 1 to " + most + ".", "Give 1 to " + most + ".");
        }
        return number;
    }

    private Network.Door door(SiteObject dicom) {
        String host = dicom.optionalText("host").orElse("127.0.0.1");
        Optional<TlsFiles> tls = tls(dicom);
        boolean reachable = !LOOPBACK.contains(host);
        if (reachable && tls.isEmpty() && !file.optionalFlag("insecure").orElse(false)) {
            throw invalid(
                    dicom.at("host"),
                    "Without TLS anybody who reaches this address can pretend to be one of the peers.",
                    "Give tls, listen at 127.0.0.1, or spell out \"insecure\": true if the network around it is"
                            + " guarded.");
        }
        if (tls.isPresent() && tls.get().certificate().isEmpty()) {
            throw invalid(dicom.at("tls"), "Who accepts TLS needs a certificate.", "Give certificate and key.");
        }
        if (tls.isPresent() && tls.get().trust().isEmpty()) {
            throw invalid(
                    dicom.at("tls"),
                    "Without trust every holder of a certificate of any public authority would be let in.",
                    "Give trust: the certificates that those of the peers lead to.");
        }
        return new Network.Door(
                host,
                port(dicom),
                tls,
                bounded(dicom, "associations", 100, MOST_ASSOCIATIONS),
                bounded(dicom, "associationsPerPeer", 10, MOST_ASSOCIATIONS));
    }

    private SitePeer peer(SiteObject peer) {
        String name = peer.text("name");
        if (!name.matches(NAME)) {
            throw invalid(
                    peer.at("name"),
                    "A peer's name has letters, digits, dots, dashes and underscores, at most 40.",
                    "Give such a name.");
        }
        boolean web = peer.optionalText("url").isPresent();
        if (web == peer.optionalText("aeTitle").isPresent()) {
            throw new Refusal(new Problem.ContradictoryFields(
                    peer.at("aeTitle"),
                    "A peer has either an aeTitle or a url.",
                    "Give one of them; a system that speaks both is two peers."));
        }
        requireOwnFields(peer, web);
        List<Use> uses = peer.words("uses", Use.values(), Use::word);
        if (web && uses.contains(Use.WORKLIST)) {
            throw invalid(peer.at("uses"), "A worklist is asked for by associations only.", "Give an aeTitle peer.");
        }
        return new SitePeer(
                name,
                web ? Optional.empty() : Optional.of(dicom(peer, !uses.isEmpty())),
                web ? Optional.of(web(peer)) : Optional.empty(),
                uses);
    }

    /** What would be passed over in silence is refused: somebody wrote it down because it should count. */
    private static void requireOwnFields(SiteObject peer, boolean web) {
        List<String> foreign = web ? List.of("host", "proof") : List.of("tokenFile");
        for (String field : foreign) {
            if (peer.optionalText(field).isPresent()) {
                throw new Refusal(new Problem.ContradictoryFields(
                        peer.at(field),
                        "The field " + field + " does not go with " + (web ? "a url." : "an aeTitle."),
                        "Remove it; docs/operating.md says which fields each kind of peer has."));
            }
        }
        for (String field : List.of("addresses", "certificates", "dailyMegabytes")) {
            if (web && peer.states(field)) {
                throw new Refusal(new Problem.ContradictoryFields(
                        peer.at(field),
                        "A peer with a url never calls us by associations.",
                        "Remove " + field + "; a system that speaks both is two peers."));
            }
        }
    }

    /** A binding that nobody would look at is refused: somebody wrote it down because it should count. */
    private void requireTlsWhereCertificatesAreNamed(Optional<SiteObject> dicom, List<SitePeer> peers) {
        boolean secured = dicom.flatMap(this::tls).isPresent();
        for (int i = 0; i < peers.size() && !secured; i++) {
            boolean named = peers.get(i)
                    .dicom()
                    .filter(peer -> !peer.from().certificates().isEmpty())
                    .isPresent();
            if (named) {
                throw new Refusal(new Problem.ContradictoryFields(
                        file.at("peers") + "/" + i + "/certificates",
                        "Certificates are shown over TLS only, and the door has none.",
                        "Give dicom.tls, or remove certificates."));
            }
        }
    }

    private SitePeer.Dicom dicom(SiteObject peer, boolean called) {
        boolean placed = peer.optionalText("host").isPresent();
        if (called && !placed) {
            throw new Refusal(new Problem.MissingField(peer.at("host"), "Say where the peer is called."));
        }
        List<String> addresses = peer.texts("addresses");
        if (!placed && addresses.isEmpty()) {
            throw new Refusal(new Problem.MissingField(
                    peer.at("addresses"), "Say from where the peer may call, such as 10.1.2.0/24."));
        }
        return new SitePeer.Dicom(
                aeTitle(peer, peer.text("aeTitle")),
                placed ? Optional.of(new SitePeer.Place(peer.text("host"), port(peer), tls(peer))) : Optional.empty(),
                new SitePeer.CalledFrom(
                        addresses, peer.texts("certificates"), IntakeLimits.daily(peer, "dailyMegabytes")),
                peer.optionalWord("proof", ProofBy.values(), ProofBy::word).orElse(ProofBy.GET));
    }

    private SitePeer.Web web(SiteObject peer) {
        String text = peer.text("url");
        try {
            URI url = new URI(text);
            boolean http = "http".equals(url.getScheme()) || "https".equals(url.getScheme());
            if (http && url.getHost() != null && url.getUserInfo() == null && url.getQuery() == null) {
                return new SitePeer.Web(
                        url, peer.optionalText("tokenFile").map(name -> resolved(peer, "tokenFile", name)), tls(peer));
            }
        } catch (URISyntaxException e) {
            throw badUrl(peer);
        }
        throw badUrl(peer);
    }

    private static Refusal badUrl(SiteObject peer) {
        return invalid(
                peer.at("url"),
                "This is no address of a DICOMweb service.",
                "Give one such as https://pacs.example.org/dicom-web, without user, password and query.");
    }

    private Optional<TlsFiles> tls(SiteObject object) {
        return object.optionalObject("tls", "certificate", "key", "trust")
                .map(tls -> new TlsFiles(
                        tls.optionalText("certificate").map(name -> resolved(tls, "certificate", name)),
                        tls.optionalText("key").map(name -> resolved(tls, "key", name)),
                        tls.optionalText("trust").map(name -> resolved(tls, "trust", name))));
    }

    private Path resolved(SiteObject object, String field, String name) {
        try {
            return path.resolveSibling(name);
        } catch (InvalidPathException e) {
            throw invalid(object.at(field), "This is no path.", "Give a file, relative to this one or whole.");
        }
    }

    private static int port(SiteObject object) {
        int port = object.whole("port");
        if (port < 0 || port > LAST_PORT) {
            throw invalid(object.at("port"), "There is no such port.", "Give 0 to " + LAST_PORT + ".");
        }
        return port;
    }

    private static String aeTitle(SiteObject object, String title) {
        if (!title.matches(AE_TITLE)) {
            throw invalid(
                    object.at("aeTitle"), "This is no AE title.", "Give 1 to 16 printable characters, no backslash.");
        }
        return title;
    }

    private void requireDistinct(List<SitePeer> peers) {
        Set<String> names = peers.stream().map(SitePeer::name).collect(Collectors.toSet());
        if (names.size() != peers.size()) {
            throw invalid(file.at("peers"), "Two peers have the same name.", "Give each peer a name of its own.");
        }
    }

    private static Refusal invalid(String pointer, String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue(pointer, detail, remedy));
    }
}
