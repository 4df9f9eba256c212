package org.lehrcase.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import java.util.logging.StreamHandler;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.desk.home.TestDesk;

/** The teacher's day over the wire: locked, unlocked, a sale, cards, acts, the year. */
class DeskWireTest {
  private static final String SALE =
      "{\"name\":\"Ada Example\",\"email\":\"ada@example.org\",\"series\":\"brush\",\"places\":\"1\","
          + "\"moves\":\"3\",\"facts\":{\"order\":\"A-17\",\"net\":\"49.00\"}}";

  @TempDir Path folder;
  private DeskClient desk;

  @BeforeEach
  void open() throws Exception {
    TestDesk.make(folder.resolve("desk"));
    desk = DeskClient.unlocked(folder.resolve("desk"));
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  static String card(Optional<LicenseId> license) throws Exception {
    PlaceSeed seed = PlaceSeed.random(new SecureRandom());
    return MessageText.of(
        LaptopCard.make(
            seed, license.map(LaptopCard.About::license).orElse(LaptopCard.About.NOTHING)));
  }

  private String sold() throws Exception {
    return desk.say("api/people", SALE).getAsJsonObject("license").get("id").getAsString();
  }

  private JsonObject first(JsonObject answer) {
    return answer.getAsJsonArray("results").get(0).getAsJsonObject();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"api/waiting", "api/people?q=", "api/courses", "api/book?kind=&y=", "api/safe"})
  void aLockedDeskTellsNothing(String question) throws Exception {
    desk.close();
    desk = DeskClient.locked(folder.resolve("desk"));
    RawClient.Answer answer = desk.get(question);
    assertThat(answer.status()).isEqualTo(423);
    assertThat(desk.read("api/desk").has("people")).isFalse();
  }

  @Test
  void thePassphraseOpensTheDeskAndIsNeverLogged() throws Exception {
    desk.close();
    desk = DeskClient.locked(folder.resolve("desk"));
    ByteArrayOutputStream log = new ByteArrayOutputStream();
    Handler listening =
        new StreamHandler(log, new SimpleFormatter()) {
          @Override
          public synchronized void publish(LogRecord entry) {
            super.publish(entry);
            flush();
          }
        };
    Logger root = Logger.getLogger("");
    root.addHandler(listening);
    try {
      RawClient.Answer wrong =
          desk.say("api/unlock", "not the passphrase", "application/octet-stream");
      assertThat(wrong.status()).isEqualTo(423);
      assertThat(wrong.text()).doesNotContain("not the passphrase");
      assertThat(desk.hand("api/unlock", TestDesk.WORDS).get("unlocked").getAsBoolean()).isTrue();
    } finally {
      root.removeHandler(listening);
    }
    String said = log.toString(StandardCharsets.UTF_8);
    assertThat(said).doesNotContain(TestDesk.WORDS).doesNotContain("not the passphrase");
    assertThat(desk.read("api/people?q=").get("count").getAsInt()).isZero();
  }

  @Test
  void aSaleGivesAMailAndStandsInTheBook() throws Exception {
    JsonObject sold = desk.say("api/people", SALE);
    assertThat(sold.getAsJsonObject("mail").get("to").getAsString()).isEqualTo("ada@example.org");
    assertThat(sold.getAsJsonObject("mail").get("file").getAsString())
        .contains("-----BEGIN LEHRCASE LICENSE-----");
    assertThat(desk.read("api/people?q=ADA").getAsJsonArray("people")).hasSize(1);
    assertThat(desk.read("api/people?q=nobody").getAsJsonArray("people")).isEmpty();
    assertThat(desk.read("api/year?y=2027").get("text").getAsString())
        .contains("\"ada@example.org\"")
        .contains("\"A-17\"");
    JsonObject about = desk.read("api/desk");
    assertThat(about.getAsJsonArray("breaks")).isEmpty();
    assertThat(about.get("signedUpTo")).isEqualTo(about.get("events"));
  }

  @Test
  void manyCardsInOneTextGetTheirLettersAndTheSameCardTheSame() throws Exception {
    String one = sold();
    String other =
        desk.say("api/people", SALE.replace("ada@", "bo@"))
            .getAsJsonObject("license")
            .get("id")
            .getAsString();
    String mails =
        "> "
            + card(Optional.of(LicenseId.ofHex(one))).replace("\n", "\n> ")
            + "\n\n"
            + card(Optional.of(LicenseId.ofHex(other)));
    JsonObject letters = desk.hand("api/laptops", mails);
    assertThat(letters.getAsJsonArray("results")).hasSize(2);
    assertThat(first(letters).get("kind").getAsString()).isEqualTo("letter");
    JsonObject again = desk.hand("api/laptops", mails);
    assertThat(first(again).getAsJsonObject("mail").get("file"))
        .isEqualTo(first(letters).getAsJsonObject("mail").get("file"));
    assertThat(first(again).get("again").getAsBoolean()).isTrue();
  }

  @Test
  void aCardWithoutALicenseWaitsUntilItIsTiedToOne() throws Exception {
    sold();
    JsonObject waits = first(desk.hand("api/laptops", card(Optional.empty())));
    assertThat(waits.get("kind").getAsString()).isEqualTo("waits");
    assertThat(desk.read("api/waiting").getAsJsonArray("items")).hasSize(1);
    String id = waits.get("id").getAsString();
    JsonObject letter =
        desk.say("api/waiting/" + id + "/answer", "{\"license\":\"ada@example.org\"}");
    assertThat(letter.get("kind").getAsString()).isEqualTo("letter");
    assertThat(desk.read("api/waiting").getAsJsonArray("items")).isEmpty();
  }

  @Test
  void aLostLaptopIsReplacedFromTheWaitingList() throws Exception {
    String license = sold();
    LicenseId id = LicenseId.ofHex(license);
    JsonObject before = first(desk.hand("api/laptops", card(Optional.of(id))));
    JsonObject waits = first(desk.hand("api/laptops", card(Optional.of(id))));
    assertThat(waits.get("reason").getAsString()).contains("in use");
    String place =
        waits
            .getAsJsonObject("license")
            .getAsJsonArray("laptops")
            .get(0)
            .getAsJsonObject()
            .get("id")
            .getAsString();
    JsonObject letter =
        desk.say(
            "api/waiting/" + waits.get("id").getAsString() + "/answer",
            "{\"replaces\":\"" + place + "\"}");
    assertThat(letter.get("retired").getAsInt()).isEqualTo(1);
    assertThat(letter.getAsJsonObject("mail").get("file"))
        .isNotEqualTo(before.getAsJsonObject("mail").get("file"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Good morning", "-----BEGIN LEHRCASE LAPTOP CARD-----\nAAAA\n"})
  void whatIsNothingForTheDeskIsSaidAndChangesNothing(String text) throws Exception {
    long events = desk.read("api/desk").get("events").getAsLong();
    JsonObject nothing = first(desk.hand("api/laptops", text));
    assertThat(nothing.get("kind").getAsString()).isEqualTo("nothing");
    assertThat(nothing.get("reason").getAsString()).isNotBlank();
    assertThat(desk.read("api/desk").get("events").getAsLong()).isEqualTo(events);
  }

  @Test
  void anActIsTakenBackUntilItWasSent() throws Exception {
    String license = sold();
    JsonObject more = desk.say("api/licenses/" + license + "/places", "{\"places\":\"3\"}");
    desk.say("api/acts/" + more.get("seq").getAsLong() + "/undo", "{}");
    String seq =
        desk.say("api/licenses/" + license + "/places", "{\"places\":\"2\"}")
            .get("seq")
            .getAsString();
    desk.say("api/licenses/" + license + "/sent", "{}");
    RawClient.Answer late = desk.say("api/acts/" + seq + "/undo", "{}", "application/json");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.text()).contains("sent");
  }

  @Test
  void aRefundSaysWhetherALaptopWasOpened() throws Exception {
    String license = sold();
    assertThat(desk.say("api/licenses/" + license + "/refund", "{}").get("detail").getAsString())
        .isEqualTo("never opened");
    JsonObject waits = first(desk.hand("api/laptops", card(Optional.of(LicenseId.ofHex(license)))));
    assertThat(waits.get("reason").getAsString()).contains("blocked");
  }

  @Test
  void anErasedPersonLeavesAWholeBook() throws Exception {
    String license = sold();
    String person =
        desk.read("api/people?q=ada")
            .getAsJsonArray("people")
            .get(0)
            .getAsJsonObject()
            .get("id")
            .getAsString();
    desk.say(
        "api/people/" + person + "/rename", "{\"name\":\"Ada B\",\"email\":\"ab@example.org\"}");
    desk.say("api/people/" + person + "/erase", "{}");
    assertThat(desk.read("api/people?q=ada").getAsJsonArray("people")).isEmpty();
    assertThat(desk.read("api/book?kind=&y=").toString()).contains(license).doesNotContain("Ada");
    assertThat(desk.read("api/desk").getAsJsonArray("breaks")).isEmpty();
  }

  @Test
  void aBackupIsProvedAndTheNewPassphraseOpens() throws Exception {
    sold();
    JsonObject done = desk.hand("api/backup", folder + "\n" + TestDesk.WORDS);
    assertThat(Path.of(done.get("file").getAsString())).isRegularFile();
    assertThat(done.get("people").getAsInt()).isEqualTo(1);
    assertThat(desk.read("api/safe").get("daysAgo").getAsInt()).isZero();
    desk.hand("api/passphrase", TestDesk.WORDS + "\nanother one of words");
    desk.close();
    desk = DeskClient.locked(folder.resolve("desk"));
    assertThat(desk.say("api/unlock", TestDesk.WORDS, "application/octet-stream").status())
        .isEqualTo(423);
    assertThat(desk.hand("api/unlock", "another one of words").get("people").getAsInt())
        .isEqualTo(1);
  }

  @Test
  void quitIsHeard() throws Exception {
    desk.say("api/quit", "{}");
    assertThat(desk.quit.getCount()).isZero();
  }
}
