// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.archive.Dispatch.State;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A store that an earlier version of the program left behind: nothing of it is lost, and work goes on in it. */
class StoreUpgradeTest {
    private static final Instant NOW = Instant.parse("2026-01-05T09:15:00Z");
    private static final HeldObject REPORT = object("2.25.7", "a1");

    @TempDir
    Path root;

    private Path old;

    @BeforeEach
    void name() {
        old = root.resolve("store.sqlite");
    }

    private static HeldObject object(String uid, String digest) {
        return new HeldObject(
                new HeldObject.Identity("1.2.840.10008.5.1.4.1.1.88.33", uid, "2.25.6", "2.25.5"),
                "1.2.840.10008.1.2.1",
                digest,
                1000,
                attributes(uid));
    }

    private static String attributes(String uid) {
        return String.format(
                "{\"00080016\":{\"vr\":\"UI\",\"Value\":[\"1.2.840.10008.5.1.4.1.1.88.33\"]},"
                        + "\"00080018\":{\"vr\":\"UI\",\"Value\":[\"%s\"]},"
                        + "\"0020000D\":{\"vr\":\"UI\",\"Value\":[\"2.25.5\"]},"
                        + "\"0020000E\":{\"vr\":\"UI\",\"Value\":[\"2.25.6\"]}}",
                uid);
    }

    private static List<String> script(int version) throws IOException {
        String text = new String(
                Objects.requireNonNull(SqliteStore.class.getResourceAsStream("store-" + version + ".sql"))
                        .readAllBytes(),
                StandardCharsets.UTF_8);
        return Arrays.stream(text.split(";\\s*\n"))
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** A signed record of one object, and from version 3 on its way: one archive has it, another refused it. */
    private void left(int version) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
                Statement statement = connection.createStatement()) {
            for (int i = 1; i <= version; i++) {
                for (String line : script(i)) {
                    statement.execute(line);
                }
            }
            insertObject(statement);
            statement.execute("INSERT INTO installation VALUES (1, '2.25.99')");
            statement.execute(
                    "INSERT INTO cases (case_id, document, created) VALUES ('case-1', '{\"a\":1}', '" + NOW + "')");
            statement.execute("INSERT INTO revisions (case_id, revision, time, state, document, report_uid) VALUES"
                    + " ('case-1', 1, '2026-01-05T10:15:00+01:00', 'SIGNED', '{\"a\":1}', '2.25.7')");
            statement.execute("INSERT INTO revision_objects VALUES ('case-1', 1, 0, '2.25.7')");
            if (version >= 2) {
                statement.execute("INSERT INTO case_items (case_id, part, item_id, content, received) VALUES"
                        + " ('case-1', 'events', 'e1', '{}', '" + NOW + "')");
            }
            if (version >= 3) {
                dispatch(statement, 1, "pacs", "SENT", "0000");
                dispatch(statement, 2, "cloud", "HELD", "C000");
            }
            if (version >= 4) {
                statement.execute("UPDATE revisions SET reason = 'read off wrongly', predecessor = '2.25.4'");
            }
            statement.execute("PRAGMA user_version = " + version);
        }
    }

    private static void insertObject(Statement statement) throws SQLException {
        List<String> columns = Arrays.stream(QueryAttribute.values())
                .map(QueryAttribute::column)
                .toList();
        String values = columns.stream()
                .map(column -> switch (column) {
                    case "sop_class_uid" -> REPORT.identity().sopClassUid();
                    case "sop_instance_uid" -> REPORT.sopInstanceUid();
                    case "series_instance_uid" -> REPORT.identity().seriesInstanceUid();
                    case "study_instance_uid" -> REPORT.identity().studyInstanceUid();
                    default -> "";
                })
                .collect(Collectors.joining("', '", "'", "'"));
        statement.execute("INSERT INTO objects (digest, size, transfer_syntax_uid, attributes, "
                + String.join(", ", columns) + ") VALUES ('a1', 1000, '1.2.840.10008.1.2.1', '"
                + attributes("2.25.7") + "', " + values + ")");
    }

    private static void dispatch(Statement statement, int id, String to, String state, String code)
            throws SQLException {
        statement.execute("INSERT INTO dispatches VALUES (" + id + ", '" + to + "', 'case-1', 1, '2.25.5', '" + NOW
                + "', 3, '', '', '" + state + "')");
        statement.execute(
                "INSERT INTO dispatch_parts (dispatch_id, position, sop_instance_uid, state, code, words, changed,"
                        + " transaction_uid) VALUES (" + id + ", 0, '2.25.7', '" + state + "', '" + code
                        + "', 'in its own words', '" + NOW + "', '')");
    }

    private int version() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA user_version")) {
            return row.getInt(1);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
    void losesNothingAndGoesOn(int version) throws Exception {
        left(version);
        for (int opening = 0; opening < 2; opening++) {
            try (SqliteStore store = SqliteStore.open(old)) {
                assertThat(store.storedCase("case-1")).contains(new StoredCase("case-1", "{\"a\":1}", NOW));
                assertThat(store.object("2.25.7")).contains(REPORT);
                StoredRevision signed = store.revisionOfReport("2.25.7").orElseThrow();
                assertThat(signed.state()).isEqualTo(StoredRevision.State.SIGNED);
                assertThat(signed.objects()).containsExactly("2.25.7");
                assertThat(signed.doses()).isEmpty();
                assertThat(signed.change().isPresent()).isEqualTo(version >= 4);
                assertThat(store.deviceObserverUid(() -> "2.25.1")).isEqualTo("2.25.99");
                assertThat(store.caseItems("case-1")).hasSize(version >= 2 ? 1 : 0);
                requireQueue(store, version);
                if (opening == 0) {
                    goOn(store);
                }
                assertThat(store.revisionOfReport("2.25.8")).isPresent();
            }
            assertThat(version()).isEqualTo(SqliteDatabase.VERSION);
        }
    }

    private static void requireQueue(SqliteStore store, int version) {
        Dispatches dispatches = store.dispatches();
        if (version < 3) {
            assertThat(dispatches.waiting("pacs", State.SENT)).isEmpty();
            return;
        }
        Dispatch sent = dispatches.get(1).orElseThrow();
        assertThat(sent.state()).isEqualTo(State.SENT);
        assertThat(sent.progress().attempts()).isEqualTo(3);
        assertThat(sent.created()).isEqualTo(NOW);
        Dispatch held = dispatches.get(2).orElseThrow();
        assertThat(held.state()).isEqualTo(State.HELD);
        assertThat(held.lastAnswer()).isEqualTo(new Dispatch.Answer("C000", "in its own words"));
        assertThat(dispatches.waiting("pacs", State.SENT)).containsExactly(new Dispatches.Waiting(1, "2.25.5"));
    }

    /** Files a further record, which is queued. */
    private static void goOn(SqliteStore store) {
        StoredRevision revision = new StoredRevision(
                "case-2",
                1,
                NOW.atOffset(java.time.ZoneOffset.UTC),
                StoredRevision.State.SIGNED,
                "{}",
                "2.25.8",
                List.of("2.25.8"),
                Optional.empty(),
                "{\"doses\":[]}");
        StoredCase stored = new StoredCase("case-2", "{}", "s-1", NOW);
        store.write(writing -> {
            writing.add(stored);
            writing.add(object("2.25.8", "b2"));
            writing.add(revision);
            writing.queue(revision, List.of("other"), NOW);
            return true;
        });
        assertThat(store.dispatches().waiting("other", State.QUEUED)).hasSize(1);
    }

    @Test
    void anUpgradeThatFailsChangesNothing() throws Exception {
        left(3);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE record_rows (somebody TEXT)"); // stands in the way of version 4
        }
        assertThatThrownBy(() -> SqliteStore.open(old)).isInstanceOf(RuntimeException.class);
        assertThat(version()).isEqualTo(3);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
                Statement statement = connection.createStatement()) {
            statement.execute("DROP TABLE record_rows");
        }
        try (SqliteStore store = SqliteStore.open(old)) {
            requireQueue(store, 3);
        }
    }
}
