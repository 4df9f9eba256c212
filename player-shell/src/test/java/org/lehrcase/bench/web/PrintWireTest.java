package org.lehrcase.bench.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyPdf;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.core.course.AssetRole;

/** Save for printing: kind by kind as the teacher allows, PDFs with the buyer's name, no more. */
class PrintWireTest {
  private static final byte[] DRAWING =
      "<svg xmlns='http://www.w3.org/2000/svg' width='180mm' viewBox='0 0 180 90'><path d='M0 0'/></svg>"
          .getBytes(UTF_8);
  private static final Set<AssetRole> KINDS =
      EnumSet.of(
          AssetRole.HANDOUT,
          AssetRole.FAULT_CARD,
          AssetRole.FIRING_SCHEDULE,
          AssetRole.MATERIALS_LIST,
          AssetRole.TEMPLATE,
          AssetRole.IMAGE);

  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;

  private ServedCourse selling(Set<AssetRole> allowed) throws Exception {
    shop = new TinyShop();
    shop.allowSaving(allowed);
    byte[] pdf = TinyPdf.pages(3);
    edition =
        shop.pack(
            folder.resolve("stick/brush"),
            new TinyShop.Files2(TinyShop.film(1, 100), pdf, "# Far".getBytes(UTF_8)),
            List.of(
                new TinyShop.Paper(
                    AssetRole.TEMPLATE, "fish \"a\".template.svg", "image/svg+xml", DRAWING),
                new TinyShop.Paper(AssetRole.IMAGE, "r\u00e9ef; x.png", "image/png", picture())));
    ServedCourse served =
        ServedCourse.of(
            TinyBench.quick(
                folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick")));
    served.bench.courses().bringIn(edition.folder());
    return served;
  }

  private void own(ServedCourse served, String buyer) throws Exception {
    TinyBench.license(served.bench, shop, shop.sell(buyer));
  }

  @ParameterizedTest(name = "only {0}")
  @EnumSource(
      value = AssetRole.class,
      names = {"HANDOUT", "FAULT_CARD", "FIRING_SCHEDULE", "MATERIALS_LIST", "TEMPLATE", "IMAGE"})
  void exactlyTheKindThatTheTeacherAllowsIsSaved(AssetRole allowed) throws Exception {
    try (ServedCourse served = selling(Set.of(allowed))) {
      own(served, "Robin Invented");
      for (AssetRole role : KINDS) {
        RawClient.Answer answer = served.print(edition.id(), edition.file(role));
        assertThat(answer.status()).as("%s", role).isEqualTo(role == allowed ? 200 : 403);
        assertThat(answer.header("Content-Disposition").isPresent()).isEqualTo(role == allowed);
      }
      String lesson = served.lesson(edition.id(), edition.second().id()).text();
      assertThat(lesson.split("\"mayPrint\":true", -1)).hasSize(2);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = AssetRole.class,
      names = {"VIDEO", "CAPTIONS"})
  void aFilmIsNeverSavedWhateverIsAllowed(AssetRole role) throws Exception {
    try (ServedCourse served = selling(KINDS)) {
      own(served, "Robin Invented");
      assertThat(served.print(edition.id(), edition.file(role)).status()).isEqualTo(403);
    }
  }

  @Test
  void withoutALicenseNothingIsSavedAndNothingIsTold() throws Exception {
    try (ServedCourse served = selling(KINDS)) {
      for (AssetRole role : KINDS) {
        RawClient.Answer answer = served.print(edition.id(), edition.file(role));
        assertThat(answer.status()).isEqualTo(403);
        assertThat(answer.text())
            .contains("not-licensed")
            .doesNotContain(edition.file(role).name());
      }
    }
  }

  @Test
  void everyPageOfThePdfSaysWhoseItIsAndIsReadByAnotherReader() throws Exception {
    try (ServedCourse served = selling(KINDS)) {
      own(served, "\u017d\u00f3fia \u03a9mega-O'Invented");
      RawClient.Answer saved = served.print(edition.id(), edition.file(AssetRole.HANDOUT));
      try (PDDocument pdf = Loader.loadPDF(served.page.unchunked(saved))) {
        PDFTextStripper text = new PDFTextStripper();
        for (int page = 1; page <= 3; page++) {
          text.setStartPage(page);
          text.setEndPage(page);
          assertThat(text.getText(pdf))
              .containsPattern("\u017d\u00f3fia \u03a9mega-O'Invented \u00b7 license [0-9a-f]{8}");
        }
        assertThat(pdf.isEncrypted()).isFalse();
      }
    }
  }

  private static byte[] picture() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB), "png", out);
    return out.toByteArray();
  }

  @Test
  void aDrawingKeepsItsSizeAndCarriesTheName() throws Exception {
    try (ServedCourse served = selling(KINDS)) {
      own(served, "Robin <Invented> & Sons");
      RawClient.Answer drawing = served.print(edition.id(), edition.file(AssetRole.TEMPLATE));
      assertThat(drawing.text())
          .startsWith("<svg xmlns='http://www.w3.org/2000/svg' width='180mm' viewBox='0 0 180 90'>")
          .contains("<path d='M0 0'/>")
          .contains("Robin &lt;Invented&gt; &amp; Sons \u00b7 license ")
          .endsWith("</text></svg>");
      // RFC 8187: what is no attr-char is percent-encoded, so no name ends the parameter
      assertThat(drawing.header("Content-Disposition"))
          .contains("attachment; filename*=UTF-8''fish%20%22a%22.template.svg");
      assertThat(drawing.header("Content-Security-Policy").orElseThrow()).contains("sandbox");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "FAULT_CARD, far.pdf, Far",
    "FIRING_SCHEDULE, F2.firing.pdf, step",
    "MATERIALS_LIST, far.materials.pdf, how much",
    "IMAGE, r%C3%A9ef%3B%20x.pdf, ''"
  })
  void everyOtherPaperIsSavedAsPagesWithTheName(AssetRole role, String name, String words)
      throws Exception {
    try (ServedCourse served = selling(KINDS)) {
      own(served, "Zo\u00eb Invented");
      RawClient.Answer saved = served.print(edition.id(), edition.file(role));
      assertThat(saved.header("Content-Type")).contains("application/pdf");
      assertThat(saved.header("Content-Disposition"))
          .contains("attachment; filename*=UTF-8''" + name);
      try (PDDocument pdf = Loader.loadPDF(saved.body())) {
        String text = new PDFTextStripper().getText(pdf);
        assertThat(text).contains("Zo\u00eb Invented \u00b7 license ").contains(words);
      }
    }
  }

  @Test
  void aHandoutThatIsNoPdfInsideIsToldAndNotSaved() throws Exception {
    try (ServedCourse served = selling(KINDS)) {
      own(served, "Robin Invented");
      byte[] broken = {'%', 'P', 'D', 'F', 'x'};
      TinyShop.Packed bad =
          shop.pack(
              folder.resolve("stick/bad"),
              new TinyShop.Files2(TinyShop.film(1, 100), broken, new byte[0]));
      served.bench.courses().bringIn(bad.folder());
      own(served, "Robin Invented");
      RawClient.Answer answer = served.print(bad.id(), bad.file(AssetRole.HANDOUT));
      assertThat(answer.status()).isBetween(400, 503);
      assertThat(answer.text()).contains("\"next\":");
    }
  }
}
