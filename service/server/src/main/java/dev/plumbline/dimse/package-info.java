// SPDX-License-Identifier: Apache-2.0
/**
 * The DICOM upper layer (PS3.8) and message exchange (PS3.7), small and complete for what Plumbline does: verification
 * and storage both ways, query and retrieve as a user, storage commitment, modality worklist as a user.
 *
 * <p>From the wire upwards: {@code Pdu} and its codec read and write what PS3.8 9.3 defines, with a bound on everything;
 * {@code StateTable} is table 9-10; {@code Association} drives it over one connection; {@code CommandSet} and {@code
 * Message} are PS3.7; {@link dev.plumbline.dimse.Requestor} opens associations for the users of a service, {@link
 * dev.plumbline.dimse.Listener} accepts them for the providers. Data sets are bytes here; only their framing is known.
 *
 * <p>Nothing in this package touches a file of the archive or knows HTTP: what arrives is handed to {@link
 * dev.plumbline.dimse.Services} as a stream. A maintained library could take the package's place behind {@code
 * Requestor}, {@code Listener} and {@code Services}.
 */
@NullMarked
package dev.plumbline.dimse;

import org.jspecify.annotations.NullMarked;
