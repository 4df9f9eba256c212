package org.lehrcase.desk.sales;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.Octets;

/** Everything that happened, in a chain of hashes: a changed or missing event shows. */
public final class Events {
  private static final Octets NONE = Octets.of(new byte[32]);
  private static final String ALL = "SELECT * FROM event ORDER BY seq";
  private static final String LAST = "SELECT * FROM event ORDER BY seq DESC LIMIT 1";
  private static final String AT = "SELECT * FROM event WHERE seq = ?";
  private static final String NEWEST_FIRST =
      "SELECT * FROM event WHERE (? = '' OR kind = ?) AND at >= ? AND at < ?"
          + " ORDER BY seq DESC LIMIT ?";
  private static final String ADD =
      "INSERT INTO event (seq, at, kind, subject, detail, previous, hash) VALUES (?,?,?,?,?,?,?)";

  private final Database database;
  private final Clock clock;

  Events(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Adds an event at the present time.
   *
   * @param kind what happened, in one word
   * @param subject the identifier that it is about
   * @param detail further facts for people; never a secret
   * @return the event with its number and hash
   * @throws SalesException if the book cannot be written
   */
  public Event add(String kind, String subject, String detail) throws SalesException {
    Optional<Event> last = database.row(LAST, Events::read);
    Event event =
        Event.next(
            last.map(Event::hash).orElse(NONE),
            last.map(Event::seq).orElse(0L) + 1,
            clock.instant().truncatedTo(ChronoUnit.SECONDS),
            new String[] {kind, subject, detail});
    database.change(
        ADD,
        event.seq(),
        event.at().toString(),
        kind,
        subject,
        detail,
        event.previous().toBytes(),
        event.hash().toBytes());
    return event;
  }

  /**
   * Finds the newest event.
   *
   * @return the event, or nothing in an empty book
   * @throws SalesException if the book cannot be read
   */
  public Optional<Event> newest() throws SalesException {
    return database.row(LAST, Events::read);
  }

  /**
   * Finds an event.
   *
   * @param seq its number
   * @return the event, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<Event> at(long seq) throws SalesException {
    return database.row(AT, Events::read, seq);
  }

  /**
   * Which events are wanted.
   *
   * @param kind the kind, or nothing for all
   * @param from ISO day or instant; nothing for the beginning
   * @param before ISO day or instant; "9" for no end
   * @param limit most of them
   */
  public record Filter(String kind, String from, String before, int limit) {}

  /**
   * Lists events, newest first.
   *
   * @param filter which
   * @return the events
   * @throws SalesException if the book cannot be read
   */
  public List<Event> some(Filter filter) throws SalesException {
    return database.rows(
        NEWEST_FIRST,
        Events::read,
        filter.kind(),
        filter.kind(),
        filter.from(),
        filter.before(),
        filter.limit());
  }

  /**
   * Counts events of a kind with one detail.
   *
   * @param kind the kind
   * @param detail the whole detail
   * @param from ISO day or instant from which they count
   * @return how many
   * @throws SalesException if the book cannot be read
   */
  public int count(String kind, String detail, String from) throws SalesException {
    return database
        .row(
            "SELECT count(*) FROM event WHERE kind = ? AND detail = ? AND at >= ?",
            row -> row.getInt(1),
            kind,
            detail,
            from)
        .orElse(0);
  }

  /**
   * Lists all events.
   *
   * @return oldest first
   * @throws SalesException if the book cannot be read
   */
  public List<Event> all() throws SalesException {
    return database.rows(ALL, Events::read);
  }

  /**
   * Follows the chain from the first event.
   *
   * @return the number of the first event that does not follow, or nothing if the chain is whole
   * @throws SalesException if the book cannot be read
   */
  public Optional<Long> firstBroken() throws SalesException {
    Octets expected = NONE;
    for (Event event : all()) {
      if (!event.previous().equals(expected) || !event.isWhole()) {
        return Optional.of(event.seq());
      }
      expected = event.hash();
    }
    return Optional.empty();
  }

  private static Event read(ResultSet row) throws SQLException {
    return new Event(
        row.getLong("seq"),
        Instant.parse(row.getString("at")),
        row.getString("kind"),
        row.getString("subject"),
        row.getString("detail"),
        Octets.of(row.getBytes("previous")),
        Octets.of(row.getBytes("hash")));
  }
}
