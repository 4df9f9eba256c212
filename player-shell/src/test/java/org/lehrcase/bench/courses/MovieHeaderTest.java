package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

class MovieHeaderTest {
  private static final byte[] TYPE = box("ftyp", new byte[12]);

  private static byte[] box(String type, byte[] body) {
    return ByteBuffer.allocate(8 + body.length)
        .putInt(8 + body.length)
        .put(type.getBytes(StandardCharsets.US_ASCII))
        .put(body)
        .array();
  }

  private static byte[] join(byte[]... parts) {
    ByteBuffer all = ByteBuffer.allocate(10_000);
    for (byte[] part : parts) {
      all.put(part);
    }
    byte[] joined = new byte[all.position()];
    all.flip().get(joined);
    return joined;
  }

  /** The header of version 0 has 100 bytes, of which only the first 20 matter here. */
  private static byte[] header(int scale, int length) {
    return box("mvhd", ByteBuffer.allocate(100).putInt(12, scale).putInt(16, length).array());
  }

  private static Object seconds(byte[] film) throws Exception {
    var found = new MovieHeader(new ClearBytes(film)).seconds();
    return found.isPresent() ? found.getAsDouble() : "none";
  }

  @Test
  void theLengthIsFoundBeforeAndBehindTheFilm() throws Exception {
    byte[] index = box("moov", header(600, 7500));
    byte[] film = box("mdat", new byte[3000]);
    assertThat(seconds(join(TYPE, index, film))).isEqualTo(12.5);
    assertThat(seconds(join(TYPE, film, index))).isEqualTo(12.5);
  }

  @Test
  void theWideHeaderIsRead() throws Exception {
    byte[] wide =
        ByteBuffer.allocate(112).put(0, (byte) 1).putInt(20, 1000).putLong(24, 90_000_500L).array();
    assertThat(seconds(join(TYPE, box("moov", box("mvhd", wide))))).isEqualTo(90_000.5);
  }

  @Test
  void aBoxWithALongSizeIsPassed() throws Exception {
    byte[] film =
        ByteBuffer.allocate(16 + 500)
            .putInt(1)
            .put("mdat".getBytes(StandardCharsets.US_ASCII))
            .putLong(516)
            .array();
    assertThat(seconds(join(TYPE, film, box("moov", header(1, 3))))).isEqualTo(3.0);
  }

  @Test
  void whatStatesNoLengthHasNone() throws Exception {
    assertThat(seconds(new byte[0])).isEqualTo("none");
    assertThat(seconds(TYPE)).isEqualTo("none");
    assertThat(seconds(join(TYPE, box("moov", box("trak", new byte[9]))))).isEqualTo("none");
    assertThat(seconds(join(TYPE, box("moov", header(0, 9))))).isEqualTo("none");
    assertThat(seconds(join(TYPE, box("moov", header(600, -1))))).isEqualTo("none");
    assertThat(seconds(join(TYPE, box("moov", box("mvhd", new byte[9]))))).isEqualTo("none");
  }

  @Test
  void sizesThatCannotBeAreNotFollowed() throws Exception {
    byte[] tooSmall = ByteBuffer.allocate(40).putInt(4).array();
    byte[] tooLarge = ByteBuffer.allocate(40).putInt(4000).array();
    assertThat(seconds(tooSmall)).isEqualTo("none");
    assertThat(seconds(tooLarge)).isEqualTo("none");
    byte[] endless = ByteBuffer.allocate(40).putInt(0).putInt(0x6d6f6f76).array();
    assertThat(seconds(endless)).isEqualTo("none");
  }

  @Test
  void aFilmThatDoesNotOpenSaysSo() {
    byte[] film = join(TYPE, box("moov", header(600, 7500)));
    ClearSource damaged =
        new ClearSource() {
          @Override
          public long sizeBytes() {
            return film.length;
          }

          @Override
          public int readAt(long position, ByteBuffer target) {
            return -1;
          }

          @Override
          public void close() {}
        };
    assertThatThrownBy(() -> new MovieHeader(damaged).seconds())
        .isInstanceOf(VaultException.Truncated.class);
  }
}
