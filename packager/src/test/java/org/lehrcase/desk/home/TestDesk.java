package org.lehrcase.desk.home;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.desk.sales.SalesBook;

/** A desk in a throw-away folder, with a passphrase that is cheap to try and no secret. */
public final class TestDesk implements AutoCloseable {
  /** The day of all tests. */
  public static final Clock CLOCK =
      Clock.fixed(Instant.parse("2027-03-04T12:00:00Z"), ZoneOffset.UTC);

  /** No protection at all, but quick. */
  public static final Argon2id.Cost QUICK = new Argon2id.Cost(64, 1, 1);

  /** A passphrase for tests only. */
  public static final String WORDS = "not a secret at all";

  private final DeskHome home;
  private final DeskKeys keys;

  private TestDesk(DeskHome home, DeskKeys keys) {
    this.home = home;
    this.keys = keys;
  }

  /** Makes a home without opening it. */
  public static void make(Path folder) throws Exception {
    try (NewDesk desk = NewDesk.prepare(folder, "Atelier Test", new SecureRandom());
        Passphrase passphrase = passphrase()) {
      desk.settle(passphrase, QUICK, CLOCK);
    }
  }

  /** Opens a home that {@link #make} made. */
  public static TestDesk open(Path folder) throws Exception {
    DeskHome home = DeskHome.open(folder, CLOCK);
    try (Passphrase passphrase = passphrase()) {
      return new TestDesk(home, home.unlock(passphrase));
    }
  }

  /** Makes and opens a home. */
  public static TestDesk fresh(Path folder) throws Exception {
    make(folder);
    return open(folder);
  }

  static Passphrase passphrase() {
    return Passphrase.taking(WORDS.toCharArray());
  }

  public DeskHome home() {
    return home;
  }

  public DeskKeys keys() {
    return keys;
  }

  public SalesBook book() {
    return home.book();
  }

  @Override
  public void close() throws Exception {
    keys.close();
    home.close();
  }
}
