package org.lehrcase.desk.sales;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.id.Octets;

/**
 * What following the whole book found.
 *
 * @param events how many events there are
 * @param breaks what is not as it was written, a sentence each; empty for a whole book
 * @param signedUpTo the number of the newest signed event, 0 if none was ever signed
 */
public record BookCheck(long events, List<String> breaks, long signedUpTo) {
  private static final String PEOPLE = "SELECT id, name, email, salt, erased FROM person";
  private static final String SALES = "SELECT license_id, salt, facts FROM sale";

  /** Copies the list. */
  public BookCheck {
    breaks = List.copyOf(breaks);
  }

  /**
   * Says whether everything is as it was written.
   *
   * @return whether nothing was found
   */
  public boolean isWhole() {
    return breaks.isEmpty();
  }

  static BookCheck of(Database database, Events events, Optional<HeadSeal> desk)
      throws SalesException {
    List<Event> all = events.all();
    List<String> breaks = new ArrayList<>();
    events
        .firstBroken()
        .ifPresent(seq -> breaks.add("Event " + seq + " does not follow the one before it."));
    comparePeople(database, all, breaks);
    compareSales(database, all, breaks);
    Optional<Head> head = Head.read(database);
    if (head.isPresent() && desk.isPresent() && !head.get().holds(events, desk.get())) {
      breaks.add(
          "Event "
              + head.get().seq()
              + " is not what this desk signed; events were taken away,"
              + " changed or put in.");
    }
    return new BookCheck(all.size(), breaks, head.map(Head::seq).orElse(0L));
  }

  private static void comparePeople(Database database, List<Event> all, List<String> breaks)
      throws SalesException {
    Map<String, String> entered = newest(all, People.ENTERED);
    Set<String> erased = newest(all, People.ERASED).keySet();
    Set<String> met = new HashSet<>();
    database.rows(
        PEOPLE,
        row -> {
          String id = row.getString("id");
          met.add(id);
          boolean gone = row.getInt("erased") == 1;
          byte[] salt = row.getBytes("salt");
          String digest =
              salt == null
                  ? ""
                  : PersonDigest.ofPerson(
                      Octets.of(salt), row.getString("name"), row.getString("email"));
          if (gone != erased.contains(id) || !gone && !digest.equals(entered.get(id))) {
            breaks.add("The entry of person " + id + " is not what the events say.");
          }
          return id;
        });
    entered.keySet().stream()
        .filter(id -> !met.contains(id))
        .forEach(id -> breaks.add("The entry of person " + id + " is missing."));
  }

  private static void compareSales(Database database, List<Event> all, List<String> breaks)
      throws SalesException {
    Map<String, String> entered = newest(all, SaleFacts.ENTERED);
    Map<String, String> found = new HashMap<>();
    database.rows(
        SALES,
        row -> {
          Octets salt = Octets.of(row.getBytes("salt"));
          String id = row.getString("license_id");
          found.put(id, PersonDigest.ofSale(salt, row.getString("facts")));
          return id;
        });
    Set<String> both = new HashSet<>(entered.keySet());
    both.addAll(found.keySet());
    both.stream()
        .filter(id -> !String.valueOf(entered.get(id)).equals(found.get(id)))
        .sorted()
        .forEach(id -> breaks.add("The facts of sale " + id + " are not what the events say."));
  }

  private static Map<String, String> newest(List<Event> all, String kind) {
    Map<String, String> newest = new HashMap<>();
    for (Event event : all) {
      if (event.kind().equals(kind)) {
        newest.put(event.subject(), event.detail());
      }
    }
    return newest;
  }
}
