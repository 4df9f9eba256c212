package org.lehrcase.desk.sales;

import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;

/** Acts that can be taken back until something of them was sent. */
public final class Actions {
  private static final String SELECT = "SELECT * FROM action ";
  private static final String ADD =
      "INSERT INTO action (seq, license_id, kind, before, state) VALUES (?,?,?,?,'OPEN')";

  private final Database database;

  Actions(Database database) {
    this.database = database;
  }

  /** Whether an act can be taken back. */
  public enum State {
    /** It can. */
    OPEN,
    /** Something of it was sent. */
    SENT,
    /** It was taken back. */
    UNDONE
  }

  /**
   * One act.
   *
   * @param seq the number of its event
   * @param license the license it is about
   * @param kind what was done
   * @param before what was so before
   * @param state whether it can be taken back
   */
  public record Action(long seq, LicenseId license, String kind, String before, State state) {}

  /**
   * Enters an act.
   *
   * @param event its event
   * @param license the license it is about
   * @param before what was so before, to take it back to
   * @throws SalesException if the book cannot be written
   */
  public void add(Event event, LicenseId license, String before) throws SalesException {
    database.change(ADD, event.seq(), license.hex(), event.kind(), before);
  }

  /**
   * Finds an act.
   *
   * @param seq the number of its event
   * @return the act, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<Action> at(long seq) throws SalesException {
    return database.row(SELECT + "WHERE seq = ?", Actions::read, seq);
  }

  /**
   * Lists the acts on a license.
   *
   * @param license the license
   * @return newest first
   * @throws SalesException if the book cannot be read
   */
  public List<Action> of(LicenseId license) throws SalesException {
    return database.rows(
        SELECT + "WHERE license_id = ? ORDER BY seq DESC", Actions::read, license.hex());
  }

  /**
   * Marks an act.
   *
   * @param seq the number of its event
   * @param state from now on
   * @throws SalesException if the book cannot be written
   */
  public void mark(long seq, State state) throws SalesException {
    database.change("UPDATE action SET state = ? WHERE seq = ?", state.name(), seq);
  }

  /**
   * Takes note that a license's message was sent: what was done to it before stays done.
   *
   * @param license the license
   * @throws SalesException if the book cannot be written
   */
  public void sent(LicenseId license) throws SalesException {
    database.change(
        "UPDATE action SET state = 'SENT' WHERE license_id = ? AND state = 'OPEN'", license.hex());
  }

  /**
   * Forgets what was so before on a license, since it may name a person.
   *
   * @param license the license
   * @throws SalesException if the book cannot be written
   */
  public void forget(LicenseId license) throws SalesException {
    database.change(
        "UPDATE action SET before = '', state = CASE state WHEN 'OPEN' THEN 'SENT' ELSE state END"
            + " WHERE license_id = ?",
        license.hex());
  }

  private static Action read(java.sql.ResultSet row) throws java.sql.SQLException {
    return new Action(
        row.getLong("seq"),
        LicenseId.ofHex(row.getString("license_id")),
        row.getString("kind"),
        row.getString("before"),
        State.valueOf(row.getString("state")));
  }
}
