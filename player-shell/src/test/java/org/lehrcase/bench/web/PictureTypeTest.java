package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class PictureTypeTest {
  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @Test
  void picturesAreKnownByTheirFirstBytes() {
    assertThat(PictureType.of(latin("\u00ff\u00d8\u00ff\u00e0"))).contains("image/jpeg");
    assertThat(PictureType.of(latin("\u0089PNG\r\n\u001a\n"))).contains("image/png");
    assertThat(PictureType.of(latin("RIFF....WEBPVP8 "))).contains("image/webp");
  }

  @Test
  void anythingElseIsNone() {
    assertThat(PictureType.of(new byte[0])).isEmpty();
    assertThat(PictureType.of(latin("<svg onload=x>"))).isEmpty();
    assertThat(PictureType.of(latin("RIFF....WAVE"))).isEmpty();
  }
}
