package org.lehrcase.desk.demo;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.CardFile;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.NewDesk;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackResult;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;

/**
 * The teacher's half of the demonstration: an invented studio with a desk of its own. Its
 * passphrase and its envelopes are drawn and thrown away.
 */
public final class DemoDesk implements AutoCloseable {
  private static final String STUDIO = "Reef Garden Studio (invented)";
  private static final String BUYER = "Ida Brandt (invented)";

  private final Path folder;
  private final SecureRandom random;
  private final DeskHome home;
  private final DeskKeys keys;

  private DemoDesk(Path folder, SecureRandom random, DeskHome home, DeskKeys keys) {
    this.folder = folder;
    this.random = random;
    this.home = home;
    this.keys = keys;
  }

  /**
   * Sets the desk up.
   *
   * @param folder an empty folder to throw away
   * @param clock gives days and times
   * @param random the source of all keys
   * @return the open desk
   * @throws IOException if the folder cannot be written
   * @throws DeskHomeException if something lies there already
   * @throws VaultException never for the invented names
   */
  public static DemoDesk open(Path folder, Clock clock, SecureRandom random)
      throws IOException, DeskHomeException, VaultException {
    Path desk = folder.resolve("desk");
    try (Passphrase passphrase = Passphrase.taking(Passphrase.propose(random).toCharArray())) {
      try (NewDesk made = NewDesk.prepare(desk, STUDIO, random)) {
        made.settle(passphrase, Argon2id.Cost.PASSPHRASE, clock);
      }
      DeskHome home = DeskHome.open(desk, clock);
      return new DemoDesk(folder, random, home, home.unlock(passphrase));
    }
  }

  /**
   * Packs both series: the first one twice, since its second edition corrects a page.
   *
   * @param listener told how it goes
   * @return the newest edition of each series
   * @throws IOException if reading or writing fails
   * @throws PackException if the invented course is not packable
   */
  public List<Path> pack(PackListener listener) throws IOException, PackException {
    Path courses = DemoFolders.courses();
    List<Path> newest = new ArrayList<>();
    Path brush = folder.resolve("courses").resolve("brush");
    DemoFolders.lay(courses.resolve("brush"), brush);
    PackResult first = pack(brush, listener);
    newest.add(first.folder());
    Path corrected = courses.resolve("second-edition").resolve("brush");
    if (Files.isDirectory(corrected)) {
      DemoFolders.lay(corrected, brush);
      PackResult second = pack(brush, listener);
      second.news().forEach(listener::say);
      newest.set(0, second.folder());
    }
    newest.add(pack(courses.resolve("kiln"), listener).folder());
    return List.copyOf(newest);
  }

  private PackResult pack(Path course, PackListener listener) throws IOException, PackException {
    PackWish wish = new PackWish(course, folder.resolve("editions"), Optional.empty(), Set.of());
    return new Packer(home, keys, random, listener).pack(wish);
  }

  /**
   * Licenses an invented buyer for both series.
   *
   * @return the license file
   * @throws IOException if it cannot be written
   * @throws RefusedException never for the invented order
   */
  public Path license() throws IOException, RefusedException {
    Order order =
        new Order(BUYER, "ida@studio.example", List.of("brush", "kiln"), new Allowance(2, 3));
    var license = new Licensing(home.book(), keys, home.statement(), random).sell(order);
    return write("license.txt", MessageText.of(license));
  }

  /**
   * Answers the laptop's card.
   *
   * @param card the card's file
   * @return the key letter's file
   * @throws IOException if a file cannot be read or written
   * @throws RefusedException if the card is not the buyer's
   * @throws VaultException if the stored letter is damaged
   */
  public Path answer(Path card) throws IOException, RefusedException, VaultException {
    Answering.Answer answer =
        new Answering(home.book(), keys, random).answer(CardFile.read(card), Answering.Wish.NONE);
    KeyLetter letter = KeyLetter.verify(answer.place().letter().toBytes(), keys.desk().publicKey());
    return write("letter.txt", MessageText.of(letter));
  }

  private Path write(String name, String text) throws IOException {
    return Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void close() throws IOException {
    keys.close();
    home.close();
  }
}
