package org.lehrcase.bench.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;

/** A piece that is followed: plan, sheets, pictures, firings, the question slip. */
class PieceFollowWireTest extends FreshBenchTest {
  private static final String PLAN =
      "{\"name\":\"Mill race\",\"sheets\":%d,\"subjects\":["
          + "{\"name\":\"sluice\",\"rank\":1,\"box_mm\":[10,10,60,90],\"planned_on\":1},"
          + "{\"name\":\"hill\",\"rank\":2,\"box_mm\":[0,10,120,40],\"planned_on\":2}],"
          + "\"piece\":{\"sheet_mm\":[200,150]}}";
  private String piece;

  @BeforeEach
  void begin() throws Exception {
    String begun = "{\"name\":\"Mill race\",\"nextStep\":\"cut\"}";
    piece = "api/pieces/" + json(page.send("POST", "api/pieces", begun)).get("id").getAsString();
  }

  private JsonObject follow() throws IOException {
    return json(page.get(piece + "/follow"));
  }

  @Test
  void planAndSheetsAreThereAfterTheProgramStartsAgain() throws Exception {
    json(page.send("PUT", piece + "/plan", String.format(PLAN, 2)));
    String state =
        "{\"sheet\":2,\"cut\":true,\"painted\":true,\"coats\":3,\"fired\":1,\"note\":\"pale\"}";
    json(page.send("PUT", piece + "/sheet", state));
    stop();
    bench = TinyBench.open(folder.resolve("home"), OtherMachine.named("mine"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    page = EnteredClient.enter(rooms.server());
    assertThat(follow().getAsJsonObject("plan").get("name").getAsString()).isEqualTo("Mill race");
    JsonObject sheet = follow().getAsJsonArray("sheets").get(0).getAsJsonObject();
    assertThat(sheet.get("coats").getAsInt()).isEqualTo(3);
    assertThat(sheet.get("cut").getAsBoolean()).isTrue();
    assertThat(sheet.get("note").getAsString()).isEqualTo("pale");
  }

  @Test
  void aPlanThatCannotBeKeepsTheOneBefore() throws Exception {
    json(page.send("PUT", piece + "/plan", String.format(PLAN, 2)));
    JsonObject refused = json(page.send("PUT", piece + "/plan", String.format(PLAN, 1)));
    assertThat(refused.getAsJsonObject("problem").get("message").getAsString()).contains("sluice");
    assertThat(follow().getAsJsonObject("plan").get("sheets").getAsInt()).isEqualTo(2);
  }

  @Test
  void aStateThatCannotBeIsSaidAtItsFieldAndNotKept() throws Exception {
    JsonObject refused =
        json(page.send("PUT", piece + "/sheet", "{\"sheet\":1,\"coats\":100,\"note\":\"x\"}"));
    assertThat(refused.getAsJsonObject("problem").get("message").getAsString()).contains("0 to 99");
    assertThat(follow().getAsJsonArray("sheets")).isEmpty();
  }

  /** A JPEG with an APP1 block as cameras write it, which holds a place. */
  private static byte[] photo(int width) throws IOException {
    var out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(width, 30, BufferedImage.TYPE_INT_RGB), "jpeg", out);
    byte[] plain = out.toByteArray();
    byte[] secret = "Exif\0\0GPS 12.345N garden shed".getBytes(ISO_8859_1);
    var with = new ByteArrayOutputStream();
    with.write(plain, 0, 2);
    with.write(new byte[] {(byte) 0xff, (byte) 0xe1, 0, (byte) (secret.length + 2)});
    with.write(secret);
    with.write(plain, 2, plain.length - 2);
    return with.toByteArray();
  }

  private RawClient.Answer send(byte[] file) throws IOException {
    String named = "application/octet-stream\r\nX-File-Name: front%20sheet";
    return page.send("POST", piece + "/photo", named, file);
  }

  @Test
  void aPictureLosesItsPlaceAndIsShown() throws Exception {
    assertThat(new String(photo(40), ISO_8859_1)).contains("garden shed");
    JsonObject photo = json(send(photo(40))).getAsJsonArray("photos").get(0).getAsJsonObject();
    assertThat(photo.get("caption").getAsString()).isEqualTo("front sheet");
    byte[] kept = page.get(photo.get("address").getAsString()).body();
    assertThat(new String(kept, ISO_8859_1)).doesNotContain("Exif", "GPS", "garden shed");
    assertThat(ImageIO.read(new ByteArrayInputStream(kept)).getWidth()).isEqualTo(40);
  }

  @Test
  void whatIsNoPictureOrTooLargeIsRefusedAndNothingIsKept() throws Exception {
    assertThat(send("text renamed to .jpg".getBytes(UTF_8)).status()).isNotEqualTo(200);
    byte[] huge = photo(40);
    int frame = new String(huge, ISO_8859_1).indexOf("\u00ff\u00c0");
    Arrays.fill(huge, frame + 5, frame + 9, (byte) 0x70); // 28,784 pixels each way, says its header
    assertThat(send(huge).text()).contains("million pixels", "Nothing was changed");
    assertThat(follow().getAsJsonArray("photos")).isEmpty();
  }

  @Test
  void theQuestionSlipHoldsWhatIsKnown() throws Exception {
    json(page.send("PUT", piece + "/plan", String.format(PLAN, 2)));
    json(page.send("PUT", piece + "/sheet", "{\"sheet\":1,\"cut\":true,\"coats\":2}"));
    json(send(photo(60)));
    String id = piece.substring(piece.lastIndexOf('/') + 1);
    JsonObject firing =
        json(
            page.send(
                "POST",
                "api/firings",
                "{\"name\":\"fuse\",\"piece\":\""
                    + id
                    + "\",\"setup\":{},\"request\":{\"glass\":\"coe-90\","
                    + "\"stack\":{\"sheets\":2,\"sheet_mm\":3}}}"));
    String reading = "{\"celsius\":512,\"note\":\"a click\"}";
    String log = "api/firings/" + firing.get("id").getAsString() + "/reading";
    json(page.send("POST", log, reading));
    String ask =
        "{\"question\":\"It cracked across.\\nWhy?\",\"lesson\":\"Far water, at 12:05\","
            + "\"paper\":{\"size\":\"Letter\",\"temperature\":\"F\"}}";
    JsonObject made = json(page.send("POST", piece + "/slip", ask));
    try (PDDocument pdf = Loader.loadPDF(page.get(made.get("address").getAsString()).body())) {
      assertThat(pdf.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("Question slip: Mill race", "It cracked across.", "Why?", "at 12:05")
          .contains("Sheet 1: cut, not painted, 2 coats", "Firing: fuse", "anneal soak")
          .contains("954 °F", "a click", "front sheet", "1 front", "sluice");
    }
    JsonObject none =
        json(page.send("POST", piece + "/slip", "{\"question\":\" \",\"lesson\":\"\"}"));
    assertThat(none.getAsJsonObject("problem").get("field").getAsString()).isEqualTo("question");
  }
}
