package org.lehrcase.bench.store;

import java.io.Closeable;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/**
 * One SQLite file with a write-ahead log, synchronised to the disk at every commit, so that what
 * was answered survives a killed process and a pulled plug. Safe for many threads (one connection,
 * one lock); a second process may use the same file and waits up to five seconds for its turn.
 */
public final class Database implements Closeable {
  private static final String[] SETUP = {
    "PRAGMA busy_timeout=5000",
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",
    "PRAGMA foreign_keys=ON",
    "PRAGMA secure_delete=ON"
  };

  private static final int SQLITE_BUSY = 5;
  private static final int MOST_TRIES = 250;
  private static final long PAUSE_NANOS = 20_000_000;

  private final Connection connection;
  private boolean inTransaction;

  private Database(Connection connection) {
    this.connection = connection;
  }

  /**
   * Opens or creates the database and brings it to the newest schema.
   *
   * @param file the database file
   * @return the open database; the caller closes it
   * @throws StoreException if the file cannot be opened or a newer program wrote it
   */
  public static Database open(Path file) throws StoreException {
    Connection connection = null;
    try {
      connection = DriverManager.getConnection("jdbc:sqlite:" + file);
      try (Statement statement = connection.createStatement()) {
        for (String setup : SETUP) {
          patiently(statement, setup);
        }
      }
      Database database = new Database(connection);
      Migrations.apply(database);
      return database;
    } catch (SQLException e) {
      closeQuietly(connection, e);
      throw new StoreException("could not open the study notes in " + file, e);
    } catch (StoreException e) {
      closeQuietly(connection, e);
      throw e;
    }
  }

  /**
   * Changing the mode of the journal meets a lock without waiting, whatever the busy timeout is.
   */
  private static void patiently(Statement statement, String setup) throws SQLException {
    for (int left = MOST_TRIES; left > 0; left--) {
      try {
        statement.execute(setup);
        return;
      } catch (SQLException e) {
        if ((e.getErrorCode() & 0xff) != SQLITE_BUSY || left == 1) {
          throw e;
        }
        LockSupport.parkNanos(PAUSE_NANOS);
      }
    }
  }

  private static void closeQuietly(@Nullable Connection connection, Exception reason) {
    if (connection != null) {
      try {
        connection.close();
      } catch (SQLException again) {
        reason.addSuppressed(again);
      }
    }
  }

  /** A use case whose statements become durable together or not at all. */
  @FunctionalInterface
  public interface Work<T> {
    /**
     * Runs the statements.
     *
     * @return the outcome
     * @throws StoreException if a statement fails; the transaction is undone
     */
    T run() throws StoreException;
  }

  /** Turns the current row into a value. */
  @FunctionalInterface
  interface RowReader<T> {
    T read(ResultSet row) throws SQLException;
  }

  /**
   * Runs the work in one immediate transaction. Work inside work joins the outer transaction.
   *
   * @param work what to do
   * @return what the work returned
   * @throws StoreException if a statement or the commit fails
   */
  public synchronized <T> T inTransaction(Work<T> work) throws StoreException {
    if (inTransaction) {
      return work.run();
    }
    run("BEGIN IMMEDIATE");
    inTransaction = true;
    boolean done = false;
    try {
      T outcome = work.run();
      run("COMMIT");
      done = true;
      return outcome;
    } finally {
      inTransaction = false;
      if (!done) {
        run("ROLLBACK");
      }
    }
  }

  synchronized int run(String sql, @Nullable Object... values) throws StoreException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, values);
      statement.execute();
      return Math.max(0, statement.getUpdateCount());
    } catch (SQLException e) {
      throw new StoreException("the study notes could not be written: " + e.getMessage(), e);
    }
  }

  synchronized <T> List<T> list(String sql, RowReader<T> reader, @Nullable Object... values)
      throws StoreException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, values);
      List<T> rows = new ArrayList<>();
      try (ResultSet result = statement.executeQuery()) {
        while (result.next()) {
          rows.add(reader.read(result));
        }
      }
      return List.copyOf(rows);
    } catch (SQLException e) {
      throw new StoreException("the study notes could not be read: " + e.getMessage(), e);
    }
  }

  <T> Optional<T> first(String sql, RowReader<T> reader, @Nullable Object... values)
      throws StoreException {
    List<T> rows = list(sql, reader, values);
    return rows.isEmpty() ? Optional.empty() : Optional.of(rows.get(0));
  }

  private static void bind(PreparedStatement statement, @Nullable Object... values)
      throws SQLException {
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, values[i]);
    }
  }

  @Override
  public synchronized void close() throws StoreException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new StoreException("the study notes could not be closed", e);
    }
  }
}
