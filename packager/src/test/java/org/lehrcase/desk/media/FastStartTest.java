package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.seal.ByteSource;

class FastStartTest {
  /** What another reader saw out of the film before anything was moved. */
  private static List<String> recorded(String film) {
    return Samples.lines("packets.csv").stream()
        .filter(l -> l.startsWith(film + ","))
        .map(l -> l.substring(film.length() + 1))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"index-at-end.mp4", "camera.mov"})
  void theMovedIndexPointsAtTheSamePackets(String film) throws Exception {
    var moved = Samples.contents(FastStart.view(Samples.film(film)));

    assertThat(recorded(film)).hasSizeGreaterThan(50);
    assertThat(PacketWalk.packets(moved)).isEqualTo(recorded(film));
  }

  @ParameterizedTest
  @ValueSource(strings = {"index-at-end.mp4", "camera.mov"})
  void theViewStartsAtOnceAndIsAsLongAsTheFile(String film) throws Exception {
    var view = FastStart.view(Samples.film(film));

    assertThat(view.sizeBytes()).isEqualTo(Samples.bytes(film).length);
    var info = MediaProbe.probe(view);
    assertThat(info.index()).isEqualTo(IndexPlace.FRONT);
    assertThat(info.tracks()).isEqualTo(MediaProbe.probe(Samples.film(film)).tracks());
  }

  @Test
  void theViewHoldsTheBoxesInTheOrderOfAnotherProgramsFastStart() throws Exception {
    var ours = FileBox.list(FastStart.view(Samples.film("index-at-end.mp4")));

    assertThat(ours).extracting(FileBox::type).startsWith("ftyp", "moov").contains("mdat");
    var theirs = PacketWalk.packets(Samples.bytes("index-in-front.mp4"));
    assertThat(theirs).isEqualTo(recorded("index-at-end.mp4"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"index-in-front.mp4", "in-fragments.mp4", "vp9-opus.webm", "wrong-box.mkv"})
  void whatStartsAtOnceOrIsNoMp4IsGivenBackAsItIs(String film) throws Exception {
    var source = Samples.film(film);

    assertThat(FastStart.view(source)).isSameAs(source);
  }

  @Test
  void movingTwiceChangesNothingMore() throws Exception {
    var once = FastStart.view(Samples.film("index-at-end.mp4"));

    assertThat(FastStart.view(once)).isSameAs(once);
  }

  @Test
  void everyReadOfTheViewGivesTheSameBytesWhereverItStarts() throws Exception {
    var view = FastStart.view(Samples.film("index-at-end.mp4"));
    var whole = Samples.contents(view);
    for (var from = 0; from < whole.length; from += 97) {
      var buffer = ByteBuffer.allocate(Math.min(1500, whole.length - from));
      view.readExactly(from, buffer);
      assertThat(buffer.array())
          .isEqualTo(java.util.Arrays.copyOfRange(whole, from, from + buffer.capacity()));
    }
    assertThat(view.readAt(whole.length, ByteBuffer.allocate(1))).isEqualTo(-1);
  }

  @Test
  void offsetsThatNoLongerFitIn32BitsBecome64BitOnes() throws Exception {
    var largest = 0xffff_fff0L;
    var film = hugeFilm(largest);

    var view = FastStart.view(film);

    var index = Movie.read(view).moov();
    var table = index.need("trak", "mdia", "minf", "stbl", "co64").body();
    var growth = view.sizeBytes() - film.sizeBytes();
    assertThat(growth).isEqualTo(8); // two offsets, four bytes each
    var indexBytes = index.whole().size();
    assertThat(table.u64(8)).isEqualTo(24L + indexBytes);
    assertThat(table.u64(16)).isEqualTo(largest + indexBytes);
    assertThat(table.u64(16)).isGreaterThan(0xffff_ffffL);
  }

  @Test
  void offsetsThatStillFitStayShort() throws Exception {
    var view = FastStart.view(hugeFilm(0x7fff_0000L));

    assertThat(Movie.read(view).moov().find("trak", "mdia", "minf", "stbl", "stco")).isPresent();
  }

  /** A film whose pictures fill everything up to the given place, where the last chunk starts. */
  private static ByteSource hugeFilm(long lastChunk) {
    var pictures = lastChunk + 16 - 8;
    var head =
        Samples.joined(
            Samples.box("ftyp", new byte[0]),
            Samples.ints(1),
            "mdat".getBytes(java.nio.charset.StandardCharsets.US_ASCII),
            ByteBuffer.allocate(8).putLong(pictures).array());
    var stco = Samples.box("stco", Samples.ints(0, 2, 24, (int) lastChunk));
    var index = Samples.box("moov", inBoxes(stco, "trak", "mdia", "minf", "stbl"));
    var indexStart = 8 + pictures;
    return Samples.longer(head, indexStart + index.length, indexStart, index);
  }

  private static byte[] inBoxes(byte[] inner, String... types) {
    var result = inner;
    for (var i = types.length - 1; i >= 0; i--) {
      result = Samples.box(types[i], result);
    }
    return result;
  }

  @Test
  void anIndexThatPointsOutsideTheFileIsRefused() {
    var stco = Samples.box("stco", Samples.ints(0, 1, 100_000));
    var film =
        Samples.joined(
            Samples.box("ftyp", new byte[8]),
            Samples.box("mdat", new byte[64]),
            Samples.box("moov", inBoxes(stco, "trak", "mdia", "minf", "stbl")));

    assertThatThrownBy(() -> FastStart.view(ByteSource.of(film)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("points at byte 100000");
  }

  @Test
  void anIndexThatPointsIntoItselfIsRefused() {
    var stco = Samples.box("stco", Samples.ints(0, 1, 100));
    var film =
        Samples.joined(
            Samples.box("ftyp", new byte[8]),
            Samples.box("mdat", new byte[64]),
            Samples.box("moov", inBoxes(stco, "trak", "mdia", "minf", "stbl")));

    assertThatThrownBy(() -> FastStart.view(ByteSource.of(film)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("into itself");
  }

  @Test
  void aTableThatClaimsFourThousandMillionOffsetsIsRefusedWithoutMemory() {
    var stco = Samples.box("stco", Samples.ints(0, -1, 16));
    var film =
        Samples.joined(
            Samples.box("mdat", new byte[64]),
            Samples.box("moov", inBoxes(stco, "trak", "mdia", "minf", "stbl")));

    assertThatThrownBy(() -> FastStart.view(ByteSource.of(film)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("ends before its last entry");
  }

  @Test
  void aCompressedIndexIsLeftWhereItIs() {
    var film =
        Samples.joined(
            Samples.box("mdat", new byte[64]),
            Samples.box("moov", Samples.box("cmov", new byte[8])));

    assertThatThrownBy(() -> FastStart.view(ByteSource.of(film)))
        .isInstanceOf(MediaException.class)
        .extracting(e -> ((MediaException) e).kind())
        .isEqualTo(MediaException.Kind.UNSUPPORTED);
  }

  @Test
  void closingTheViewClosesTheFile() throws Exception {
    var closed = new boolean[1];
    var inner = Samples.film("index-at-end.mp4");
    var watched =
        new ByteSource() {
          @Override
          public long sizeBytes() {
            return inner.sizeBytes();
          }

          @Override
          public int readAt(long position, ByteBuffer target) throws java.io.IOException {
            return inner.readAt(position, target);
          }

          @Override
          public void close() {
            closed[0] = true;
          }
        };

    FastStart.view(watched).close();

    assertThat(closed[0]).isTrue();
  }
}
