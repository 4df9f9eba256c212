package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.store.PositionTable.Position;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;

/**
 * A home that was copied to another machine, or whose machine was repaired, seen from its pages:
 * all 32 patterns of traits that are not what they were, changed and absent in turn.
 */
class ChangedMachineWireTest {
  private static final OtherMachine MINE = OtherMachine.named("mine");

  @TempDir static Path folder;
  private static TinyShop shop;
  private static TinyShop.Packed edition;
  private static License license;

  @BeforeAll
  static void buyAndStudy() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, license);
      bench.store().positions().keep(new Position(edition.id(), edition.second().id(), 17.5));
    }
  }

  private static Bench bench(String home, OtherMachine machine) throws Exception {
    return TinyBench.quick(folder.resolve(home), machine, folder.resolve("stick"));
  }

  /** Slots 0, 2, 4 change, slots 1 and 3 vanish, wherever the bit of the slot is set. */
  static Stream<String> patterns() {
    return IntStream.range(0, 32)
        .mapToObj(
            bits ->
                IntStream.range(0, 5)
                    .mapToObj(slot -> (bits >> slot & 1) == 0 ? "=" : slot % 2 == 0 ? "~" : "-")
                    .reduce("", String::concat));
  }

  @ParameterizedTest(name = "traits {0}")
  @MethodSource("patterns")
  void thePagesShowTheCourseOrThatItIsShut(String pattern) throws Exception {
    boolean recognised = pattern.chars().filter(sign -> sign == '=').count() >= 3;
    String home = "wire " + pattern;
    TinyBench.copy(folder.resolve("home"), folder.resolve(home));
    try (ServedCourse served = ServedCourse.of(bench(home, MINE.after(pattern)))) {
      assertThat(said(served)).isEqualTo(recognised ? "open active true" : "shut shut false");
      int status = recognised ? 200 : 403;
      RawClient.Answer film = served.media(edition.id(), edition.file(AssetRole.VIDEO));
      assertThat(film.status()).isEqualTo(status);
      assertThat(served.lesson(edition.id(), edition.second().id()).status()).isEqualTo(status);
      RawClient.Answer paper = served.print(edition.id(), edition.file(AssetRole.HANDOUT));
      assertThat(paper.status() == 403).isEqualTo(!recognised);
      assertThat(served.media(edition.id(), edition.first().assets().get(0)).status())
          .as("an open lesson is for everybody")
          .isEqualTo(200);
      if (!recognised) {
        letItInAgain(served);
      }
      assertThat(served.state().getAsJsonObject("last").get("seconds").getAsDouble())
          .isEqualTo(17.5);
    }
  }

  private static String said(ServedCourse served) throws Exception {
    JsonObject state = served.state();
    String course =
        state.getAsJsonArray("courses").get(0).getAsJsonObject().get("status").getAsString();
    String place =
        state.getAsJsonArray("licenses").get(0).getAsJsonObject().get("state").getAsString();
    return course + " " + place + " " + state.getAsJsonObject("laptop").get("recognised");
  }

  /** The three cards of the start page, once more for the same license. */
  private static void letItInAgain(ServedCourse served) throws Exception {
    String body = "{\"license\":\"" + license.id() + "\"}";
    JsonObject made = ServedCourse.json(served.page.send("POST", "api/card", body));
    LaptopCard card = LaptopCard.verify(EnteredClient.armored(made.get("text").getAsString()));
    RawClient.Answer dropped =
        served.page.drop(shop.answer(card, license.id()).toBytes(), "KEY LETTER");
    assertThat(dropped.text()).contains("\"outcome\":\"accepted\"");
    assertThat(said(served)).isEqualTo("open active true");
    assertThat(served.media(edition.id(), edition.file(AssetRole.VIDEO)).status()).isEqualTo(200);
  }
}
