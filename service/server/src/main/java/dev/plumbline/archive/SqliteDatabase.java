// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * One SQLite file behind one connection: WAL, every commit forced to disk, foreign keys kept, {@code user_version}
 * counts the migrations.
 */
final class SqliteDatabase implements AutoCloseable {
    /** Migrations {@code store-1.sql} to this one. */
    static final int VERSION = 8;

    /** What SQLite also says of a full disk, before it has written the end of a transaction. Source: SQLite, result codes. */
    private static final Set<SQLiteErrorCode> FOR_LACK_OF_ROOM = EnumSet.of(
            SQLiteErrorCode.SQLITE_IOERR_WRITE,
            SQLiteErrorCode.SQLITE_IOERR_SHMOPEN,
            SQLiteErrorCode.SQLITE_IOERR_SHMSIZE,
            SQLiteErrorCode.SQLITE_IOERR_SHMMAP,
            SQLiteErrorCode.SQLITE_CANTOPEN);

    /** What SQLite says when the disk takes nothing. Source: sqlite.org, Result and Error Codes. */
    private static final Set<SQLiteErrorCode> UNWRITABLE = EnumSet.of(
            SQLiteErrorCode.SQLITE_READONLY,
            SQLiteErrorCode.SQLITE_READONLY_DBMOVED,
            SQLiteErrorCode.SQLITE_IOERR_WRITE,
            SQLiteErrorCode.SQLITE_IOERR_FSYNC,
            SQLiteErrorCode.SQLITE_IOERR_DIR_FSYNC,
            SQLiteErrorCode.SQLITE_IOERR_TRUNCATE);

    private final Path file;
    private final Connection connection;
    private final ReentrantLock lock = new ReentrantLock();

    private SqliteDatabase(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    /** @throws StoreDamaged when the file is no database, is damaged, or was written by a newer version */
    static SqliteDatabase open(Path file) {
        try {
            if (!Files.exists(file)) {
                Files.createFile(file, DataFolder.FILE_MODE);
            }
            SqliteDatabase database = new SqliteDatabase(file, settings().createConnection("jdbc:sqlite:" + file));
            database.checkAndMigrate();
            return database;
        } catch (IOException | SQLException e) {
            if (e instanceof SQLException problem && isDamage(code(problem))) {
                throw damaged(file, problem);
            }
            if (LowWater.isFull(file.resolveSibling("."), e)) {
                throw new StoreDamaged(
                        "The store " + file + " cannot be opened because its disk is full. Free space and start again.",
                        e);
            }
            throw new StoreDamaged("The store " + file + " cannot be opened; see the cause and the file's rights.", e);
        }
    }

    /** A whole and consistent copy of a database that may be in use (SQLite, VACUUM INTO). */
    static void copy(Path from, Path to) {
        SQLiteConfig reading = new SQLiteConfig();
        reading.setReadOnly(true);
        try (Connection source = reading.createConnection("jdbc:sqlite:" + from);
                PreparedStatement copy = source.prepareStatement("VACUUM INTO ?")) {
            copy.setString(1, to.toString());
            copy.execute();
        } catch (SQLException e) {
            if (isDamage(code(e))) {
                throw damaged(from, e);
            }
            throw new IllegalStateException("The store " + from + " cannot be copied.", e);
        }
    }

    private static SQLiteConfig settings() {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        return config;
    }

    private void checkAndMigrate() {
        try {
            List<String> findings = query("PRAGMA quick_check(1)", List.of(), row -> row.getString(1));
            if (!findings.equals(List.of("ok"))) {
                throw damaged(file, new SQLException(String.join("; ", findings)));
            }
            migrate(query("PRAGMA user_version", List.of(), row -> row.getInt(1))
                    .get(0));
        } catch (RuntimeException e) {
            close();
            throw e;
        }
    }

    private void migrate(int from) {
        if (from > VERSION) {
            throw new StoreDamaged("The store " + file + " was written by a newer version (" + from
                    + "; this one reads up to " + VERSION + "). Start that version again.");
        }
        for (int version = from + 1; version <= VERSION; version++) {
            List<String> script = script(version);
            String counted = "PRAGMA user_version = " + version;
            transaction(() -> {
                script.forEach(this::execute);
                execute(counted);
                return true;
            });
        }
    }

    private static List<String> script(int version) {
        String name = "store-" + version + ".sql";
        try (InputStream in = SqliteDatabase.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the build.");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(text.split(";\\s*\n"))
                    .map(String::strip)
                    .filter(statement -> !statement.isEmpty())
                    .toList();
        } catch (IOException e) {
            throw new IllegalStateException(name + " cannot be read.", e);
        }
    }

    /** Everything in the work happens, or nothing; returns only when it is on disk. */
    <T> T transaction(Supplier<T> work) {
        lock.lock();
        boolean begun = false;
        try {
            execute("BEGIN IMMEDIATE");
            begun = true;
            T result = work.get();
            execute("COMMIT");
            begun = false;
            return result;
        } finally {
            if (begun) {
                rollBack();
            }
            lock.unlock();
        }
    }

    private void rollBack() {
        try {
            execute("ROLLBACK");
        } catch (IllegalStateException e) {
            // A full disk makes SQLite roll back by itself; what matters is that no transaction stays open.
            requireNoTransaction(e);
        }
    }

    private void requireNoTransaction(IllegalStateException cause) {
        try {
            execute("BEGIN IMMEDIATE");
            execute("ROLLBACK");
        } catch (IllegalStateException e) {
            cause.addSuppressed(e);
            throw cause;
        }
    }

    <T> List<T> query(String sql, List<?> binds, RowReader<T> reader) {
        lock.lock();
        try (PreparedStatement statement = prepared(sql, binds);
                ResultSet rows = statement.executeQuery()) {
            List<T> results = new ArrayList<>();
            while (rows.next()) {
                results.add(reader.read(rows));
            }
            return results;
        } catch (SQLException e) {
            throw failure(e);
        } finally {
            lock.unlock();
        }
    }

    /** Number of rows changed. */
    int update(String sql, List<?> binds) {
        lock.lock();
        try (PreparedStatement statement = prepared(sql, binds)) {
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw failure(e);
        } finally {
            lock.unlock();
        }
    }

    private PreparedStatement prepared(String sql, List<?> binds) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < binds.size(); i++) {
            statement.setObject(i + 1, binds.get(i));
        }
        return statement;
    }

    private void execute(String sql) {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw failure(e);
        }
    }

    private RuntimeException failure(SQLException e) {
        SQLiteErrorCode code = code(e);
        if (code == SQLiteErrorCode.SQLITE_FULL
                || (FOR_LACK_OF_ROOM.contains(code) && LowWater.isFull(file.resolveSibling("."), e))) {
            return LowWater.noRoom();
        }
        if (UNWRITABLE.contains(code)) {
            return LowWater.unwritable(e);
        }
        return isDamage(code)
                ? damaged(file, e)
                : new IllegalStateException("The store " + file + " does not answer", e);
    }

    private static SQLiteErrorCode code(SQLException e) {
        return e instanceof SQLiteException known ? known.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
    }

    private static boolean isDamage(SQLiteErrorCode code) {
        return code == SQLiteErrorCode.SQLITE_CORRUPT || code == SQLiteErrorCode.SQLITE_NOTADB;
    }

    private static StoreDamaged damaged(Path file, SQLException e) {
        return new StoreDamaged(
                "The store " + file
                        + " is damaged or no database. Put back a copy of it, or move it away: the objects in the"
                        + " folder beside it are indexed again by reindex, cases and drafts come from the copy only.",
                e);
    }

    @Override
    public void close() {
        lock.lock();
        try {
            connection.close();
        } catch (SQLException e) {
            throw failure(e);
        } finally {
            lock.unlock();
        }
    }

    /** Reads one value off the row a result stands on. */
    interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }
}
