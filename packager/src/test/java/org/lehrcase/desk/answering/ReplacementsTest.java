package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.sales.Place;

/** So many replacements a year are granted without asking; what the teacher names is granted. */
class ReplacementsTest {
  @TempDir Path root;

  private final SecureRandom random = new SecureRandom();
  private TestDesk desk;
  private LicenseId license;
  private Place place;

  @BeforeEach
  void aLaptopIsAnswered() throws Exception {
    desk = TestDesk.fresh(root.resolve("desk"));
    Order order = Order.typed("Ada Example", "ada@example.org", "brush", new Allowance(1, 3));
    license =
        new Licensing(desk.book(), desk.keys(), desk.home().statement(), random)
            .sell(order, false, Map.of())
            .id();
    place =
        answering().answer(card(LaptopCard.About.license(license)), Answering.Wish.NONE).place();
  }

  @AfterEach
  void closes() throws Exception {
    desk.close();
  }

  private Answering answering() {
    return new Answering(desk.book(), desk.keys(), random);
  }

  private LaptopCard card(LaptopCard.About about) {
    return LaptopCard.make(PlaceSeed.random(random), about);
  }

  private LaptopCard replacing() {
    return card(LaptopCard.About.replacing(license, place.id()));
  }

  private void replaced() throws Exception {
    place = answering().answer(replacing(), Answering.Wish.NONE).place();
  }

  private long events(String kind) throws Exception {
    return desk.book().events().all().stream().filter(e -> e.kind().equals(kind)).count();
  }

  @Test
  void twoAYearAreGrantedAndTheThirdWaits() throws Exception {
    replaced();
    replaced();
    assertThat(events("granted")).isEqualTo(2);
    assertThatThrownBy(this::replaced)
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("2 a year are granted without asking");
    assertThat(desk.book().places().byId(license, place.id()).orElseThrow().living()).isTrue();
    var waits = new Inbox(desk.book(), answering()).take(MessageText.of(replacing())).get(0);
    assertThat(waits.kind()).isEqualTo(Inbox.Kind.WAITS);
    assertThat(events("retired")).isEqualTo(2);
  }

  @Test
  void whatTheTeacherNamesIsGranted() throws Exception {
    new Replacements(desk.book()).setPerYear(0);
    assertThatThrownBy(this::replaced).isInstanceOf(RefusedException.class);
    Answering.Wish wish = new Answering.Wish(Optional.empty(), Optional.of(place.id()));
    assertThat(answering().answer(replacing(), wish).retired()).containsExactly(place.id());
    assertThat(events("granted")).isZero();
  }

  @Test
  void thePolicyIsKeptInTheBookAndBounded() throws Exception {
    Replacements policy = new Replacements(desk.book());
    assertThat(policy.perYear()).isEqualTo(Replacements.USUAL_PER_YEAR);
    policy.setPerYear(5);
    assertThat(policy.perYear()).isEqualTo(5);
    assertThat(desk.book().events().newest().orElseThrow().detail()).isEqualTo("2 to 5");
    assertThatThrownBy(() -> policy.setPerYear(100)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theSameCardAgainNeedsNoGrant() throws Exception {
    LaptopCard card = replacing();
    answering().answer(card, Answering.Wish.NONE);
    new Replacements(desk.book()).setPerYear(0);
    assertThat(answering().answer(card, Answering.Wish.NONE).again()).isTrue();
  }
}
