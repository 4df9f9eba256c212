package org.lehrcase.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import org.openqa.selenium.By;

/** A wrong page is put right from the desk's page: chosen, looked at, signed, taken back, sent. */
class CorrectionPageIT {
  private static final Path BRUSH = Path.of("demo", "brush");

  @TempDir Path root;

  private Path edition;

  private void packed() throws Exception {
    try (TestDesk desk = TestDesk.fresh(root.resolve("desk"))) {
      PackWish wish = new PackWish(BRUSH, root.resolve("out"), Optional.empty(), Set.of());
      edition =
          new Packer(desk.home(), desk.keys(), new SecureRandom(), PackListener.NONE)
              .pack(wish)
              .folder();
    }
  }

  private long files() throws Exception {
    Path shelf = edition.resolve("corrections");
    if (!Files.isDirectory(shelf)) {
      return 0;
    }
    try (Stream<Path> all = Files.list(shelf)) {
      return all.filter(file -> file.getFileName().toString().length() == 64).count();
    }
  }

  @Test
  void aCorrectionIsSeenBeforeItIsSignedAndTakenBackUntilItWasSent() throws Exception {
    packed();
    try (DeskScreen desk = DeskScreen.open(root.resolve("desk"), root.resolve("profile"))) {
      desk.room("courses", "Courses");
      desk.page.see(".correcting summary").click();
      desk.choose("#correction-form [name=lesson]", "2");
      desk.type("#correction-form [name=page]", "1");
      desk.type("#correction-form [name=text]", "8 minutes, not 18");
      desk.press("#correction-form", "Look at it");
      assertThat(desk.page.see("#correction-preview").getText())
          .contains("Correction, page 1 (2027-03-04): 8 minutes, not 18");
      assertThat(files()).as("nothing is written by looking").isZero();
      desk.look("correction-look");
      desk.press("#correction-form", "Sign it and put it in place");
      desk.page.see(".corrections [data-correction]");
      assertThat(files()).isEqualTo(1);
      desk.press(".corrections", "Take it back");
      desk.page.until("no correction", () -> desk.text(".corrections").isEmpty());
      assertThat(files()).isZero();
      signAgainAndSend(desk);
      desk.room("safe", "Keep safe");
      desk.press("#closing", "Rehearse the closing");
      desk.page.until(
          "the rehearsal",
          () -> desk.text("#closing").contains("opens with the closing key alone"));
      desk.look("closing");
    }
  }

  private void signAgainAndSend(DeskScreen desk) throws Exception {
    desk.choose("#correction-form [name=where]", "film");
    desk.type("#correction-form [name=at]", "0:04");
    desk.type("#correction-form [name=text]", "Let it dry first.");
    desk.press("#correction-form", "Look at it");
    desk.press("#correction-form", "Sign it and put it in place");
    desk.press(".corrections", "Copy text to send");
    desk.page.until(
        "that it was sent", () -> desk.text(".corrections").contains("Its text left the desk"));
    desk.look("correction-sent");
    assertThat(desk.page.driver().findElements(By.cssSelector(".corrections .bare"))).isEmpty();
    assertThat(files()).isEqualTo(1);
    assertThat(desk.home.book().events().all())
        .extracting(event -> event.kind())
        .containsSubsequence("corrected", "undone", "corrected", "sent");
  }
}
