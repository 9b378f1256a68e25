// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.archive.Dispatch.Addressed;
import dev.plumbline.archive.Dispatch.Answer;
import dev.plumbline.archive.Dispatch.Asked;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.Progress;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatch.Taken;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** The queue of records on their way in the store's database. */
final class SqliteDispatches implements Dispatches {
    private static final String SELECT = "SELECT id, destination, case_id, revision, study_instance_uid, created,"
            + " attempts, next_attempt, released, (SELECT words FROM companions_due due WHERE"
            + " due.case_id = dispatches.case_id AND due.revision = dispatches.revision) FROM dispatches ";

    /** A revision goes out when its companions are composed, and after the earlier ones of its case. */
    private static final String COMPOSED = " AND NOT EXISTS (SELECT 1 FROM companions_due due WHERE"
            + " due.case_id = dispatches.case_id AND due.revision <= dispatches.revision)";

    /** Of those that are sent: something may still be asked. */
    private static final String UNSETTLED = " AND EXISTS (SELECT 1 FROM dispatch_parts part WHERE"
            + " part.dispatch_id = dispatches.id AND part.state = 'SENT' AND part.settled = 0)";

    private final SqliteDatabase database;

    SqliteDispatches(SqliteDatabase database) {
        this.database = database;
    }

    /**
     * Inside a transaction: one dispatch for each destination that has none yet, images first, report last.
     *
     * @return how many were added
     */
    int add(StoredRevision revision, Collection<String> destinations, Instant created) {
        List<String> reportFirst = revision.objects();
        int dispatches = 0;
        for (String destination : destinations) {
            String study = database.query(
                            "SELECT study_instance_uid FROM objects WHERE sop_instance_uid = ?",
                            List.of(revision.reportUid()),
                            row -> row.getString(1))
                    .get(0);
            int added = database.update(
                    "INSERT INTO dispatches (destination, case_id, revision, study_instance_uid, created, attempts,"
                            + " next_attempt, released, state) VALUES (?, ?, ?, ?, ?, 0, '', '', 'QUEUED')"
                            + " ON CONFLICT DO NOTHING",
                    List.of(destination, revision.caseId(), revision.revision(), study, created.toString()));
            for (int i = 0; added == 1 && i < reportFirst.size(); i++) {
                addPart(i, reportFirst.get((i + 1) % reportFirst.size()), created);
            }
            dispatches += added;
        }
        return dispatches;
    }

    private void addPart(int position, String sopInstanceUid, Instant created) {
        database.update(
                "INSERT INTO dispatch_parts (dispatch_id, position, sop_instance_uid, state, code, words, changed,"
                        + " transaction_uid) VALUES ((SELECT MAX(id) FROM dispatches), ?, ?, 'QUEUED', '', '', ?, '')",
                List.of(position, sopInstanceUid, created.toString()));
    }

    @Override
    public List<Dispatch> list(Optional<State> state, int limit, int offset) {
        List<Object> binds = new ArrayList<>();
        state.ifPresent(s -> binds.add(s.name()));
        binds.add(limit);
        binds.add(offset);
        String where = state.isPresent() ? "WHERE state = ? " : "";
        return database.query(SELECT + where + "ORDER BY id DESC LIMIT ? OFFSET ?", binds, this::dispatch);
    }

    @Override
    public Optional<Dispatch> get(long id) {
        return database.query(SELECT + "WHERE id = ?", List.of(id), this::dispatch).stream()
                .findFirst();
    }

    @Override
    public List<Dispatch> ofCase(String caseId) {
        return database.query(SELECT + "WHERE case_id = ? ORDER BY id DESC", List.of(caseId), this::dispatch);
    }

    @Override
    public List<Waiting> waiting(String destination, State state) {
        return database.query(
                "SELECT id, study_instance_uid FROM dispatches WHERE state = ? AND destination = ? AND released = ''"
                        + COMPOSED + (state == State.SENT ? UNSETTLED : "") + " ORDER BY id",
                List.of(state.name(), destination),
                row -> new Waiting(row.getLong(1), row.getString(2)));
    }

    @Override
    public List<Dispatch> ofTransaction(String transactionUid) {
        return database.query(
                SELECT + "WHERE id IN (SELECT dispatch_id FROM commitment_transactions WHERE transaction_uid = ?)",
                List.of(transactionUid),
                this::dispatch);
    }

    @Override
    public List<Dispatch.Count> counts() {
        return database.query(
                "SELECT destination, state, released <> '', COUNT(*) FROM dispatches"
                        + " GROUP BY destination, state, released <> '' ORDER BY destination, state",
                List.of(),
                row -> new Dispatch.Count(
                        row.getString(1), State.valueOf(row.getString(2)), row.getBoolean(3), row.getInt(4)));
    }

    @Override
    public Remarks remarks() {
        return database.query(
                        "SELECT COUNT(DISTINCT CASE WHEN taken = 'ALTERED' AND part.state IN ('SENT', 'PROVED')"
                                + " THEN id END), COUNT(DISTINCT CASE WHEN taken <> 'ALTERED' AND part.state = 'SENT'"
                                + " THEN id END) FROM dispatch_parts part JOIN dispatches ON id = dispatch_id"
                                + " WHERE (taken = 'ALTERED' OR settled = 1) AND released = ''",
                        List.of(),
                        row -> new Remarks(row.getInt(1), row.getInt(2)))
                .get(0);
    }

    @Override
    public Optional<Dispatch> oldestUnproved(Collection<String> provable) {
        String marks = provable.stream().map(each -> "?").collect(Collectors.joining(", "));
        return database
                .query(
                        SELECT + "WHERE released = '' AND (state IN ('QUEUED', 'HELD') OR (state = 'SENT'"
                                + " AND destination IN (" + marks + ")" + UNSETTLED
                                + ")) ORDER BY created, id LIMIT 1",
                        List.copyOf(provable),
                        this::dispatch)
                .stream()
                .findFirst();
    }

    @Override
    public void update(Dispatch dispatch) {
        database.transaction(() -> write(dispatch));
    }

    @Override
    public Dispatch change(long id, UnaryOperator<Dispatch> change) {
        return database.transaction(() -> write(change.apply(get(id).orElseThrow())));
    }

    /** Inside a transaction. */
    private Dispatch write(Dispatch dispatch) {
        Progress progress = dispatch.progress();
        database.update(
                "UPDATE dispatches SET attempts = ?, next_attempt = ?, state = ? WHERE id = ?",
                List.of(
                        progress.attempts(),
                        progress.nextAttempt().map(Instant::toString).orElse(""),
                        dispatch.state().name(),
                        dispatch.id()));
        for (Part part : dispatch.parts()) {
            database.update(
                    "UPDATE dispatch_parts SET state = ?, code = ?, words = ?, changed = ?, transaction_uid = ?,"
                            + " taken = ?, asked_times = ?, asked_last = ?, settled = ?"
                            + " WHERE dispatch_id = ? AND position = ?",
                    List.of(
                            part.state().name(),
                            part.answer().code(),
                            part.answer().words(),
                            part.changed().toString(),
                            part.asked().transactionUid().orElse(""),
                            part.taken().name(),
                            part.asked().times(),
                            part.asked().last().map(Instant::toString).orElse(""),
                            part.asked().settled() ? 1 : 0,
                            dispatch.id(),
                            part.position()));
            part.asked().transactionUid().ifPresent(transaction -> remember(transaction, dispatch.id()));
        }
        return dispatch;
    }

    /** A report on it may come at any time, also after another transaction was begun. */
    private void remember(String transaction, long dispatch) {
        database.update(
                "INSERT INTO commitment_transactions (transaction_uid, dispatch_id) VALUES (?, ?)"
                        + " ON CONFLICT DO NOTHING",
                List.of(transaction, dispatch));
    }

    @Override
    public void release(long id, Instant when) {
        database.transaction(() -> database.update(
                "UPDATE dispatches SET released = ? WHERE id = ? AND released = ''", List.of(when.toString(), id)));
    }

    private Dispatch dispatch(ResultSet row) throws SQLException {
        long id = row.getLong(1);
        return new Dispatch(
                id,
                new Addressed(row.getString(2), row.getString(3), row.getInt(4), row.getString(5)),
                Instant.parse(row.getString(6)),
                new Progress(row.getInt(7), instant(row.getString(8))),
                instant(row.getString(9)),
                Optional.ofNullable(row.getString(10)),
                parts(id));
    }

    private List<Part> parts(long id) {
        return database.query(
                "SELECT position, sop_instance_uid, state, code, words, changed, taken, transaction_uid, asked_times,"
                        + " asked_last, settled FROM dispatch_parts WHERE dispatch_id = ? ORDER BY position",
                List.of(id),
                row -> new Part(
                        row.getInt(1),
                        row.getString(2),
                        State.valueOf(row.getString(3)),
                        new Answer(row.getString(4), row.getString(5)),
                        Instant.parse(row.getString(6)),
                        Taken.valueOf(row.getString(7)),
                        new Asked(
                                Optional.of(row.getString(8)).filter(uid -> !uid.isEmpty()),
                                row.getInt(9),
                                instant(row.getString(10)),
                                row.getBoolean(11))));
    }

    private static Optional<Instant> instant(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(text));
    }
}
