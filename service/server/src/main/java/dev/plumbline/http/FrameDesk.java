// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;

/** Where frames are taken in and found again. */
public interface FrameDesk {
    /**
     * Takes one DICOM image in; durable when it returns.
     *
     * @throws Refusal when it is no image that is taken, contradicts a held object, or finds no room
     */
    Taken receive(InputStream bytes);

    /**
     * Refuses before a body is read where it could not be kept.
     *
     * @param declaredBytes what the sender announces, 0 where it does not
     * @throws Refusal {@link Problem.NoRoom}
     */
    void requireRoom(long declaredBytes);

    /**
     * A held object.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    DicomFile frame(String sopInstanceUid);

    /**
     * What was taken in.
     *
     * @param added false where the same object was held before
     */
    record Taken(String sopInstanceUid, int frameCount, boolean added) {}
}
