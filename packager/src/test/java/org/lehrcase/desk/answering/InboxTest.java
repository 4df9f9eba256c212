package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CodeText;
import org.lehrcase.desk.home.TestDesk;

/** What buyers send arrives as text, as mail, and as photos of a code. */
class InboxTest {
  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();
  private TestDesk desk;
  private Inbox inbox;
  private LaptopCard card;

  @BeforeEach
  void sell() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    desk.book().editions().nameSeries("brush", "Brush");
    inbox = new Inbox(desk.book(), new Answering(desk.book(), desk.keys(), random));
    License license =
        AnsweringTest.licensing(desk, random).sell(AnsweringTest.order("ida@studio.example", 1));
    card = LaptopCard.make(PlaceSeed.random(random), LaptopCard.About.license(license.id()));
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  @Test
  void aPhotoOfACardsCodeGetsTheLetterThatItsTextGets() throws Exception {
    String code = CodeText.write(ArmorKind.LAPTOP_CARD, card.toBytes()).get(0);
    List<Inbox.Result> byPhoto =
        inbox.take(CodePhotoTest.photo("jpg", 1600, 1200, 4, List.of(code)));
    List<Inbox.Result> byText = inbox.take(MessageText.of(card).getBytes(StandardCharsets.UTF_8));
    assertThat(byPhoto).singleElement().extracting(Inbox.Result::kind).isEqualTo(Inbox.Kind.LETTER);
    assertThat(byText.get(0).answer().orElseThrow().place().letter())
        .isEqualTo(byPhoto.get(0).answer().orElseThrow().place().letter());
  }

  @Test
  void aPhotoOfSomethingElseSaysWhatToAskForAndChangesNothing() throws Exception {
    int before = desk.book().events().all().size();
    List<Inbox.Result> results =
        inbox.take(CodePhotoTest.photo("jpg", 800, 600, 0, List.of("HELLO")));
    List<Inbox.Result> none = inbox.take(CodePhotoTest.photo("png", 800, 600, 0, List.of()));
    assertThat(results)
        .singleElement()
        .extracting(Inbox.Result::kind)
        .isEqualTo(Inbox.Kind.NOTHING);
    assertThat(none).singleElement().satisfies(r -> assertThat(r.reason()).contains("no code"));
    assertThat(desk.book().events().all()).hasSize(before);
  }
}
