// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.io.InputStream;

/** What peers may ask of us beyond an echo. Called by one thread for each association. */
public interface Services {
    /** An object on its way in, as its command describes it. */
    record Incoming(String sopClassUid, String sopInstanceUid, String transferSyntaxUid, String callingAeTitle) {}

    /**
     * Takes an object in.
     *
     * @param file the whole DICOM file, meta information included, as it arrives; need not be read to its end
     * @return success only when the object is durable
     * @throws IOException as the stream throws it
     */
    Reply store(Incoming object, InputStream file) throws IOException;

    /**
     * A report on storage commitment, as it came.
     *
     * @param eventType 1: all instances are committed to; 2: failures exist
     * @param information data set in {@code transferSyntaxUid}
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once, never compared
    record CommitmentReport(int eventType, byte[] information, String transferSyntaxUid) {}

    /** Takes a report on storage commitment. */
    Reply commitment(CommitmentReport report);
}
