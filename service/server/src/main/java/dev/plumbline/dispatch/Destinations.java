// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Requestor;
import java.time.Clock;

/** Makes destinations of what a site configured. */
public final class Destinations {
    private Destinations() {}

    /** By associations. */
    public static Destination dicom(String name, Archive archive, Requestor requestor, Peer peer, ProofBy proofBy) {
        return new Destination(
                name, proofBy != ProofBy.NONE, () -> new DicomCarrier(archive, requestor, peer, proofBy));
    }

    /** By DICOMweb. */
    public static Destination web(String name, Archive archive, WebPeer peer, Clock clock) {
        return new Destination(name, true, () -> new WebCarrier(archive, peer, clock));
    }
}
