package org.lehrcase.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.web.BenchRooms;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.home.TestDesk;
import org.openqa.selenium.OutputType;

/** A laptop gives its place back on its own page, and the desk's page takes the slip. */
class GiveBackPagesIT {
  @TempDir Path root;

  @Test
  void aPlaceGoesBackThroughBothPages() throws Exception {
    Path home = Files.createDirectories(root.resolve("laptop"));
    try (Bench bench = TinyBench.quick(home, OtherMachine.named("laptop"), root)) {
      licensed(bench);
      String slip = givenBack(bench);
      assertThat(slip).contains("GIVE BACK SLIP");
      deskFreesThePlace(slip);
    }
  }

  private void licensed(Bench bench) throws Exception {
    try (TestDesk desk = TestDesk.fresh(root.resolve("desk"))) {
      Order order = Order.typed("Ada Example", "ada@example.org", "brush", new Allowance(1, 3));
      SecureRandom random = new SecureRandom();
      var license =
          new Licensing(desk.book(), desk.keys(), desk.home().statement(), random)
              .sell(order, false, Map.of());
      bench.opening().acceptLicense(license.toBytes());
      var card = bench.opening().card(Optional.of(license.id()));
      var answer =
          new Answering(desk.book(), desk.keys(), random).answer(card, Answering.Wish.NONE);
      bench.opening().acceptLetter(answer.place().letter().toBytes());
    }
  }

  private String givenBack(Bench bench) throws Exception {
    try (BenchRooms rooms = rooms(bench);
        Browser page = Browser.start(Files.createDirectories(root.resolve("p1")), 1366, 900)) {
      page.go(rooms.server().entryAddress());
      page.run("return 1");
      press(page, "#give-back button");
      assertThat(page.see(".panel button.main").isEnabled()).as("before it is confirmed").isFalse();
      look(page, "give-back-sure");
      page.see("#give-back-sure").click();
      press(page, ".panel button.main");
      page.see(".panel svg.code");
      look(page, "give-back-slip");
      return page.see(".panel pre.card-text").getText();
    }
  }

  private static BenchRooms rooms(Bench bench) throws Exception {
    return BenchRooms.open(bench, new BenchRooms.Service(0, "test", () -> {}), new SecureRandom());
  }

  private static void press(Browser page, String css) {
    var button = page.see(css);
    page.run("arguments[0].scrollIntoView({block: 'center'})", button);
    button.click();
  }

  private static void look(Browser page, String name) throws Exception {
    String folder = System.getProperty("looked", "");
    if (!folder.isEmpty()) {
      Files.write(Path.of(folder, name + ".png"), page.driver().getScreenshotAs(OutputType.BYTES));
    }
  }

  private void deskFreesThePlace(String slip) throws Exception {
    try (DeskScreen desk = DeskScreen.open(root.resolve("desk"), root.resolve("p2"))) {
      for (int times = 1; times <= 2; times++) {
        desk.room("laptops", "Laptops");
        desk.page.run(
            "const d = new DataTransfer(); d.items.add(new File([arguments[0]], 'slip.txt'));"
                + "document.querySelector('#laptop-drop').dispatchEvent("
                + "new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true}));",
            slip);
        desk.page.see("#letters [data-kind=returned]");
        assertThat(desk.text("#letters"))
            .contains("Ada Example gave a place back", "0 of 1 laptops in use")
            .contains(times == 1 ? "is free." : "free already");
      }
      desk.look("give-back-desk");
    }
  }
}
