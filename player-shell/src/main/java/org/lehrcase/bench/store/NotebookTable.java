package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The named notebooks on this laptop. Nothing is ever deleted here. */
public final class NotebookTable {
  /** Most notebooks on one laptop. */
  public static final int MOST = 100;

  private static final String FIRST_NAME = "My notebook";
  private static final String OPEN_ONE = "notebook";

  private final Database database;
  private final SettingTable settings;
  private final Clock clock;

  /**
   * One notebook.
   *
   * @param id its id, 32 hexadecimal digits
   * @param name its name
   * @param madeAtMillis when it was made, UTC
   */
  public record Notebook(String id, String name, long madeAtMillis) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public NotebookTable(Database database, Clock clock) {
    this.database = database;
    this.settings = new SettingTable(database);
    this.clock = clock;
  }

  /**
   * Makes a notebook.
   *
   * @param name its name
   * @return the notebook; empty if there are {@link #MOST} already
   * @throws StoreException if it could not be written
   */
  public Optional<Notebook> make(String name) throws StoreException {
    Notebook made =
        new Notebook(UUID.randomUUID().toString().replace("-", ""), name, clock.millis());
    return database.inTransaction(
        () -> {
          if (all().size() >= MOST) {
            return Optional.empty();
          }
          keep(made);
          return Optional.of(made);
        });
  }

  /**
   * Adds a notebook that came from another laptop; a known one keeps the name that it has here.
   *
   * @param notebook the notebook
   * @throws StoreException if it could not be written
   */
  public void keep(Notebook notebook) throws StoreException {
    database.run(
        "INSERT INTO notebook (id, name, made_at_millis) VALUES (?,?,?)"
            + " ON CONFLICT (id) DO NOTHING",
        notebook.id(),
        notebook.name(),
        notebook.madeAtMillis());
  }

  /**
   * Gives a notebook another name.
   *
   * @param id the notebook
   * @param name its new name
   * @throws StoreException if it could not be written
   */
  public void rename(String id, String name) throws StoreException {
    database.run("UPDATE notebook SET name=? WHERE id=?", name, id);
  }

  /**
   * Returns every notebook in the order in which they came.
   *
   * @return the notebooks
   * @throws StoreException if they could not be read
   */
  public List<Notebook> all() throws StoreException {
    return database.list(
        "SELECT id, name, made_at_millis FROM notebook ORDER BY rowid",
        row -> new Notebook(row.getString(1), row.getString(2), row.getLong(3)));
  }

  /**
   * Returns one notebook.
   *
   * @param id the notebook
   * @return the notebook, empty if there is none
   * @throws StoreException if it could not be read
   */
  public Optional<Notebook> find(String id) throws StoreException {
    return all().stream().filter(notebook -> notebook.id().equals(id)).findFirst();
  }

  /**
   * Returns the notebook that lies open; the first time one is made.
   *
   * @return the notebook
   * @throws StoreException if it could not be read or made
   */
  public Notebook open() throws StoreException {
    return database.inTransaction(
        () -> {
          List<Notebook> all = all();
          if (all.isEmpty()) {
            Notebook first =
                new Notebook(
                    UUID.randomUUID().toString().replace("-", ""), FIRST_NAME, clock.millis());
            keep(first);
            return first;
          }
          String open = settings.all().getOrDefault(OPEN_ONE, "");
          return find(open).orElse(all.get(0));
        });
  }

  /**
   * Opens another notebook, until a third one is opened.
   *
   * @param id the notebook
   * @throws StoreException if it could not be written
   */
  public void open(String id) throws StoreException {
    settings.keep(java.util.Map.of(OPEN_ONE, id));
  }
}
