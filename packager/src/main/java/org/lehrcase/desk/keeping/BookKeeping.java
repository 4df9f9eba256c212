package org.lehrcase.desk.keeping;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LicenseTerms;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.sales.Actions;
import org.lehrcase.desk.sales.Event;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.LicenseState;
import org.lehrcase.desk.sales.Person;
import org.lehrcase.desk.sales.Place;
import org.lehrcase.desk.sales.SalesBook;

/**
 * Acts on what was sold. Each is one step of the book with its event, and can be taken back until
 * something of it was sent.
 */
public final class BookKeeping {
  static final String BLOCKED = "blocked";
  static final String REFUNDED = "refunded";
  static final String UNBLOCKED = "unblocked";
  static final String PLACES = "places";
  static final String RENAMED = "renamed";
  private static final int MAX_PLACES = 99;

  private final SalesBook book;

  /**
   * Works with a book.
   *
   * @param book the sales book
   */
  public BookKeeping(SalesBook book) {
    this.book = book;
  }

  /**
   * Blocks a license: no card is answered and no later edition opens; what opens now stays open.
   *
   * @param id the license
   * @return the event
   * @throws RefusedException if it is unknown or blocked already
   * @throws IOException if the book cannot be used
   */
  public Event block(LicenseId id) throws IOException, RefusedException {
    return mark(id, LicenseState.BLOCKED, BLOCKED);
  }

  /**
   * Enters a refund: the license is blocked.
   *
   * @param id the license
   * @return the event; its detail says whether a laptop was ever answered
   * @throws RefusedException if the license is unknown or blocked already
   * @throws IOException if the book cannot be used
   */
  public Event refund(LicenseId id) throws IOException, RefusedException {
    return mark(id, LicenseState.BLOCKED, REFUNDED);
  }

  /**
   * Serves a blocked license again.
   *
   * @param id the license
   * @return the event
   * @throws RefusedException if it is unknown or not blocked
   * @throws IOException if the book cannot be used
   */
  public Event unblock(LicenseId id) throws IOException, RefusedException {
    return mark(id, LicenseState.OPEN, UNBLOCKED);
  }

  private Event mark(LicenseId id, LicenseState wanted, String kind)
      throws IOException, RefusedException {
    return book.<Event, RefusedException>together(
        () -> {
          LicenseEntry entry = find(id);
          if (entry.state() == wanted) {
            throw refused(
                Refusal.WRONG_ENTRY,
                wanted == LicenseState.OPEN
                    ? "The license is not blocked."
                    : "The license is blocked already.");
          }
          book.licenses().mark(id, wanted);
          Event event =
              book.events().add(kind, id.hex(), wasOpened(id) ? "opened" : "never opened");
          book.actions().add(event, id, entry.state().name());
          return event;
        });
  }

  /**
   * Says whether a laptop ever got a letter of a license.
   *
   * @param id the license
   * @return whether it was opened, as far as the desk can know
   * @throws IOException if the book cannot be read
   */
  public boolean wasOpened(LicenseId id) throws IOException {
    return !book.places().of(id).isEmpty();
  }

  /**
   * Gives a license another number of places.
   *
   * @param id the license
   * @param places as many as are in use, to 99
   * @return the event
   * @throws RefusedException if more are in use, or the number cannot be right
   * @throws IOException if the book cannot be used
   */
  public Event places(LicenseId id, int places) throws IOException, RefusedException {
    return book.<Event, RefusedException>together(
        () -> {
          LicenseEntry entry = find(id);
          long living = book.places().of(id).stream().filter(Place::living).count();
          if (places < Math.max(1, living) || places > MAX_PLACES) {
            throw refused(
                Refusal.WRONG_ENTRY,
                "A license has 1 to 99 places, and " + living + " of this one are in use.");
          }
          book.licenses().allow(id, places);
          Event event =
              book.events().add(PLACES, id.hex(), entry.terms().places() + " to " + places);
          book.actions().add(event, id, Integer.toString(entry.terms().places()));
          return event;
        });
  }

  /**
   * Corrects a buyer's name or address.
   *
   * @param person the buyer's id
   * @param name the right name
   * @param email the right address
   * @return the event
   * @throws RefusedException if an entry cannot be right or another buyer has the address
   * @throws IOException if the book cannot be used
   */
  public Event rename(String person, String name, String email)
      throws IOException, RefusedException {
    Order.typed(name, email, "any", new LicenseTerms.Allowance(1, 0)); // the same rules as a sale
    return book.<Event, RefusedException>together(
        () -> {
          Person before = person(person);
          Optional<Person> other = book.people().byEmail(email.strip());
          if (name.isBlank() || other.isPresent() && !other.get().id().equals(person)) {
            throw refused(
                Refusal.WRONG_ENTRY, "The name is empty, or another buyer has this address.");
          }
          book.people().change(new Person(person, name.strip(), email.strip(), before.since()));
          Event event = book.events().add(RENAMED, person, "");
          List<LicenseEntry> licenses = book.licenses().of(person);
          if (!licenses.isEmpty()) {
            book.actions().add(event, licenses.get(0).id(), before.name() + "\t" + before.email());
          }
          return event;
        });
  }

  /**
   * Forgets who a buyer is: name and address leave the book, licenses and laptops stay.
   *
   * @param person the buyer's id
   * @throws RefusedException if there is no such buyer
   * @throws IOException if the book cannot be used
   */
  public void erase(String person) throws IOException, RefusedException {
    book.<Boolean, RefusedException>together(
        () -> {
          person(person);
          for (LicenseEntry license : book.licenses().of(person)) {
            book.actions().forget(license.id());
          }
          book.people().erase(person);
          return true;
        });
  }

  /**
   * Enters that a license's message was sent; what was done to it before stays done.
   *
   * @param id the license
   * @throws RefusedException if it is unknown
   * @throws IOException if the book cannot be used
   */
  public void sent(LicenseId id) throws IOException, RefusedException {
    book.<Boolean, RefusedException>together(
        () -> {
          LicenseEntry entry = find(id);
          book.actions().sent(id);
          book.events().add("sent", id.hex(), "issue " + entry.issue());
          return true;
        });
  }

  /**
   * Takes back the newest act on a license.
   *
   * @param seq the number of its event
   * @return the event that takes it back
   * @throws RefusedException if it was sent, taken back, or something was done after it
   * @throws IOException if the book cannot be used
   */
  public Event undo(long seq) throws IOException, RefusedException {
    return book.<Event, RefusedException>together(
        () -> {
          Actions.Action action = undoable(seq);
          restore(action);
          book.actions().mark(seq, Actions.State.UNDONE);
          return book.events().add("undone", action.license().hex(), action.kind() + " " + seq);
        });
  }

  private Actions.Action undoable(long seq) throws IOException, RefusedException {
    Actions.Action action =
        book.actions()
            .at(seq)
            .orElseThrow(() -> refused(Refusal.TOO_LATE, "This can not be taken back."));
    boolean later =
        book.actions().of(action.license()).stream()
            .anyMatch(a -> a.seq() > seq && a.state() != Actions.State.UNDONE);
    if (action.state() != Actions.State.OPEN || later) {
      throw refused(
          Refusal.TOO_LATE,
          "This can not be taken back: something of it was sent, or more was done since.");
    }
    return action;
  }

  private void restore(Actions.Action action) throws IOException, RefusedException {
    LicenseId id = action.license();
    switch (action.kind()) {
      case PLACES -> {
        long living = book.places().of(id).stream().filter(Place::living).count();
        if (Integer.parseInt(action.before()) < living) {
          throw refused(Refusal.TOO_LATE, "The places are in use by now.");
        }
        book.licenses().allow(id, Integer.parseInt(action.before()));
      }
      case RENAMED -> {
        Person now = find(id).person();
        String[] before = action.before().split("\t", 2);
        book.people().change(new Person(now.id(), before[0], before[1], now.since()));
      }
      default -> book.licenses().mark(id, LicenseState.valueOf(action.before()));
    }
  }

  private LicenseEntry find(LicenseId id) throws IOException, RefusedException {
    return book.licenses()
        .byId(id)
        .orElseThrow(
            () -> refused(Refusal.UNKNOWN_LICENSE, "This license is not in the sales book."));
  }

  private Person person(String id) throws IOException, RefusedException {
    return book.people()
        .byId(id)
        .orElseThrow(() -> refused(Refusal.WRONG_ENTRY, "This buyer is not in the sales book."));
  }

  private static RefusedException refused(Refusal reason, String message) {
    return new RefusedException(reason, message + " Nothing was changed.");
  }
}
