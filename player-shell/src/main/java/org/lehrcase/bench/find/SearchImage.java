package org.lehrcase.bench.find;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.sqlite.SQLiteConnection;

/**
 * An opened search image, in memory alone. An image is authentic, but the teacher's: it is read as
 * any foreign file, its tables must be the known ones, and it can only be asked. Safe for many
 * threads, which take turns.
 */
public final class SearchImage implements AutoCloseable {
  /** Most passages that one question looks at closely. */
  private static final int MOST = 120;

  /** So many good answers make further ones needless. */
  private static final int ENOUGH = 40;

  private static final int FEW = 5;

  private static final String ASK =
      "SELECT p.kind, l.lesson, l.asset, p.at, p.text FROM"
          + " (SELECT rowid AS found FROM words WHERE words MATCH ? ORDER BY rowid LIMIT "
          + MOST
          + ") JOIN passage p ON p.id = found JOIN place l ON l.id = p.place ORDER BY found";
  private static final String FORMS =
      "SELECT w.word FROM forms JOIN word w ON w.id = forms.rowid WHERE forms MATCH ? LIMIT 64";

  private final Connection connection;
  private final Vocabulary vocabulary;

  private SearchImage(Connection connection, Vocabulary vocabulary) {
    this.connection = connection;
    this.vocabulary = vocabulary;
  }

  /**
   * Opens an image.
   *
   * @param image its bytes; not kept
   * @return the image; the caller closes it
   * @throws VaultException if it is no search image of a version that this program reads
   */
  public static SearchImage open(byte[] image) throws VaultException {
    Connection connection = null;
    boolean whole = false;
    try {
      connection = ImageForm.inMemory();
      ((SQLiteConnection) connection).deserialize("main", image);
      requireForm(connection);
      ImageForm.run(connection, "PRAGMA query_only=ON");
      SearchImage opened = new SearchImage(connection, Vocabulary.load(connection));
      whole = true;
      return opened;
    } catch (SQLException e) {
      throw new VaultException.Malformed("a search image that cannot be read: " + e.getMessage());
    } finally {
      if (!whole) {
        closeQuietly(connection);
      }
    }
  }

  private static void requireForm(Connection connection) throws SQLException, VaultException {
    int version = ImageForm.number(connection, "PRAGMA user_version");
    if (ImageForm.number(connection, "PRAGMA application_id") != ImageForm.APPLICATION_ID) {
      throw new VaultException.Malformed("this is no search image");
    }
    if (version != ImageForm.VERSION) {
      throw new VaultException.UnsupportedVersion(
          "search image of version " + version + ", this program reads " + ImageForm.VERSION);
    }
    try (Connection model = ImageForm.inMemory()) {
      ImageForm.create(model);
      if (!ImageForm.objects(connection).equals(ImageForm.objects(model))) {
        throw new VaultException.Malformed("a search image with other tables");
      }
    }
  }

  private static void closeQuietly(@Nullable Connection connection) {
    if (connection != null) {
      try {
        connection.close();
      } catch (SQLException e) {
        return; // it was in memory alone
      }
    }
  }

  /**
   * Looks for passages.
   *
   * @param question what is looked for
   * @return what was found, the best first; empty for a question without words
   * @throws VaultException if the image turns out to be broken
   */
  public synchronized List<Hit> ask(Question question) throws VaultException {
    try {
      return answer(question);
    } catch (SQLException e) {
      throw new VaultException.Malformed("a search image that cannot be read: " + e.getMessage());
    }
  }

  private List<Hit> answer(Question question) throws SQLException {
    List<Meant> words = new ArrayList<>();
    for (int i = 0; i < question.words().size(); i++) {
      String word = question.words().get(i);
      boolean typing = question.typing() && i == question.words().size() - 1;
      Meant meant = vocabulary.meant(word, typing, english(word));
      if (!meant.isNothing()) {
        words.add(meant);
      }
    }
    if (words.isEmpty()) {
      return List.of();
    }
    Map<Passage, Hit> hits = new LinkedHashMap<>();
    Weighing weighing = new Weighing(words);
    for (String match : Expressions.of(words, question.kinds())) {
      if (hits.size() < ENOUGH) {
        collect(match, weighing, hits);
      }
    }
    if (hits.size() < FEW && words.size() > 1) {
      collect(Expressions.any(words, question.kinds()), weighing, hits);
    }
    return hits.values().stream()
        .sorted(Comparator.comparing(Hit::covered).thenComparing(Hit::score).reversed())
        .limit(ENOUGH)
        .toList();
  }

  private List<String> english(String word) throws SQLException {
    List<String> forms = new ArrayList<>();
    try (PreparedStatement ask = connection.prepareStatement(FORMS)) {
      ask.setString(1, Meant.quoted(word));
      try (ResultSet rows = ask.executeQuery()) {
        while (rows.next()) {
          forms.add(rows.getString(1));
        }
      }
    }
    return forms;
  }

  private void collect(String match, Weighing weighing, Map<Passage, Hit> hits)
      throws SQLException {
    try (PreparedStatement ask = connection.prepareStatement(ASK)) {
      ask.setString(1, match);
      try (ResultSet rows = ask.executeQuery()) {
        int rank = 0;
        while (rows.next()) {
          Optional<Passage> passage = passage(rows);
          if (passage.isPresent() && !hits.containsKey(passage.get())) {
            hits.put(passage.get(), weighing.weigh(passage.get(), rank));
          }
          rank++;
        }
      }
    }
  }

  private static Optional<Passage> passage(ResultSet row) throws SQLException {
    byte @Nullable [] lesson = row.getBytes(2);
    byte @Nullable [] asset = row.getBytes(3);
    boolean sane =
        (lesson == null || lesson.length == LessonId.BYTES)
            && (asset == null || asset.length == AssetId.BYTES)
            && row.getLong(4) >= 0;
    Optional<PassageKind> kind = PassageKind.ofCode(row.getInt(1));
    if (!sane || kind.isEmpty()) {
      return Optional.empty();
    }
    Spot spot =
        new Spot(
            Optional.ofNullable(lesson).map(LessonId::of),
            Optional.ofNullable(asset).map(AssetId::of),
            row.getLong(4));
    return Optional.of(new Passage(kind.get(), spot, row.getString(5)));
  }

  @Override
  public synchronized void close() {
    closeQuietly(connection);
  }
}
