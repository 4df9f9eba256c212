package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LaptopCard.About;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.desk.home.TestDesk;

class OrderTest {
  private static final Allowance ONE = new Allowance(1, 3);

  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();

  @Test
  void whatIsTypedIsTidied() throws Exception {
    Order order = Order.typed(" Ida ", " ida@studio.example ", "Kiln, brush,kiln", ONE);
    assertThat(order.name()).isEqualTo("Ida");
    assertThat(order.email()).isEqualTo("ida@studio.example");
    assertThat(order.series()).containsExactly("kiln", "brush");
  }

  @ParameterizedTest
  @ValueSource(strings = {"ida", "ida@", "@studio", "i d a@studio", "a@b@c", ""})
  void addressesThatCannotBeAreRefused(String email) {
    assertThatThrownBy(() -> Order.typed("Ida", email, "brush", ONE))
        .isInstanceOf(RefusedException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "brush,", "br ush", "../brush", "brüsh"})
  void seriesThatCannotBeAreRefused(String series) {
    assertThatThrownBy(() -> Order.typed("Ida", "ida@studio.example", series, ONE))
        .isInstanceOf(RefusedException.class);
  }

  @Test
  void aSecondLicenseOfTheSameBuyerKeepsOnePerson() throws Exception {
    try (TestDesk desk = TestDesk.fresh(folder.resolve("desk"))) {
      Licensing licensing =
          new Licensing(desk.book(), desk.keys(), desk.home().statement(), random);
      License first = licensing.sell(Order.typed("Ida", "ida@studio.example", "brush", ONE));
      License second = licensing.sell(Order.typed("Ida", "Ida@studio.example", "kiln", ONE));
      assertThat(first.id()).isNotEqualTo(second.id());
      assertThat(desk.book().licenses().all())
          .extracting(entry -> entry.person().id())
          .hasSize(2)
          .containsOnly(desk.book().people().byEmail("ida@studio.example").orElseThrow().id());
      LicenseSearch search = new LicenseSearch(desk.book());
      assertThat(search.typed(first.id().hex().substring(0, 8))).isEqualTo(first.id());
      assertThatThrownBy(() -> search.typed("ida@studio.example"))
          .hasMessageContaining("2 licenses fit");
      assertThatThrownBy(() -> search.typed("nobody")).hasMessageContaining("No license fits");
    }
  }

  @Test
  void aNameThatBreaksTheFormatLeavesNoLicense() throws Exception {
    try (TestDesk desk = TestDesk.fresh(folder.resolve("desk"))) {
      Licensing licensing =
          new Licensing(desk.book(), desk.keys(), desk.home().statement(), random);
      Order bad = new Order("Ida\u202eBrandt", "ida@studio.example", List.of("brush"), ONE);
      assertThatThrownBy(() -> licensing.sell(bad))
          .isInstanceOfSatisfying(
              RefusedException.class, e -> assertThat(e.reason()).isEqualTo(Refusal.WRONG_ENTRY));
      assertThat(desk.book().licenses().all()).isEmpty();
      assertThat(desk.book().people().byEmail("ida@studio.example")).isEmpty();
    }
  }

  @Test
  void aCardIsFoundInAMail() throws Exception {
    LaptopCard card = LaptopCard.make(PlaceSeed.random(random), About.NOTHING);
    String quoted = MessageText.of(card).replaceAll("(?m)^", "> ");
    assertThat(CardFile.find("Hello,\n" + quoted + "\n--\nIda").digest()).isEqualTo(card.digest());
    assertThat(CardFile.find(quoted + quoted).digest()).isEqualTo(card.digest());
  }

  @ParameterizedTest
  @CsvSource({"hello,NOT_A_CARD", "'',NOT_A_CARD"})
  void textsWithoutACardAreRefused(String text, Refusal reason) {
    assertThatThrownBy(() -> CardFile.find(text))
        .isInstanceOfSatisfying(
            RefusedException.class, e -> assertThat(e.reason()).isEqualTo(reason));
  }

  @Test
  void severalAndBrokenCardsAreRefused() {
    String one = MessageText.of(LaptopCard.make(PlaceSeed.random(random), About.NOTHING));
    String two = MessageText.of(LaptopCard.make(PlaceSeed.random(random), About.NOTHING));
    assertThatThrownBy(() -> CardFile.find(one + two)).hasMessageContaining("2 laptop cards");
    int at = one.indexOf("-----BEGIN") + 80;
    char other = one.charAt(at) == 'A' ? 'B' : 'A';
    String broken = one.substring(0, at) + other + one.substring(at + 1);
    assertThatThrownBy(() -> CardFile.find(broken))
        .isInstanceOfSatisfying(
            RefusedException.class, e -> assertThat(e.reason()).isEqualTo(Refusal.BROKEN_CARD));
    assertThatThrownBy(() -> CardFile.find(one.replace("LAPTOP CARD", "KEY LETTER")))
        .hasMessageContaining("KEY LETTER");
  }
}
