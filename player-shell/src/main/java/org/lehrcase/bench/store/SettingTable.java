package org.lehrcase.bench.store;

import java.util.Map;
import java.util.TreeMap;

/** The student's choices by name: units, speed, caption size and the like. */
public final class SettingTable {
  private static final String KEEP =
      "INSERT INTO setting (name, value) VALUES (?,?)"
          + " ON CONFLICT (name) DO UPDATE SET value=excluded.value";

  private final Database database;

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   */
  public SettingTable(Database database) {
    this.database = database;
  }

  /**
   * Keeps some settings; those not named stay as they are.
   *
   * @param changed values by name
   * @throws StoreException if they could not be written
   */
  public void keep(Map<String, String> changed) throws StoreException {
    database.inTransaction(
        () -> {
          for (Map.Entry<String, String> entry : changed.entrySet()) {
            database.run(KEEP, entry.getKey(), entry.getValue());
          }
          return changed.size();
        });
  }

  /**
   * Returns every setting that was ever kept.
   *
   * @return values by name, sorted
   * @throws StoreException if they could not be read
   */
  public Map<String, String> all() throws StoreException {
    Map<String, String> all = new TreeMap<>();
    database
        .list("SELECT name, value FROM setting", r -> Map.entry(r.getString(1), r.getString(2)))
        .forEach(entry -> all.put(entry.getKey(), entry.getValue()));
    return all;
  }
}
