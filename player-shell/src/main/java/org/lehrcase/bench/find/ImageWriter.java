package org.lehrcase.bench.find;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.sqlite.SQLiteConnection;

/**
 * Makes the image of passages: a SQLite database in memory, given out as bytes. The same passages
 * always give the same bytes.
 */
public final class ImageWriter {
  private final List<Passage> passages;
  private final List<List<Token>> tokens;
  private final Vocabulary.Draft vocabulary;

  private ImageWriter(List<Passage> passages) {
    this.passages = passages;
    this.tokens = passages.stream().map(p -> Words.of(p.text())).toList();
    this.vocabulary = new Vocabulary.Draft();
  }

  /**
   * Makes an image.
   *
   * @param passages what can be found; captions, pages and sections in the order of reading, as
   *     each is found also by the words of the one after it
   * @return the bytes of the image
   */
  public static byte[] write(List<Passage> passages) {
    try (Connection connection = ImageForm.inMemory()) {
      new ImageWriter(List.copyOf(passages)).fill(connection);
      return ((SQLiteConnection) connection).serialize("main");
    } catch (SQLException e) {
      throw new IllegalStateException("a search image could not be made in memory", e);
    }
  }

  private void fill(Connection connection) throws SQLException {
    ImageForm.create(connection);
    connection.setAutoCommit(false);
    passages(connection);
    words(connection);
    hear();
    vocabulary.write(connection);
    ImageForm.run(connection, "INSERT INTO words(words) VALUES('optimize')");
    ImageForm.run(connection, "INSERT INTO forms(forms) VALUES('optimize')");
    connection.commit();
    connection.setAutoCommit(true);
  }

  private void passages(Connection connection) throws SQLException {
    Map<Spot, Integer> places = new HashMap<>();
    try (PreparedStatement place =
            connection.prepareStatement("INSERT INTO place(id, lesson, asset) VALUES(?,?,?)");
        PreparedStatement passage =
            connection.prepareStatement(
                "INSERT INTO passage(id, kind, place, at, text) VALUES(?,?,?,?,?)")) {
      for (int i = 0; i < passages.size(); i++) {
        Passage one = passages.get(i);
        Spot key = new Spot(one.spot().lesson(), one.spot().asset(), 0);
        int known = places.size();
        int id = places.computeIfAbsent(key, k -> known + 1);
        if (id > known) {
          place.setInt(1, id);
          place.setBytes(2, key.lesson().map(LessonId::toBytes).orElse(null));
          place.setBytes(3, key.asset().map(AssetId::toBytes).orElse(null));
          place.execute();
        }
        passage.setInt(1, i + 1);
        passage.setInt(2, one.kind().code());
        passage.setInt(3, id);
        passage.setLong(4, one.spot().at());
        passage.setString(5, one.text());
        passage.execute();
      }
    }
  }

  private void words(Connection connection) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO words(rowid, title, body, beside, kind) VALUES(?,?,?,?,?)")) {
      for (int i = 0; i < passages.size(); i++) {
        boolean title = passages.get(i).kind().isTitle();
        String own = line(tokens.get(i));
        insert.setInt(1, i + 1);
        insert.setString(2, title ? own : "");
        insert.setString(3, title ? "" : own);
        insert.setString(4, goesOn(i) ? line(tokens.get(i + 1)) : "");
        insert.setString(5, passages.get(i).kind().group().word());
        insert.execute();
      }
    }
  }

  /** Says whether the next passage is the next piece of the same text. */
  private boolean goesOn(int i) {
    if (i + 1 >= passages.size() || passages.get(i).kind().isTitle()) {
      return false;
    }
    Passage one = passages.get(i);
    Passage next = passages.get(i + 1);
    boolean text =
        one.kind() == PassageKind.CAPTION
            || one.kind() == PassageKind.PAGE
            || one.kind() == PassageKind.SECTION;
    return text
        && one.kind() == next.kind()
        && one.spot().lesson().equals(next.spot().lesson())
        && one.spot().asset().equals(next.spot().asset());
  }

  /** Finds out which texts are German; a short one is taken for what the whole is. */
  private void hear() {
    Tongue whole = new Tongue();
    Map<Object, Tongue> tongues = new HashMap<>();
    for (int i = 0; i < passages.size(); i++) {
      whole.hear(tokens.get(i));
      tongues.computeIfAbsent(text(i), k -> new Tongue()).hear(tokens.get(i));
    }
    for (int i = 0; i < passages.size(); i++) {
      Tongue own = Objects.requireNonNull(tongues.get(text(i)));
      vocabulary.add(tokens.get(i), (own.isShort() ? whole : own).isGerman());
    }
  }

  private Object text(int i) {
    Spot spot = passages.get(i).spot();
    return spot.asset().isPresent() ? spot.asset() : spot.lesson();
  }

  private static String line(List<Token> tokens) {
    return tokens.stream().map(Token::word).collect(Collectors.joining(" "));
  }
}
