package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/** Scripts of others that lie among our pages are, octet for octet, those that were taken over. */
class VendoredScriptTest {
  /** SHA-256 of the files in the npm package {@code qr} 0.7.0, as its tarball holds them. */
  @ParameterizedTest
  @CsvSource({
    "decode.js, 00e209820dcb11d624e9a03d6383e580766792b57d1651318f0a29e4e1ff0fe8",
    "index.js, a0de370051f94bd74f218f74401fdf197585e3f9ef0143164f87ea941a3fdd6f",
    "LICENSE.txt, 07a9f887e9215644439b808628b09f8eece932d79130ff563f958f3a1783e684",
  })
  void theReaderOfCodesIsUnchanged(String name, String sha256) throws Exception {
    try (InputStream file = getClass().getResourceAsStream("/ui/vendor/qr/" + name)) {
      assertThat(file).isNotNull();
      assertThat(Octets.of(Sha256.of(file.readAllBytes())).hex()).isEqualTo(sha256);
    }
  }
}
