// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A peer that finds without end: neither the number of its matches nor their bytes fill our memory. */
class FloodingFindFlowTest {
    private static final Timeouts QUICK =
            new Timeouts(Duration.ofSeconds(1), Duration.ofSeconds(20), Duration.ofSeconds(5), Duration.ofSeconds(20));
    private static final int MIB = 1 << 20;

    private static ServiceUser.Found found(FloodingFindPeer peer, int most) throws IOException {
        List<Wanted> wanted = List.of(Wanted.use(SopClass.MODALITY_WORKLIST, SopClass.PLAIN_SYNTAXES));
        try (Association association = new Requestor("PLUMBLINE", QUICK).open(peer.peer(), wanted)) {
            return new ServiceUser(association, QUICK).find(SopClass.MODALITY_WORKLIST, syntax -> new byte[0], most);
        }
    }

    private static PeerFailure refused(FloodingFindPeer peer, int most) {
        PeerFailure failure = catchThrowableOfType(PeerFailure.class, () -> found(peer, most));
        assertThat(failure.kind()).isEqualTo(PeerFailure.Kind.PROTOCOL);
        return failure;
    }

    @Test
    void sixteenMebibytesOfMatchesAreTaken() throws Exception {
        try (FloodingFindPeer peer = new FloodingFindPeer(16, MIB)) {
            assertThat(found(peer, 1_000).identifiers()).hasSize(16);
        }
    }

    @Test
    void oneByteMoreOfMatchesBreaksTheSearchOff() throws Exception {
        try (FloodingFindPeer peer = new FloodingFindPeer(1_000, MIB - 2)) {
            assertThat(refused(peer, 1_000)).hasMessageContaining("more than 16777216 bytes");
            assertThat(peer.sent()).as("those under way included").isBetween(17, 40);
        }
    }

    @Test
    void oneMatchMoreThanAskedForBreaksTheSearchOff() throws Exception {
        try (FloodingFindPeer enough = new FloodingFindPeer(1_000, 2);
                FloodingFindPeer one = new FloodingFindPeer(1_001, 2)) {
            assertThat(found(enough, 1_000).identifiers()).hasSize(1_000);
            assertThat(refused(one, 1_000)).hasMessageContaining("more than 1000 matches");
        }
    }

    @Test
    void oneMatchOfMoreThanOneMebibyteBreaksTheSearchOff() throws Exception {
        try (FloodingFindPeer peer = new FloodingFindPeer(1, MIB + 2)) {
            assertThat(refused(peer, 1_000)).hasMessageContaining("a data set of more than");
        }
    }
}
