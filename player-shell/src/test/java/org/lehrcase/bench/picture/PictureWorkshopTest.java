package org.lehrcase.bench.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

/** Decoding in a process of its own. */
class PictureWorkshopTest {
  private final PictureWorkshop workshop = new PictureWorkshop();

  @Test
  void aPictureComesBackClean() throws Exception {
    byte[] file = MadePictures.file(MadePictures.quarters(400, 300), "png");

    CleanPicture clean = workshop.clean(new ByteArrayInputStream(file));

    assertThat(clean.width()).isEqualTo(400);
    assertThat(clean.jpeg()).startsWith(0xff, 0xd8);
  }

  @Test
  void aRefusalComesBackInItsOwnWords() {
    byte[] file = MadePictures.claimingPng(30_000, 30_000, 40_000);

    assertThatThrownBy(() -> workshop.clean(new ByteArrayInputStream(file)))
        .isInstanceOf(PictureRefusal.class)
        .hasMessageContaining("30000 × 30000");
  }

  @Test
  void anEndlessFileIsRefused() {
    InputStream endless =
        new InputStream() {
          @Override
          public int read() {
            return 0;
          }
        };

    assertThatThrownBy(() -> workshop.clean(endless)).hasMessageContaining("64 MiB");
  }
}
