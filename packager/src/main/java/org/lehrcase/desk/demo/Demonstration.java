package org.lehrcase.desk.demo;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.pack.PackListener;

/** Runs both halves against each other, from an empty folder to the open course. */
public final class Demonstration {
  private final Clock clock;
  private final SecureRandom random;
  private final PackListener listener;
  private final PrintWriter out;
  private final PrintWriter err;

  /**
   * Prepares a demonstration.
   *
   * @param clock gives days and times
   * @param random the source of all keys
   * @param listener told how packing goes
   * @param out takes the address of the course
   * @param err takes everything else
   */
  public Demonstration(
      Clock clock, SecureRandom random, PackListener listener, PrintWriter out, PrintWriter err) {
    this.clock = clock;
    this.random = random;
    this.listener = listener;
    this.out = out;
    this.err = err;
  }

  /**
   * Runs everything up to the open course.
   *
   * @param folder an empty folder to throw away
   * @return the bench, ready to open
   * @throws IOException if reading or writing fails, or the bench refuses
   * @throws DeskHomeException if a desk lies there already
   * @throws PackException if the invented course is not packable
   * @throws RefusedException if the desk refuses its own buyer
   * @throws VaultException if what was just signed does not verify
   */
  public DemoBench prepare(Path folder)
      throws IOException, DeskHomeException, PackException, RefusedException, VaultException {
    Files.createDirectories(folder);
    DemoBench bench = new DemoBench(folder.resolve("bench"), out, err);
    try (DemoDesk desk = DemoDesk.open(folder, clock, random)) {
      List<Path> editions = desk.pack(listener);
      Path card = folder.resolve("card.txt");
      bench.ask(desk.license(), card);
      bench.receive(desk.answer(card), editions);
    }
    return bench;
  }

  /**
   * Removes everything that a demonstration made.
   *
   * @param folder the folder to throw away
   * @throws IOException if a file cannot be removed
   */
  public static void throwAway(Path folder) throws IOException {
    DemoFolders.remove(folder);
  }
}
