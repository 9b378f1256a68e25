// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.document.CasePart;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/** The store in one SQLite file. */
public final class SqliteStore implements Store {
    private static final String REVISION =
            "SELECT case_id, revision, time, state, document, report_uid, predecessor, reason, words, changed_by,"
                    + " doses FROM revisions ";

    private final SqliteDatabase database;
    private final SqliteObjects objects;
    private final SqliteDispatches dispatches;

    private SqliteStore(SqliteDatabase database) {
        this.database = database;
        this.objects = new SqliteObjects(database);
        this.dispatches = new SqliteDispatches(database);
    }

    /**
     * Opens the file, makes it or brings it to this version.
     *
     * @throws StoreDamaged when the file is no database, is damaged, or was written by a newer version
     */
    public static SqliteStore open(Path file) {
        return new SqliteStore(SqliteDatabase.open(file));
    }

    @Override
    public <T> T write(Function<Writing, T> work) {
        return database.transaction(() -> work.apply(new SqliteWriting(database, objects, this)));
    }

    @Override
    public Dispatches dispatches() {
        return dispatches;
    }

    @Override
    public Optional<HeldObject> object(String sopInstanceUid) {
        return objects.byUid(sopInstanceUid);
    }

    @Override
    public List<HeldObject> objects(String studyInstanceUid, Optional<String> seriesInstanceUid) {
        return objects.within(studyInstanceUid, seriesInstanceUid);
    }

    @Override
    public List<HeldObject> objects() {
        return objects.all();
    }

    @Override
    public List<HeldFile> files() {
        return objects.files();
    }

    @Override
    public int objectCount() {
        return objects.count();
    }

    @Override
    public List<String> instancesOf(Collection<String> sopClassUids) {
        return objects.instancesOf(sopClassUids);
    }

    @Override
    public List<Found> search(Search search) {
        return objects.search(search);
    }

    @Override
    public Optional<StoredCase> storedCase(String caseId) {
        return database
                .query(
                        "SELECT document, session, created FROM cases WHERE case_id = ?",
                        List.of(caseId),
                        row -> new StoredCase(
                                caseId, row.getString(1), row.getString(2), Instant.parse(row.getString(3))))
                .stream()
                .findFirst();
    }

    @Override
    public List<CaseItem> caseItems(String caseId) {
        return database.query(
                "SELECT part, item_id, content, received FROM case_items WHERE case_id = ? ORDER BY id",
                List.of(caseId),
                row -> new CaseItem(
                        caseId,
                        CasePart.of(row.getString(1)).orElseThrow(),
                        row.getString(2),
                        row.getString(3),
                        Instant.parse(row.getString(4))));
    }

    @Override
    public List<String> casesOf(String session) {
        return database.query(
                "SELECT case_id FROM cases WHERE session = ? ORDER BY rowid",
                List.of(session),
                row -> row.getString(1));
    }

    @Override
    public List<String> casesOfStudy(String studyInstanceUid) {
        return database.query(
                "SELECT c.case_id FROM cases c JOIN objects o"
                        + " ON o.sop_instance_uid = json_extract(c.document, '$.frame.sopInstanceUid')"
                        + " WHERE o.study_instance_uid = ? ORDER BY c.rowid",
                List.of(studyInstanceUid),
                row -> row.getString(1));
    }

    @Override
    public List<OpenCase> openCases() {
        return database.query(
                "SELECT c.case_id, c.created, (SELECT received FROM case_items i WHERE i.case_id = c.case_id"
                        + " ORDER BY i.id DESC LIMIT 1) FROM cases c"
                        + " WHERE json_extract(c.document, '$.signature') IS NULL AND NOT EXISTS"
                        + " (SELECT 1 FROM revisions r WHERE r.case_id = c.case_id AND r.state <> 'DRAFT')",
                List.of(),
                row -> {
                    Instant opened = Instant.parse(row.getString(2));
                    Optional<Instant> last =
                            Optional.ofNullable(row.getString(3)).map(Instant::parse);
                    return new OpenCase(row.getString(1), opened, last.orElse(opened));
                });
    }

    @Override
    public List<StoredRevision> revisions(String caseId) {
        return database.query(REVISION + "WHERE case_id = ? ORDER BY revision", List.of(caseId), this::revision);
    }

    @Override
    public Optional<StoredRevision> revisionOfReport(String reportUid) {
        return database.query(REVISION + "WHERE report_uid = ?", List.of(reportUid), this::revision).stream()
                .findFirst();
    }

    @Override
    public List<StoredRevision> revisions(int limit, int offset) {
        return database.query(
                REVISION + "ORDER BY rowid DESC LIMIT ? OFFSET ?", List.of(limit, offset), this::revision);
    }

    private StoredRevision revision(ResultSet row) throws SQLException {
        List<String> uids = database.query(
                "SELECT sop_instance_uid FROM revision_objects WHERE case_id = ? AND revision = ? ORDER BY position",
                List.of(row.getString(1), row.getInt(2)),
                object -> object.getString(1));
        return new StoredRevision(
                row.getString(1),
                row.getInt(2),
                OffsetDateTime.parse(row.getString(3)),
                StoredRevision.State.valueOf(row.getString(4)),
                row.getString(5),
                row.getString(6),
                uids,
                change(row),
                row.getString(11));
    }

    private static Optional<StoredRevision.Change> change(ResultSet row) throws SQLException {
        StoredRevision.Change change =
                new StoredRevision.Change(row.getString(7), row.getString(8), row.getString(9), row.getString(10));
        return change.predecessor().isEmpty() ? Optional.empty() : Optional.of(change);
    }

    @Override
    public List<RecordListed> records(RecordQuery query) {
        return new SqliteRecordSearch(database)
                .uids(query).stream()
                        .map(found -> new RecordListed(
                                revisionOfReport(found.reportUid()).orElseThrow(), found.content()))
                        .toList();
    }

    @Override
    public int countRecords(RecordQuery query) {
        return new SqliteRecordSearch(database).count(query);
    }

    @Override
    public List<StoredRevision> unlistedRevisions() {
        return database.query(
                REVISION + "WHERE state <> 'WITHDRAWN' AND report_uid NOT IN (SELECT report_uid FROM record_rows)"
                        + " ORDER BY rowid",
                List.of(),
                this::revision);
    }

    @Override
    public List<DueCompanions> companionsDue() {
        return companionsDue("", List.of());
    }

    @Override
    public List<DueCompanions> companionsDue(String studyInstanceUid) {
        return companionsDue("WHERE study_instance_uid = ? ", List.of(studyInstanceUid));
    }

    private List<DueCompanions> companionsDue(String where, List<String> binds) {
        return database.query(
                "SELECT case_id, revision, study_instance_uid, since, words FROM companions_due " + where
                        + "ORDER BY id",
                binds,
                row -> new DueCompanions(
                        row.getString(1),
                        row.getInt(2),
                        row.getString(3),
                        Instant.parse(row.getString(4)),
                        row.getString(5)));
    }

    @Override
    public Optional<KeptAnswer> answer(String key, String requestDigest, Instant now) {
        Optional<KeptAnswer> kept = database
                .query(
                        "SELECT request_digest, status, body, created FROM answers WHERE key = ? AND created >= ?",
                        List.of(key, now.minus(KeptAnswer.KEPT_FOR).getEpochSecond()),
                        row -> new KeptAnswer(
                                key,
                                row.getString(1),
                                row.getInt(2),
                                row.getString(3),
                                Instant.ofEpochSecond(row.getLong(4))))
                .stream()
                .findFirst();
        kept.filter(answer -> !answer.requestDigest().equals(requestDigest)).ifPresent(other -> {
            throw new Refusal(new Problem.KeyReused(""));
        });
        return kept;
    }

    @Override
    public long received(Sender sender, LocalDate day) {
        return database
                .query(
                        "SELECT bytes FROM received WHERE sender = ? AND day = ?",
                        List.of(sender.key(), day.toString()),
                        row -> row.getLong(1))
                .stream()
                .findFirst()
                .orElse(0L);
    }

    @Override
    public String deviceObserverUid(Supplier<String> fresh) {
        return database.transaction(() -> {
            database.update(
                    "INSERT INTO installation (id, device_observer_uid) VALUES (1, ?) ON CONFLICT DO NOTHING",
                    List.of(fresh.get()));
            return database.query("SELECT device_observer_uid FROM installation", List.of(), row -> row.getString(1))
                    .get(0);
        });
    }

    /** A setting as the open connection has it. */
    String pragma(String name) {
        return database.query("PRAGMA " + name, List.of(), row -> row.getString(1))
                .get(0);
    }

    @Override
    public void close() {
        database.close();
    }
}
