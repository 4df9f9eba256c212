package org.lehrcase.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import org.lehrcase.desk.pack.TinyCourse;
import org.openqa.selenium.By;

/** A shop's table with tricks in it, and a refund, through the page in a real browser. */
class HostileTableIT {
  private static final String TABLE =
      "Name;Email;Product;Note\r\n"
          + "Ada Example;ada@example.org;brush;ok\r\n"
          + "=HYPERLINK(\"x\");formula@example.org;brush;=1+1\r\n"
          + "<img src=x onerror=window.hit=1>;tag@example.org;brush;tag\r\n"
          + "Ada Example;ada@example.org;brush;twice\r\n"
          + "No Address;not-an-address;brush;bad\r\n"
          + "\u202Eturned;turned@example.org;brush;bidi\r\n";

  @TempDir Path root;

  @Test
  void aHostileTableRunsNothingAndARefundIsInTheBook() throws Exception {
    packed();
    try (DeskScreen desk = DeskScreen.open(root.resolve("desk"), root.resolve("profile"))) {
      desk.room("people", "People");
      openImport(desk);
      desk.page.run(
          "const d = new DataTransfer(); d.items.add(new File([arguments[0]], 'orders.csv'));"
              + "const i = document.querySelector('#room input[type=file]');"
              + "i.files = d.files; i.dispatchEvent(new Event('change', {bubbles: true}));",
          TABLE);
      desk.press("#room", "Look it through");
      desk.page.see("#room table");
      desk.look("hostile-table");
      assertThat(desk.home.book().people().count()).as("a look enters nobody").isZero();
      assertThat(desk.page.run("return window.hit === undefined")).isEqualTo(true);
      assertThat(desk.page.driver().findElements(By.cssSelector("#room td img"))).isEmpty();
      assertThat(desk.text("#room table")).contains("<img src=x onerror=window.hit=1>");
      desk.page.see("#import-enter").click();
      desk.page.until("the sales", () -> desk.text("#room").contains("sales are in the book"));
      assertThat(desk.home.book().people().byEmail("turned@example.org")).isEmpty();
      assertThat(desk.home.book().people().byEmail("not-an-address")).isEmpty();
      assertThat(desk.page.run("return window.hit === undefined")).isEqualTo(true);
      refunded(desk);
    }
  }

  private void packed() throws Exception {
    try (TestDesk desk = TestDesk.fresh(root.resolve("desk"))) {
      PackWish wish =
          new PackWish(
              TinyCourse.in(root.resolve("brush")).folder(),
              root.resolve("out"),
              Optional.empty(),
              Set.of());
      new Packer(desk.home(), desk.keys(), new SecureRandom(), PackListener.NONE).pack(wish);
    }
  }

  private static void refunded(DeskScreen desk) throws Exception {
    desk.room("people", "People");
    desk.page.see("#find").sendKeys("ada@");
    desk.page.until(
        "only Ada", () -> desk.page.driver().findElements(By.cssSelector(".person")).size() == 1);
    desk.page.see(".person summary").click();
    desk.page.run("window.confirm = (words) => { window.asked = words; return true; };");
    desk.press(".person", "Refund");
    desk.page.until("that it is blocked", () -> desk.text(".person").contains("blocked"));
    desk.look("refund");
    assertThat(String.valueOf(desk.page.run("return window.asked"))).contains("refund");
    assertThat(desk.home.book().events().newest().orElseThrow().kind()).isEqualTo("refunded");
    assertThat(desk.home.book().events().newest().orElseThrow().detail()).isEqualTo("never opened");
  }

  private static void openImport(DeskScreen desk) {
    desk.page.run(
        "document.querySelectorAll('#room button').forEach((b) => {"
            + "if (/table/i.test(b.textContent)) b.click(); });"
            + "document.querySelectorAll('#room details').forEach((d) => { d.open = true; });");
  }
}
