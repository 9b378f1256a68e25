// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.document.CasePart;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteStoreTest {
    private static final Instant NOW = Instant.parse("2026-01-05T09:15:00Z");

    @TempDir
    Path root;

    private Path file;
    private SqliteStore store;

    @BeforeEach
    void open() {
        file = root.resolve("store.sqlite");
        store = SqliteStore.open(file);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void keepsACaseOverARestart() {
        StoredCase stored = new StoredCase("case-1", "{\"a\":1}", NOW);
        assertThat(store.<Boolean>write(writing -> writing.add(stored))).isTrue();
        store.close();
        store = SqliteStore.open(file);
        assertThat(store.storedCase("case-1")).contains(stored);
        assertThat(store.<Boolean>write(writing -> writing.add(stored))).isFalse();
    }

    @Test
    void bringsAStoreOfTheFirstVersionUpToThisOne() throws Exception {
        Path old = root.resolve("old.sqlite");
        String script = new String(
                Objects.requireNonNull(SqliteStore.class.getResourceAsStream("store-1.sql"))
                        .readAllBytes(),
                StandardCharsets.UTF_8);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
                Statement statement = connection.createStatement()) {
            for (String line : script.split(";\\s*\n")) {
                statement.execute(line);
            }
            statement.execute("INSERT INTO cases VALUES ('case-1', '{\"a\":1}', '2026-01-05T09:15:00Z')");
            statement.execute(
                    "INSERT INTO revisions VALUES ('case-1', 1, '2026-01-05T10:15:00+01:00', 'DRAFT', '{}', '2.25.7')");
            statement.execute("PRAGMA user_version = 1");
        }
        CaseItem item = new CaseItem("case-1", CasePart.EVENTS, "e1", "{\"id\":\"e1\"}", NOW);
        for (int opening = 0; opening < 2; opening++) {
            try (SqliteStore migrated = SqliteStore.open(old)) {
                assertThat(migrated.storedCase("case-1")).contains(new StoredCase("case-1", "{\"a\":1}", NOW));
                assertThat(migrated.revisionOfReport("2.25.7"))
                        .get()
                        .extracting(StoredRevision::doses)
                        .isEqualTo("");
                if (opening == 0) {
                    migrated.write(writing -> {
                        writing.add(item);
                        return writing.add(new StoredCase("case-2", "{}", "s-1", NOW));
                    });
                }
                assertThat(migrated.caseItems("case-1")).containsExactly(item);
                assertThat(migrated.casesOf("s-1")).containsExactly("case-2");
            }
        }
    }

    @Test
    void refusesOtherContentForAKnownCase() {
        store.write(writing -> writing.add(new StoredCase("case-1", "{\"a\":1}", NOW)));
        assertThatThrownBy(() -> store.write(writing -> writing.add(new StoredCase("case-1", "{\"a\":2}", NOW))))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem()).isInstanceOf(Problem.Conflict.class));
    }

    @Test
    void keepsNothingOfATransactionThatThrows() {
        assertThatThrownBy(() -> store.write(writing -> {
                    writing.add(new StoredCase("case-1", "{}", NOW));
                    throw new IllegalStateException("in the middle");
                }))
                .hasMessage("in the middle");
        assertThat(store.storedCase("case-1")).isEmpty();
        assertThat(store.<Boolean>write(writing -> writing.add(new StoredCase("case-1", "{}", NOW))))
                .isTrue();
    }

    @Test
    void refusesARevisionOfAnUnknownCase() {
        assertThatThrownBy(() -> store.write(writing -> writing.add(revision("nowhere", 1))))
                .isInstanceOf(IllegalStateException.class)
                .hasRootCauseInstanceOf(SQLException.class);
    }

    @Test
    void listsRevisionsNewestFirst() {
        store.write(writing -> {
            writing.add(new StoredCase("a", "{}", NOW));
            writing.add(new StoredCase("b", "{}", NOW));
            writing.add(revision("a", 1));
            writing.add(revision("b", 1));
            return writing.add(revision("a", 2));
        });
        assertThat(store.revisions(10, 0)).containsExactly(revision("a", 2), revision("b", 1), revision("a", 1));
        assertThat(store.revisions(1, 1)).containsExactly(revision("b", 1));
        assertThat(store.revisions("a")).containsExactly(revision("a", 1), revision("a", 2));
    }

    @Test
    void givesTheFirstAnswerAgainForThirtyDays() {
        KeptAnswer first = new KeptAnswer("key", "digest", 201, "{\"n\":1}", NOW);
        store.write(writing -> writing.add(first));
        KeptAnswer later = new KeptAnswer("key", "digest", 201, "{\"n\":2}", NOW.plusSeconds(1));
        assertThat(store.<KeptAnswer>write(writing -> writing.add(later))).isEqualTo(first);
        assertThat(store.answer("key", "digest", NOW.plus(Duration.ofDays(30)))).contains(first);
        Instant late = NOW.plus(Duration.ofDays(30)).plusSeconds(1);
        assertThat(store.answer("key", "digest", late)).isEmpty();
        KeptAnswer fresh = new KeptAnswer("key", "other", 201, "{}", late);
        assertThat(store.<KeptAnswer>write(writing -> writing.add(fresh))).isEqualTo(fresh);
    }

    @Test
    void refusesAKeyThatComesWithAnotherBody() {
        store.write(writing -> writing.add(new KeptAnswer("key", "digest", 201, "{}", NOW)));
        assertThatThrownBy(() -> store.answer("key", "other", NOW))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem()).isInstanceOf(Problem.KeyReused.class));
    }

    @Test
    void makesTheObserverUidOnce() {
        assertThat(store.deviceObserverUid(() -> "2.25.1")).isEqualTo("2.25.1");
        store.close();
        store = SqliteStore.open(file);
        assertThat(store.deviceObserverUid(() -> "2.25.2")).isEqualTo("2.25.1");
    }

    @Test
    void commitsOnlyWhatIsForcedToDisk() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeQuery("PRAGMA journal_mode").getString(1))
                    .isEqualTo("wal");
        }
        assertThat(store.pragma("synchronous")).isEqualTo("2");
        assertThat(store.pragma("foreign_keys")).isEqualTo("1");
        assertThat(store.pragma("user_version")).isEqualTo("8");
    }

    @Test
    void namesTheFileThatIsNoDatabase() throws IOException {
        Path garbage = root.resolve("garbage.sqlite");
        Files.writeString(garbage, "this is no database, only a text that is long enough to be looked at".repeat(50));
        assertThatThrownBy(() -> SqliteStore.open(garbage))
                .isInstanceOf(StoreDamaged.class)
                .hasMessageContaining("garbage.sqlite")
                .hasMessageContaining("damaged or no database");
    }

    @Test
    void namesTheFileWhosePagesAreOverwritten() throws IOException {
        store.write(writing -> {
            for (int i = 0; i < 200; i++) {
                writing.add(new StoredCase("case-" + i, "{\"text\":\"" + "x".repeat(500) + "\"}", NOW));
            }
            return true;
        });
        store.close();
        byte[] bytes = Files.readAllBytes(file);
        Arrays.fill(bytes, 8192, bytes.length - 4096, (byte) 0x5a);
        Files.write(file, bytes);
        assertThatThrownBy(() -> SqliteStore.open(file))
                .isInstanceOf(StoreDamaged.class)
                .hasMessageContaining("store.sqlite");
    }

    @Test
    void refusesAStoreOfANewerVersion() throws SQLException {
        store.close();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = 99");
        }
        assertThatThrownBy(() -> SqliteStore.open(file))
                .isInstanceOf(StoreDamaged.class)
                .hasMessageContaining("newer version (99;");
    }

    @Test
    void startsFromALogThatAPowerCutTruncated() throws IOException {
        StoredCase first = new StoredCase("case-1", "{}", NOW);
        store.write(writing -> writing.add(first));
        store.write(writing -> writing.add(new StoredCase("case-2", "{}", NOW)));
        Path copy = root.resolve("copy.sqlite");
        Files.copy(file, copy);
        Files.copy(root.resolve("store.sqlite-wal"), root.resolve("copy.sqlite-wal"));
        // As after a power cut: the log is there, the process is not, and the last bytes of the log are missing.
        byte[] log = Files.readAllBytes(root.resolve("copy.sqlite-wal"));
        Files.write(root.resolve("copy.sqlite-wal"), Arrays.copyOf(log, log.length - 10));
        try (SqliteStore restarted = SqliteStore.open(copy)) {
            assertThat(restarted.storedCase("case-1")).contains(first);
            assertThat(restarted.storedCase("case-2")).isEmpty();
        }
    }

    @Test
    void keepsWhatTheSessionHadGivenWithItsRevision() {
        StoredRevision made = new StoredRevision(
                "case-1",
                1,
                OffsetDateTime.parse("2026-01-05T10:15:00+01:00"),
                StoredRevision.State.DRAFT,
                "{}",
                "2.25.9",
                List.of(),
                Optional.empty(),
                "{\"totals\":[]}");
        store.write(writing -> {
            writing.add(new StoredCase("case-1", "{}", NOW));
            return writing.add(made);
        });
        store.close();
        store = SqliteStore.open(file);
        assertThat(store.revisionOfReport("2.25.9")).contains(made);
    }

    private static StoredRevision revision(String caseId, int number) {
        return new StoredRevision(
                caseId,
                number,
                OffsetDateTime.parse("2026-01-05T10:15:00+01:00"),
                StoredRevision.State.DRAFT,
                "{}",
                "2.25." + caseId.hashCode() + "." + number,
                List.of());
    }
}
