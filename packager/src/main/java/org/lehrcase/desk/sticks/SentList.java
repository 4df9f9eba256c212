package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.pack.Sizes;
import org.lehrcase.desk.sales.Event;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.SalesBook;

/** The sticks that were made, kept as events of the sales book, and their list on paper. */
public final class SentList {
  private static final String KIND = "stick";

  private final SalesBook book;

  /**
   * Works with a book.
   *
   * @param book the sales book
   */
  public SentList(SalesBook book) {
    this.book = book;
  }

  /** Enters a stick; one that was only looked through again and is in the book already is not. */
  void enter(StickResult result, StickLoad load) throws IOException {
    String subject = result.recipient().subject();
    String detail = load.words() + "; " + Sizes.words(result.bytes());
    if (result.written() == 0 && isKnown(subject, detail)) {
      return;
    }
    book.together(() -> book.events().add(KIND, subject, detail));
  }

  private boolean isKnown(String subject, String detail) throws IOException {
    return book.events().all().stream()
        .filter(event -> event.kind().equals(KIND))
        .anyMatch(event -> event.subject().equals(subject) && event.detail().equals(detail));
  }

  /**
   * Writes the list, oldest first, with a box to tick for each stick.
   *
   * @param shop whose list it is
   * @return lines of text
   * @throws IOException if the book cannot be read
   */
  public List<String> lines(String shop) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("Sticks of " + shop + ", " + book.today());
    lines.add("");
    int before = lines.size();
    for (Event event : book.events().all()) {
      if (event.kind().equals(KIND)) {
        LocalDate day = LocalDate.ofInstant(event.at(), ZoneOffset.UTC);
        lines.add("[ ] " + day + "  " + who(event.subject()) + "  " + event.detail());
      }
    }
    lines.add(lines.size() == before ? "none yet" : (lines.size() - before) + " in all");
    return lines;
  }

  private String who(String subject) throws IOException {
    if (!subject.matches("[0-9a-f]{32}")) {
      return "(no license)";
    }
    Optional<LicenseEntry> entry = book.licenses().byId(LicenseId.ofHex(subject));
    return entry
        .map(one -> one.person().name() + " <" + one.person().email() + ">")
        .orElse("license " + subject);
  }
}
