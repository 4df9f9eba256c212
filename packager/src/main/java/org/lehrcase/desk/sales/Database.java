package org.lehrcase.desk.sales;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import org.sqlite.SQLiteConfig;

/**
 * One connection with bound parameters only. Safe for several threads: each statement, and each
 * transaction as a whole, keeps the others waiting.
 */
final class Database implements AutoCloseable {
  private static final int BUSY_MILLIS = 5_000;

  private final Connection connection;
  private final ReentrantLock turn = new ReentrantLock();

  Database(Connection connection) {
    this.connection = connection;
  }

  /** Reads one row of a result. */
  @FunctionalInterface
  interface RowReader<T> {
    /**
     * Reads the row under the cursor.
     *
     * @param row positioned on a row
     * @return the value
     * @throws SQLException if a column is missing
     */
    T read(ResultSet row) throws SQLException;
  }

  /** Statements that belong together. */
  @FunctionalInterface
  interface Steps<T, E extends Exception> {
    /**
     * Runs the statements.
     *
     * @return the result
     * @throws IOException if a statement fails
     * @throws E if the steps refuse
     */
    T run() throws IOException, E;
  }

  static Database open(Path file) throws SalesException {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_MILLIS);
    try {
      return new Database(config.createConnection("jdbc:sqlite:" + file));
    } catch (SQLException e) {
      throw failure(e);
    }
  }

  <T> List<T> rows(String sql, RowReader<T> reader, Object... values) throws SalesException {
    turn.lock();
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
      throw failure(e);
    } finally {
      turn.unlock();
    }
  }

  <T> Optional<T> row(String sql, RowReader<T> reader, Object... values) throws SalesException {
    List<T> rows = rows(sql, reader, values);
    return rows.isEmpty() ? Optional.empty() : Optional.of(rows.get(0));
  }

  int number(String sql, Object... values) throws SalesException {
    return row(sql, r -> r.getInt(1), values).orElse(0);
  }

  int change(String sql, Object... values) throws SalesException {
    turn.lock();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, values);
      return statement.executeUpdate();
    } catch (SQLException e) {
      throw failure(e);
    } finally {
      turn.unlock();
    }
  }

  /** Runs a script of our own that may hold several statements; never text from outside. */
  void script(String sql) throws SalesException {
    turn.lock();
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    } catch (SQLException e) {
      throw failure(e);
    } finally {
      turn.unlock();
    }
  }

  /** Runs the steps in one transaction; whatever they throw undoes all of them. */
  <T, E extends Exception> T transaction(Steps<T, E> steps) throws IOException, E {
    turn.lock();
    try {
      return inOneTurn(steps);
    } finally {
      turn.unlock();
    }
  }

  private <T, E extends Exception> T inOneTurn(Steps<T, E> steps) throws IOException, E {
    autoCommit(false);
    boolean kept = false;
    try {
      T result = steps.run();
      connection.commit();
      kept = true;
      return result;
    } catch (SQLException e) {
      throw failure(e);
    } finally {
      if (!kept) {
        undo();
      }
      autoCommit(true);
    }
  }

  @Override
  public void close() throws SalesException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw failure(e);
    }
  }

  private void undo() throws SalesException {
    try {
      connection.rollback();
    } catch (SQLException e) {
      throw failure(e);
    }
  }

  private void autoCommit(boolean each) throws SalesException {
    try {
      connection.setAutoCommit(each);
    } catch (SQLException e) {
      throw failure(e);
    }
  }

  private static void bind(PreparedStatement statement, Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, values[i]);
    }
  }

  private static SalesException failure(SQLException e) {
    return new SalesException(
        "The sales book could not be used (" + e.getMessage() + "). Nothing of this step was kept.",
        e);
  }
}
