package org.lehrcase.desk.sales;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyInt;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.Mockito.doThrow;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DatabaseTest {
  private final Connection connection = mock(Connection.class);
  private final PreparedStatement statement = mock(PreparedStatement.class);
  private final Database refusing = new Database(connection);

  @TempDir Path folder;

  @BeforeEach
  void aValueThatCannotBeBound() throws SQLException {
    when(connection.prepareStatement(anyString())).thenReturn(statement);
    doThrow(new SQLException("no such type")).when(statement).setObject(anyInt(), any());
  }

  @Test
  void aQueryWhoseValueCannotBeBoundIsClosed() throws SQLException {
    assertThatThrownBy(() -> refusing.rows("SELECT ?", row -> row.getInt(1), 7))
        .isInstanceOf(SalesException.class)
        .hasMessageContaining("no such type");
    verify(statement).close();
  }

  @Test
  void aChangeWhoseValueCannotBeBoundIsClosed() throws SQLException {
    assertThatThrownBy(() -> refusing.change("DELETE FROM people WHERE id = ?", 7))
        .isInstanceOf(SalesException.class)
        .hasMessageContaining("Nothing of this step was kept");
    verify(statement).close();
  }

  @Test
  void stepsThatFailLeaveNoTrace() throws Exception {
    try (Database database = Database.open(folder.resolve("book.db"))) {
      database.script("CREATE TABLE jars (name TEXT UNIQUE)");
      assertThatThrownBy(
              () ->
                  database.transaction(
                      () ->
                          database.change("INSERT INTO jars VALUES (?)", "opal")
                              + database.change("INSERT INTO jars VALUES (?)", "opal")))
          .isInstanceOf(SalesException.class);
      assertThat(database.rows("SELECT name FROM jars", row -> row.getString(1)))
          .isEqualTo(List.of());
    }
  }
}
