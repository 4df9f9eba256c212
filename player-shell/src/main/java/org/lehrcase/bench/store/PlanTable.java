package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The student's plans of sheets. Every change is durable before it is answered; what stood before a
 * sitting is kept as a version.
 */
public final class PlanTable {
  /** Most plans. */
  public static final int MOST_PLANS = 300;

  /** Most versions of a plan; the oldest goes first. */
  public static final int MOST_VERSIONS = 40;

  /** A change after so long a rest begins a new sitting. */
  public static final long SITTING_MILLIS = 10L * 60 * 1000;

  private static final String COLUMNS =
      "SELECT id, name, body, revision, changed_at_millis FROM plan ";

  private final Database database;
  private final Clock clock;

  /**
   * A plan.
   *
   * @param id its id
   * @param name its name
   * @param body a JSON object, checked by whoever keeps it
   * @param revision grows with every change
   * @param changedAtMillis when it was changed last
   */
  public record Plan(String id, String name, String body, long revision, long changedAtMillis) {}

  /**
   * An earlier state.
   *
   * @param number its number, 1 the first
   * @param body the plan as it stood
   * @param atMillis when it was put aside
   */
  public record Version(int number, String body, long atMillis) {}

  /**
   * Works on an open database.
   *
   * @param database where the tables live
   * @param clock gives the times
   */
  public PlanTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a new plan.
   *
   * @param name its name
   * @param body its JSON
   * @return its id; empty if there are {@link #MOST_PLANS} already
   * @throws StoreException if it could not be written
   */
  public Optional<String> begin(String name, String body) throws StoreException {
    return database.inTransaction(
        () -> {
          int others = database.first("SELECT count(*) FROM plan", row -> row.getInt(1)).orElse(0);
          if (others >= MOST_PLANS) {
            return Optional.<String>empty();
          }
          String id = UUID.randomUUID().toString().replace("-", "");
          database.run(
              "INSERT INTO plan (id, name, body, revision, changed_at_millis) VALUES (?,?,?,1,?)",
              id,
              name,
              body,
              clock.millis());
          return Optional.of(id);
        });
  }

  /**
   * Keeps a change. The state before the first change of a sitting is put aside as a version.
   *
   * @param changed the plan with the revision that the change was made on; its time is not read
   * @return the plan as it stands now; empty, with nothing changed, if another revision stands
   * @throws StoreException if it could not be written
   */
  public Optional<Plan> keep(Plan changed) throws StoreException {
    return database.inTransaction(
        () -> {
          Optional<Plan> standing = find(changed.id());
          if (standing.isEmpty() || standing.get().revision() != changed.revision()) {
            return Optional.<Plan>empty();
          }
          if (clock.millis() - standing.get().changedAtMillis() >= SITTING_MILLIS) {
            putAside(standing.get());
          }
          write(changed);
          return find(changed.id());
        });
  }

  private void write(Plan changed) throws StoreException {
    database.run(
        "UPDATE plan SET name=?, body=?, revision=revision+1, changed_at_millis=? WHERE id=?",
        changed.name(),
        changed.body(),
        clock.millis(),
        changed.id());
  }

  /**
   * Puts the plan as it stands aside as a version.
   *
   * @param plan the plan
   * @throws StoreException if it could not be written
   */
  public void putAside(Plan plan) throws StoreException {
    database.inTransaction(
        () -> {
          List<Version> all = versions(plan.id());
          int last = all.isEmpty() ? 0 : all.get(0).number();
          if (!all.isEmpty() && all.get(0).body().equals(plan.body())) {
            return last;
          }
          database.run(
              "INSERT INTO plan_version (plan, number, body, at_millis) VALUES (?,?,?,?)",
              plan.id(),
              last + 1,
              plan.body(),
              clock.millis());
          return database.run(
              "DELETE FROM plan_version WHERE plan=? AND number<=?",
              plan.id(),
              last + 1 - MOST_VERSIONS);
        });
  }

  /**
   * Returns the versions of a plan, the newest first.
   *
   * @param id the plan
   * @return its versions
   * @throws StoreException if they could not be read
   */
  public List<Version> versions(String id) throws StoreException {
    return database.list(
        "SELECT number, body, at_millis FROM plan_version WHERE plan=? ORDER BY number DESC",
        row -> new Version(row.getInt(1), row.getString(2), row.getLong(3)),
        id);
  }

  /**
   * Returns a plan.
   *
   * @param id its id
   * @return the plan, empty if there is none
   * @throws StoreException if it could not be read
   */
  public Optional<Plan> find(String id) throws StoreException {
    return database.first(COLUMNS + "WHERE id=?", PlanTable::read, id);
  }

  /**
   * Returns every plan, what was changed last first.
   *
   * @return the plans
   * @throws StoreException if they could not be read
   */
  public List<Plan> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY changed_at_millis DESC, rowid DESC", PlanTable::read);
  }

  /**
   * Forgets a plan with its versions.
   *
   * @param id the plan
   * @throws StoreException if it could not be written
   */
  public void forget(String id) throws StoreException {
    database.run("DELETE FROM plan WHERE id=?", id);
  }

  private static Plan read(ResultSet row) throws SQLException {
    return new Plan(
        row.getString(1), row.getString(2), row.getString(3), row.getLong(4), row.getLong(5));
  }
}
