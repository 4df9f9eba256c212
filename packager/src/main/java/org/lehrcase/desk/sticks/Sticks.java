package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.license.Statement;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sticks.StickException.Reason;

/**
 * Fills envelopes: sticks for people, the letters that go with them, and the entries in the book.
 */
public final class Sticks {
  private final DeskHome desk;
  private final StickMaker maker;
  private final StickLoad load;
  private final String writeTo;

  /**
   * Prepares one run.
   *
   * @param desk its book and statement
   * @param maker makes the sticks
   * @param load what goes on every stick
   * @param writeTo whom buyers write to; blank names the place to buy, or else the shop
   */
  public Sticks(DeskHome desk, StickMaker maker, StickLoad load, String writeTo) {
    this.desk = desk;
    this.maker = maker;
    this.load = load;
    this.writeTo = writeTo.isBlank() ? whereToBuy(load, desk.statement()) : writeTo.strip();
  }

  /**
   * One stick and whose it will be.
   *
   * @param stick the mounted folder
   * @param recipient whose
   */
  public record Errand(Path stick, Recipient recipient) {}

  /**
   * Makes the sticks and enters those that are made in the sales book.
   *
   * @param errands one for each stick
   * @param papers the papers of the people; empty if nobody is named
   * @return what came of each
   * @throws StickException if a folder is no stick; nothing was written then
   * @throws RefusedException if the desk may not issue a license
   * @throws IOException if the book or the desk's disk cannot be used
   */
  public List<StickResult> make(List<Errand> errands, Optional<StickPapers> papers)
      throws IOException, StickException, RefusedException {
    requireSticks(errands);
    List<StickOrder> orders = new ArrayList<>();
    for (Errand errand : errands) {
      List<StickFile> files = new ArrayList<>();
      Optional<LicenseEntry> entry = errand.recipient().license();
      if (entry.isPresent() && papers.isPresent()) {
        files.addAll(papers.get().of(entry.get()));
      }
      files.add(StartPage.of(welcome(errand.recipient())));
      orders.add(new StickOrder(errand.stick(), errand.recipient(), load, files));
    }
    List<StickResult> results = maker.make(orders);
    for (StickResult result : results) {
      if (result.made()) {
        new SentList(desk.book()).enter(result, load);
      }
    }
    return results;
  }

  /**
   * Says what the recipient of a stick is told.
   *
   * @param recipient whose stick it is
   * @return the words for the start page and the letter
   * @throws IOException if the book cannot be read
   */
  public Welcome welcome(Recipient recipient) throws IOException {
    boolean letter = false;
    Optional<LicenseEntry> entry = recipient.license();
    if (entry.isPresent()) {
      letter = desk.book().places().of(entry.get().id()).stream().anyMatch(place -> place.living());
    }
    return new Welcome(
        entry.map(one -> one.person().name()),
        desk.statement().terms().name(),
        desk.statement().words(),
        writeTo,
        load.editions().stream().map(one -> one.title().title()).toList(),
        new Welcome.Has(load.withProgram(), letter));
  }

  /**
   * Names series that are on the stick, but not in the license.
   *
   * @param recipient whose stick it is
   * @return the series; of these only open lessons will play
   */
  public List<String> uncovered(Recipient recipient) {
    return recipient
        .license()
        .map(
            entry ->
                load.editions().stream()
                    .map(one -> one.title().series())
                    .filter(series -> !entry.terms().series().contains(series))
                    .toList())
        .orElse(List.of());
  }

  /** An unmounted stick's folder is often there and empty, on this computer's own disk. */
  private static void requireSticks(List<Errand> errands) throws IOException, StickException {
    Set<Path> seen = new HashSet<>();
    for (Errand errand : errands) {
      if (!StickGround.isStick(errand.stick()) || StickGround.isUnmounted(errand.stick())) {
        throw new StickException(
            Reason.NO_STICK,
            "There is no stick at "
                + errand.stick()
                + ". Nothing was written; put it in, and name"
                + " the folder where it shows.");
      }
      if (!seen.add(errand.stick().toRealPath())) {
        throw new StickException(
            Reason.NO_STICK, errand.stick() + " is named twice. Nothing was written.");
      }
    }
  }

  private static String whereToBuy(StickLoad load, Statement statement) {
    return load.editions().stream()
        .map(one -> one.title().whereToBuy())
        .filter(where -> !where.isBlank())
        .findFirst()
        .orElse(statement.terms().name() + ", from whom you have this course");
  }
}
