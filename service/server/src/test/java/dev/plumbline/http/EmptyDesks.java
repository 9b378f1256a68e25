// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;

/** Desks of a service that holds nothing and whose store has failed. */
final class EmptyDesks implements FrameDesk, RecordDesk {
    static final String SECRET = "secret-of-the-inside";

    Doors.Desks desks() {
        return new Doors.Desks(this, this, List.of());
    }

    private static IllegalStateException fault() {
        return new IllegalStateException(SECRET);
    }

    private static Refusal nothingHeld() {
        return new Refusal(new Problem.NotHeld("", "It is not held here.", "Send it first."));
    }

    @Override
    public Taken receive(InputStream bytes) {
        throw fault();
    }

    @Override
    public void requireRoom(long declaredBytes) {}

    @Override
    public DicomFile frame(String sopInstanceUid) {
        throw nothingHeld();
    }

    @Override
    public Answer open(CaseDocument document, Optional<Key> key) {
        throw fault();
    }

    @Override
    public CaseDocument stored(String caseId) {
        throw nothingHeld();
    }

    @Override
    public Answer file(CaseDocument document, Optional<Key> key) {
        throw fault();
    }

    @Override
    public List<ObjectNode> list(Optional<String> caseId, int limit, int offset) {
        return List.of();
    }

    @Override
    public ObjectNode record(String recordUid) {
        throw nothingHeld();
    }

    @Override
    public InputStream report(String recordUid) {
        throw nothingHeld();
    }
}
