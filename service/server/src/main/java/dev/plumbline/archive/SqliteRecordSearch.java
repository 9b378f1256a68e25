// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.archive.RecordQuery.Filter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Records looked for in the store's database. */
final class SqliteRecordSearch {
    /** The same words as {@link Standing}, which a test holds against it. */
    private static final String ROWS = """
            FROM record_rows i JOIN (
              SELECT x.*, CASE
                WHEN x.state = 'DRAFT' THEN 'draft'
                WHEN EXISTS (SELECT 1 FROM revisions w WHERE w.case_id = x.case_id AND w.state = 'WITHDRAWN')
                  THEN 'withdrawn'
                WHEN x.predecessor <> '' THEN 'amended'
                ELSE 'signed' END AS standing,
                x.state = 'SIGNED' AND NOT EXISTS (SELECT 1 FROM revisions l WHERE l.case_id = x.case_id
                  AND (l.state = 'WITHDRAWN' OR l.state = 'SIGNED' AND l.revision > x.revision)) AS is_current
              FROM revisions x) r ON r.report_uid = i.report_uid
            """;

    private final SqliteDatabase database;

    SqliteRecordSearch(SqliteDatabase database) {
        this.database = database;
    }

    /** A hit. */
    record Hit(String reportUid, String content) {}

    List<Hit> uids(RecordQuery query) {
        List<Object> binds = new ArrayList<>();
        String where = where(query, binds);
        binds.add(query.limit());
        binds.add(query.offset());
        return database.query(
                "SELECT i.report_uid, i.content " + ROWS + where
                        + " ORDER BY i.moment DESC, r.case_id, r.revision DESC LIMIT ? OFFSET ?",
                binds,
                row -> new Hit(row.getString(1), row.getString(2)));
    }

    int count(RecordQuery query) {
        List<Object> binds = new ArrayList<>();
        String where = where(query, binds);
        return database.query("SELECT COUNT(*) " + ROWS + where, binds, row -> row.getInt(1))
                .get(0);
    }

    /** Every value is bound; only conditions of the program's own stand in the text. */
    private static String where(RecordQuery query, List<Object> binds) {
        List<String> conditions = new ArrayList<>();
        Map<Filter, String> ordered = new EnumMap<>(Filter.class);
        ordered.putAll(query.filters());
        ordered.forEach((filter, value) -> {
            conditions.add(filter.condition());
            binds.add(value);
        });
        return conditions.isEmpty() ? "" : " WHERE " + String.join(" AND ", conditions);
    }
}
