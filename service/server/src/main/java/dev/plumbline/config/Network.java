// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import java.util.List;
import java.util.Optional;

/**
 * Whom a site's service speaks with by DICOM.
 *
 * @param aeTitle ours, shown when we call and called by others
 * @param door where associations are accepted; empty where none are
 */
public record Network(String aeTitle, Waits waits, Optional<Door> door, List<SitePeer> peers) {
    /** Speaks with nobody. */
    public static final Network NONE = new Network("PLUMBLINE", Waits.USUAL, Optional.empty(), List.of());

    public Network {
        peers = List.copyOf(peers);
    }

    /** The peers that serve a purpose. */
    public List<SitePeer> peers(SitePeer.Use use) {
        return peers.stream().filter(peer -> peer.uses().contains(use)).toList();
    }

    /**
     * Where associations are accepted.
     *
     * @param port 0 for any free one
     * @param tls callers must show a certificate that leads to its {@code trust}; empty for plain TCP
     * @param associations at once, in all
     * @param perPeer at once, from one AE title
     */
    public record Door(String host, int port, Optional<TlsFiles> tls, int associations, int perPeer) {}

    /** How long is waited, in seconds: before an association, within one, for a connection, for an answer. */
    public record Waits(int artimSeconds, int idleSeconds, int connectSeconds, int responseSeconds) {
        /** Design choices. */
        public static final Waits USUAL = new Waits(10, 30, 10, 60);
    }
}
