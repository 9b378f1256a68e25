// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The index of objects: one row each, a column for every attribute that a search can match on. */
final class SqliteObjects {
    private static final String KEYS =
            Arrays.stream(QueryAttribute.values()).map(QueryAttribute::column).collect(Collectors.joining(", "));
    private static final String INSERT = "INSERT INTO objects (digest, size, transfer_syntax_uid, attributes, " + KEYS
            + ") VALUES (?, ?, ?, ?" + ", ?".repeat(QueryAttribute.values().length) + ") ON CONFLICT DO NOTHING";
    private static final String COLUMNS = "sop_class_uid, sop_instance_uid, series_instance_uid, study_instance_uid,"
            + " transfer_syntax_uid, digest, size, attributes";
    private static final String SELECT = "SELECT " + COLUMNS + " FROM objects ";
    private static final String COUNTS = "COUNT(DISTINCT series_instance_uid), COUNT(*),"
            + " GROUP_CONCAT(DISTINCT modality), GROUP_CONCAT(DISTINCT sop_class_uid)";

    private final SqliteDatabase database;

    SqliteObjects(SqliteDatabase database) {
        this.database = database;
    }

    /** False where the SOP Instance UID or the digest is there already. */
    boolean insert(HeldObject object) {
        List<Object> binds = new ArrayList<>(
                List.of(object.digest(), object.size(), object.transferSyntaxUid(), object.attributes()));
        ObjectNode attributes = object.attributeTree();
        for (QueryAttribute attribute : QueryAttribute.values()) {
            binds.add(Matching.indexed(attribute, IndexedAttributes.text(attributes, attribute.tag())));
        }
        return database.update(INSERT, binds) == 1;
    }

    Optional<HeldObject> byUid(String sopInstanceUid) {
        return database
                .query(SELECT + "WHERE sop_instance_uid = ?", List.of(sopInstanceUid), SqliteObjects::held)
                .stream()
                .findFirst();
    }

    List<HeldObject> within(String study, Optional<String> series) {
        List<String> binds = new ArrayList<>(List.of(study));
        series.ifPresent(binds::add);
        String narrower = series.isPresent() ? "AND series_instance_uid = ? " : "";
        return database.query(
                SELECT + "WHERE study_instance_uid = ? " + narrower + "ORDER BY id", binds, SqliteObjects::held);
    }

    List<HeldObject> all() {
        return database.query(SELECT + "ORDER BY id", List.of(), SqliteObjects::held);
    }

    List<HeldFile> files() {
        return database.query(
                "SELECT digest, size FROM objects ORDER BY id",
                List.of(),
                row -> new HeldFile(row.getString(1), row.getLong(2)));
    }

    int count() {
        return database.query("SELECT COUNT(*) FROM objects", List.of(), row -> row.getInt(1))
                .get(0);
    }

    List<String> instancesOf(Collection<String> sopClassUids) {
        String marks = sopClassUids.stream().map(each -> "?").collect(Collectors.joining(", "));
        return database.query(
                "SELECT sop_instance_uid FROM objects WHERE sop_class_uid IN (" + marks + ") ORDER BY id",
                List.copyOf(sopClassUids),
                row -> row.getString(1));
    }

    List<Found> search(Search search) {
        String conditions =
                search.conditions().stream().map(m -> " AND " + m.sql()).collect(Collectors.joining());
        List<Object> binds = new ArrayList<>();
        search.conditions().forEach(matching -> binds.addAll(matching.values()));
        binds.add(search.limit());
        binds.add(search.offset());
        // The bare columns beside MIN(id) are those of that very row (SQLite, SELECT 2.4): the representative.
        String sql = switch (search.level()) {
            case STUDY -> grouped("study_instance_uid", conditions);
            case SERIES -> grouped("study_instance_uid, series_instance_uid", conditions);
            case INSTANCE ->
                "SELECT " + COLUMNS + ", id, 1, 1, modality, sop_class_uid FROM objects WHERE 1 = 1" + conditions
                        + " ORDER BY id LIMIT ? OFFSET ?";
        };
        return database.query(sql, binds, SqliteObjects::found);
    }

    private static String grouped(String keys, String conditions) {
        return "SELECT " + COLUMNS + ", MIN(id), " + COUNTS + " FROM objects WHERE (" + keys + ") IN (SELECT " + keys
                + " FROM objects WHERE 1 = 1" + conditions + ") GROUP BY " + keys
                + " ORDER BY study_date DESC, study_time DESC, MIN(id) LIMIT ? OFFSET ?";
    }

    private static Found found(ResultSet row) throws SQLException {
        return new Found(
                held(row),
                new Found.Contents(row.getInt(10), row.getInt(11), list(row.getString(12)), list(row.getString(13))));
    }

    private static List<String> list(String joined) {
        return Arrays.stream(joined.split(",")).filter(each -> !each.isEmpty()).toList();
    }

    private static HeldObject held(ResultSet row) throws SQLException {
        return new HeldObject(
                new HeldObject.Identity(row.getString(1), row.getString(2), row.getString(3), row.getString(4)),
                row.getString(5),
                row.getString(6),
                row.getLong(7),
                row.getString(8));
    }
}
