// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;

/** The writing half of the store; lives inside one transaction. What is there already stands. */
final class SqliteWriting implements Store.Writing {
    private final SqliteDatabase database;
    private final SqliteObjects objects;
    private final Store reading;

    SqliteWriting(SqliteDatabase database, SqliteObjects objects, Store reading) {
        this.database = database;
        this.objects = objects;
        this.reading = reading;
    }

    @Override
    public boolean add(HeldObject object) {
        if (objects.insert(object)) {
            return true;
        }
        boolean same = objects.byUid(object.sopInstanceUid())
                .map(HeldObject::digest)
                .filter(object.digest()::equals)
                .isPresent();
        if (!same) {
            throw Receiving.otherObjectHeld();
        }
        return false;
    }

    @Override
    public boolean add(StoredCase stored) {
        int added = database.update(
                "INSERT INTO cases (case_id, document, session, created) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
                List.of(
                        stored.caseId(),
                        stored.document(),
                        stored.session(),
                        stored.created().toString()));
        if (added == 0
                && !reading.storedCase(stored.caseId()).orElseThrow().document().equals(stored.document())) {
            throw new Refusal(new Problem.Conflict(
                    "/caseId",
                    "Another case document is held under this caseId.",
                    "Give the new case a caseId of its own."));
        }
        return added == 1;
    }

    @Override
    public void add(CaseItem item) {
        database.update(
                "INSERT INTO case_items (case_id, part, item_id, content, received) VALUES (?, ?, ?, ?, ?)",
                List.of(
                        item.caseId(),
                        item.part().field(),
                        item.id(),
                        item.content(),
                        item.received().toString()));
    }

    @Override
    public boolean add(StoredRevision revision) {
        int added = database.update(
                "INSERT INTO revisions (case_id, revision, time, state, document, report_uid, predecessor, reason,"
                        + " words, changed_by, doses) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING",
                List.of(
                        revision.caseId(),
                        revision.revision(),
                        revision.time().toString(),
                        revision.state().name(),
                        revision.document(),
                        revision.reportUid(),
                        change(revision, StoredRevision.Change::predecessor),
                        change(revision, StoredRevision.Change::reason),
                        change(revision, StoredRevision.Change::words),
                        change(revision, StoredRevision.Change::by),
                        revision.doses()));
        if (added == 0) {
            requireSame(revision);
            return false;
        }
        for (int i = 0; i < revision.objects().size(); i++) {
            database.update(
                    "INSERT INTO revision_objects (case_id, revision, position, sop_instance_uid) VALUES (?, ?, ?, ?)",
                    List.of(
                            revision.caseId(),
                            revision.revision(),
                            i,
                            revision.objects().get(i)));
        }
        return true;
    }

    private static String change(StoredRevision revision, Function<StoredRevision.Change, String> what) {
        return revision.change().map(what).orElse("");
    }

    @Override
    public void add(RecordRow row) {
        database.update(
                "INSERT INTO record_rows (report_uid, moment, record_date, patient_id, block, laterality, operator,"
                        + " differs, content) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING",
                List.of(
                        row.reportUid(),
                        row.moment(),
                        row.date(),
                        row.patientId(),
                        row.block(),
                        row.laterality(),
                        row.operator(),
                        row.differs() ? 1 : 0,
                        row.content()));
    }

    private void requireSame(StoredRevision revision) {
        if (!reading.revisions(revision.caseId()).contains(revision)) {
            throw new Refusal(new Problem.Conflict(
                    "/caseId",
                    "Another record is held for this caseId and revision.",
                    "Read the held one; amend it, or give the new case a caseId of its own."));
        }
    }

    @Override
    public void add(DueCompanions due) {
        database.update(
                "INSERT INTO companions_due (case_id, revision, study_instance_uid, since, words) VALUES (?, ?, ?, ?, ?)"
                        + " ON CONFLICT DO NOTHING",
                List.of(
                        due.caseId(),
                        due.revision(),
                        due.studyInstanceUid(),
                        due.since().toString(),
                        due.words()));
    }

    @Override
    public void failed(DueCompanions due, String why) {
        database.update(
                "UPDATE companions_due SET words = ? WHERE case_id = ? AND revision = ?",
                List.of(why, due.caseId(), due.revision()));
    }

    @Override
    public void composed(DueCompanions due) {
        database.update(
                "DELETE FROM companions_due WHERE case_id = ? AND revision = ?", List.of(due.caseId(), due.revision()));
    }

    @Override
    public int queue(StoredRevision revision, List<String> destinations, Instant when) {
        return new SqliteDispatches(database).add(revision, destinations, when);
    }

    @Override
    public KeptAnswer add(KeptAnswer answer) {
        database.update(
                "DELETE FROM answers WHERE created < ?",
                List.of(answer.created().minus(KeptAnswer.KEPT_FOR).getEpochSecond()));
        database.update(
                "INSERT INTO answers (key, request_digest, status, body, created) VALUES (?, ?, ?, ?, ?)"
                        + " ON CONFLICT DO NOTHING",
                List.of(
                        answer.key(),
                        answer.requestDigest(),
                        answer.status(),
                        answer.body(),
                        answer.created().getEpochSecond()));
        return reading.answer(answer.key(), answer.requestDigest(), answer.created())
                .orElseThrow();
    }

    @Override
    public long received(Sender sender, LocalDate day, long bytes) {
        database.update("DELETE FROM received WHERE day < ?", List.of(day.toString()));
        database.update(
                "INSERT INTO received (sender, day, bytes) VALUES (?, ?, ?)"
                        + " ON CONFLICT (sender, day) DO UPDATE SET bytes = bytes + excluded.bytes",
                List.of(sender.key(), day.toString(), bytes));
        return reading.received(sender, day);
    }
}
