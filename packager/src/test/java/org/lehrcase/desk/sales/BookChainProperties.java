package org.lehrcase.desk.sales;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

/** Whatever is changed behind the book's back is found, and an erased person leaves it whole. */
class BookChainProperties {
  private static final long SEED = 20_270_304L;
  private static final int ROUNDS = 400;
  private static final String[] COLUMNS = {"at", "kind", "subject", "detail", "previous", "hash"};

  @TempDir Path folder;
  private final SigningKey key = SigningKey.fromSeed(SecretBytes.random(new SecureRandom(), 32));
  private SalesBook book;

  @BeforeEach
  void aYear() throws IOException {
    book = SalesBook.create(folder.resolve("sales.db"), BookFixture.NOON);
    book.sealWith(seal(key));
    book.<Boolean, IOException>together(
        () -> {
          book.people().add(BookFixture.IDA);
          book.licenses().add(BookFixture.entry(1, 2, "brush"));
          book.events().add("licensed", BookFixture.license(1).hex(), "brush");
          book.facts().keep(BookFixture.license(1), Map.of("order", "A-1", "net", "49"));
          book.events().add("packed", "cc", "brush 1");
          return true;
        });
  }

  @AfterEach
  void close() throws IOException {
    book.close();
  }

  static HeadSeal seal(SigningKey key) {
    return new HeadSeal() {
      @Override
      public Octets sign(byte[] head) {
        return Octets.of(key.sign(head));
      }

      @Override
      public boolean verifies(byte[] head, Octets signature) {
        return key.publicKey().verifies(head, signature.toBytes());
      }
    };
  }

  private BookCheck check(SalesBook which) throws IOException {
    return which.check(Optional.of(seal(key)));
  }

  private BookCheck changed(String... sql) throws IOException {
    Path copy = folder.resolve("copy.db");
    Files.deleteIfExists(copy);
    book.copyTo(copy);
    try (Database raw = Database.open(copy)) {
      raw.script("DROP TRIGGER event_is_never_changed");
      raw.script("DROP TRIGGER event_is_never_removed");
      raw.script("DROP TRIGGER event_follows_the_last");
      for (String one : sql) {
        raw.change(one);
      }
    }
    try (SalesBook other = SalesBook.open(copy, BookFixture.NOON)) {
      return check(other);
    }
  }

  @Test
  void aWholeBookIsWholeAndSignedToItsEnd() throws IOException {
    assertThat(check(book).breaks()).isEmpty();
    assertThat(check(book).signedUpTo()).isEqualTo(check(book).events());
  }

  @Test
  void everyChangedByteOfAnEventIsFound() throws IOException {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Event> all = book.events().all();
    for (int round = 0; round < ROUNDS; round++) {
      Event event = all.get(random.nextInt(all.size()));
      String column = COLUMNS[random.nextInt(COLUMNS.length)];
      Event other = mutated(event, column, random);
      if (!other.equals(event)) {
        boolean follows = other.previous().equals(event.previous()) && other.isWhole();
        assertThat(follows).as("seed " + SEED + ", " + column + " of " + event.seq()).isFalse();
      }
    }
  }

  private static Event mutated(Event event, String column, SplittableRandom random) {
    return new Event(
        event.seq(),
        column.equals("at") ? event.at().plusNanos(1 + random.nextInt(1000)) : event.at(),
        column.equals("kind") ? bent(event.kind(), random) : event.kind(),
        column.equals("subject") ? bent(event.subject(), random) : event.subject(),
        column.equals("detail") ? bent(event.detail(), random) : event.detail(),
        column.equals("previous") ? bent(event.previous(), random) : event.previous(),
        column.equals("hash") ? bent(event.hash(), random) : event.hash());
  }

  private static String bent(String text, SplittableRandom random) {
    if (text.isEmpty()) {
      return "x";
    }
    char[] characters = text.toCharArray();
    characters[random.nextInt(characters.length)] ^= (char) (1 << random.nextInt(6));
    return new String(characters);
  }

  private static Octets bent(Octets octets, SplittableRandom random) {
    byte[] bytes = octets.toBytes();
    bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    return Octets.of(bytes);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE event SET detail = 'kiln' WHERE kind = 'licensed'",
        "UPDATE event SET at = '2026-01-01T00:00:00Z' WHERE seq = 1",
        "UPDATE event SET hash = randomblob(32) WHERE seq = 2",
        "UPDATE person SET name = 'Ida Branda'",
        "UPDATE person SET email = 'thief@studio.example'",
        "UPDATE person SET salt = randomblob(16)",
        "UPDATE person SET erased = 1",
        "UPDATE sale SET facts = 'net\t4'",
        "DELETE FROM sale",
        "DELETE FROM event WHERE seq = (SELECT max(seq) FROM event)",
        "UPDATE head SET signature = zeroblob(64)",
        "UPDATE head SET seq = 1"
      })
  void aChangeInTheFileIsFound(String sql) throws IOException {
    assertThat(changed(sql).breaks()).isNotEmpty();
  }

  @Test
  void aTailThatWasWrittenAnewIsFoundByTheSignature() throws IOException {
    Event last = book.events().newest().orElseThrow();
    Event forged =
        Event.next(last.previous(), last.seq(), last.at(), new String[] {"packed", "cc", "kiln 9"});
    BookCheck check =
        changed(
            "UPDATE event SET detail = 'kiln 9', hash = x'"
                + forged.hash().hex()
                + "' WHERE seq = "
                + last.seq());
    assertThat(check.breaks()).singleElement().asString().contains("signed");
  }

  @Test
  void aBookThatWasChangedIsNotSignedOver() throws IOException {
    try (Database raw = Database.open(folder.resolve("sales.db"))) {
      raw.script("DROP TRIGGER event_is_never_removed");
      raw.change("DELETE FROM event WHERE seq = (SELECT max(seq) FROM event)");
    }
    book.together(() -> book.events().add("packed", "cc", "another"));
    assertThat(check(book).breaks()).isNotEmpty();
  }

  @Test
  void anErasedPersonIsNowhereInTheFileAndTheBookIsWhole() throws IOException {
    book.<Boolean, IOException>together(
        () -> {
          book.people().erase(BookFixture.IDA.id());
          return true;
        });
    assertThat(check(book).breaks()).isEmpty();
    Path copy = folder.resolve("after.db");
    book.copyTo(copy);
    String bytes =
        new String(
            Files.newInputStream(copy).readAllBytes(),
            java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(bytes).doesNotContain("Brandt").doesNotContain("ida@studio");
  }

  @Test
  void anotherDesksSignatureIsNotTakenForOurs() throws IOException {
    SigningKey other = SigningKey.fromSeed(SecretBytes.random(new SecureRandom(), 32));
    assertThat(book.check(Optional.of(seal(other))).breaks()).hasSize(1);
  }

  @Test
  void peopleAreFoundWithoutAccentsAndInEitherCase() throws IOException {
    book.people()
        .add(new Person("00000000000000b2", "Zoë Größe", "zg@studio.example", BookFixture.DAY));
    assertThat(book.people().search("zoe")).hasSize(1);
    assertThat(book.people().search("GROSSE")).hasSize(1);
    assertThat(book.people().search("%")).isEmpty();
    assertThat(book.people().search("")).hasSize(2);
  }
}
