package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;

/** Cards inside mails as mail programs save them. */
class SavedMailTest {
  private static final String HEAD =
      "From: ida@studio.example\nMIME-Version: 1.0\nContent-Type: multipart/mixed; boundary=b\n\n"
          + "--b\nContent-Type: text/plain\n\nHello,\nmy card is attached.\n--b\n";

  private final String card =
      MessageText.of(
          LaptopCard.make(PlaceSeed.random(new SecureRandom()), LaptopCard.About.NOTHING));

  private static LaptopCard found(String mail) throws RefusedException {
    return CardFile.find(SavedMail.readable(mail));
  }

  private void isFound(String mail) throws Exception {
    assertThat(MessageText.of(found(mail))).isEqualTo(card);
  }

  @Test
  void anAttachmentInBase64IsRead() throws Exception {
    String body = Base64.getMimeEncoder().encodeToString(card.getBytes(StandardCharsets.UTF_8));
    isFound(
        HEAD
            + "Content-Type: text/plain; name=card.txt\nContent-Transfer-Encoding: base64\n\n"
            + body
            + "\n--b--\n");
  }

  @Test
  void anAttachmentInQuotedPrintableIsRead() throws Exception {
    StringBuilder body = new StringBuilder();
    for (String line : card.lines().toList()) {
      String quoted = line.replace("=", "=3D");
      int half = quoted.length() / 2;
      body.append(quoted, 0, half).append("=\n").append(quoted.substring(half)).append('\n');
    }
    isFound(HEAD + "Content-Transfer-Encoding: Quoted-Printable\n\n" + body + "--b--\n");
  }

  @Test
  void thePlainTextOfAMailIsLeftAsItIs() throws Exception {
    isFound(card);
    assertThat(SavedMail.readable("Good morning\n")).isEqualTo("Good morning\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Content-Transfer-Encoding: base64",
        "Content-Transfer-Encoding: base64\n\n",
        "Content-Transfer-Encoding: base64\n\n===\n--",
        "Content-Transfer-Encoding: base64\n\nA\n",
        "Content-Transfer-Encoding: quoted-printable\n\n=\n==\n=4",
        "Content-Transfer-Encoding: x-other\n\nabc"
      })
  void brokenMailsAreReadAsFarAsTheyGo(String mail) {
    assertThat(SavedMail.readable(mail)).startsWith(mail);
  }
}
