package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class FrameLengthTest {
  private static byte[] box(String type, byte[]... bodies) {
    int size = 8;
    for (byte[] body : bodies) {
      size += body.length;
    }
    ByteBuffer box = ByteBuffer.allocate(size).putInt(size);
    box.put(type.getBytes(StandardCharsets.US_ASCII));
    for (byte[] body : bodies) {
      box.put(body);
    }
    return box.array();
  }

  private static byte[] track(String handler, int scale, int... countsAndSteps) {
    ByteBuffer kind = ByteBuffer.allocate(24);
    kind.position(8).put(handler.getBytes(StandardCharsets.US_ASCII));
    ByteBuffer times = ByteBuffer.allocate(8 + 4 * countsAndSteps.length);
    times.putInt(4, countsAndSteps.length / 2).position(8);
    for (int number : countsAndSteps) {
      times.putInt(number);
    }
    return box(
        "trak",
        box(
            "mdia",
            box("mdhd", ByteBuffer.allocate(24).putInt(12, scale).array()),
            box("hdlr", kind.array()),
            box("minf", box("stbl", box("stts", times.array())))));
  }

  private static double seconds(byte[] film) throws Exception {
    return FrameLength.seconds(new ClearBytes(film)).orElse(-1);
  }

  /** What ffprobe says of these two films: 24/1 and 30/1 pictures a second. */
  @Test
  void theFilmsOfTheDemoAndOfTheTrialSayTheirPace() throws Exception {
    Path demo = Path.of("..", "packager", "demo", "brush", "02 Far water", "Far water.mp4");
    Path clip = Path.of("src", "main", "resources", "ui", "clips", "full.mp4");
    assertThat(seconds(Files.readAllBytes(demo))).isCloseTo(1 / 24.0, within(1e-9));
    assertThat(seconds(Files.readAllBytes(clip))).isCloseTo(1 / 30.0, within(1e-9));
  }

  @Test
  void theMostFrequentStepOfThePictureTrackCounts() throws Exception {
    byte[] film =
        box("moov", track("soun", 48_000, 900, 1024), track("vide", 600, 2, 40, 500, 20, 3, 25));
    assertThat(seconds(film)).isEqualTo(20 / 600.0);
  }

  @Test
  void whatStatesNoPaceHasNone() throws Exception {
    assertThat(seconds(new byte[0])).isEqualTo(-1);
    assertThat(seconds(box("moov", track("soun", 48_000, 900, 1024)))).isEqualTo(-1);
    assertThat(seconds(box("moov", track("vide", 0, 900, 1024)))).isEqualTo(-1);
    assertThat(seconds(box("moov", track("vide", 600)))).isEqualTo(-1);
    assertThat(seconds(box("moov", track("vide", 1, 3, 900)))).as("15 minutes").isEqualTo(-1);
    byte[] lying = box("moov", track("vide", 600, 5, 25));
    ByteBuffer.wrap(lying).putInt(lying.length - 12, Integer.MAX_VALUE);
    assertThat(seconds(lying)).as("more entries than there is room for").isEqualTo(25 / 600.0);
  }
}
