package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;

/** One broken field at a time, in contents that are right otherwise. */
class ContentsFaultTest {

  private static CborWriter head(String series, String title, String day, long printable) {
    return new CborWriter()
        .array(7)
        .uint(1)
        .bytes(new byte[16])
        .text(series)
        .text(title)
        .text(day)
        .uint(printable);
  }

  private static byte[] empty(String series, String title, String day, long printable) {
    return head(series, title, day, printable).array(0).toBytes();
  }

  @Test
  void theSmallestContentsAreRead() throws VaultException {
    Contents contents = Contents.decode(empty("brush", "Brush", "2026-01-31", 0b1000));
    assertThat(contents.lessons()).isEmpty();
    assertThat(contents.printable()).containsExactly(AssetRole.HANDOUT);
  }

  static Stream<Arguments> heads() {
    return Stream.of(
        Arguments.of("series in capitals", empty("Brush", "Brush", "2026-01-31", 0)),
        Arguments.of("series empty", empty("", "Brush", "2026-01-31", 0)),
        Arguments.of("series with a path", empty("../x", "Brush", "2026-01-31", 0)),
        Arguments.of("series of 33", empty("a".repeat(33), "Brush", "2026-01-31", 0)),
        Arguments.of("title empty", empty("brush", "", "2026-01-31", 0)),
        Arguments.of("title of two lines", empty("brush", "a\nb", "2026-01-31", 0)),
        Arguments.of("title turned round", empty("brush", "a\u202Eb", "2026-01-31", 0)),
        Arguments.of("title isolated", empty("brush", "a\u2066b", "2026-01-31", 0)),
        Arguments.of("title decomposed", empty("brush", "u\u0308", "2026-01-31", 0)),
        Arguments.of("title too long", empty("brush", "a".repeat(101), "2026-01-31", 0)),
        Arguments.of("day that is none", empty("brush", "Brush", "2026-02-30", 0)),
        Arguments.of("day with a sign", empty("brush", "Brush", "+2026-1-31", 0)),
        Arguments.of("day of another age", empty("brush", "Brush", "0026-01-31", 0)),
        Arguments.of("unknown role bit", empty("brush", "Brush", "2026-01-31", 1 << 10)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("heads")
  void aBrokenHeadIsRefused(String fault, byte[] bytes) {
    assertThatThrownBy(() -> Contents.decode(bytes))
        .isInstanceOfAny(VaultException.Malformed.class, VaultException.TooLarge.class);
  }

  @Test
  void anotherVersionIsSaidToBeOne() {
    byte[] bytes = empty("brush", "Brush", "2026-01-31", 0);
    bytes[1] = 2;
    assertThatThrownBy(() -> Contents.decode(bytes))
        .isInstanceOf(VaultException.UnsupportedVersion.class);
  }

  @Test
  void bytesBehindTheEndAreRefused() {
    byte[] bytes = empty("brush", "Brush", "2026-01-31", 0);
    assertThatThrownBy(() -> Contents.decode(Arrays.copyOf(bytes, bytes.length + 1)))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void tooMuchIsRefusedBeforeItIsRead() {
    assertThatThrownBy(() -> Contents.decode(new byte[Contents.MAX_BYTES + 1]))
        .isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void twoLessonsOfOneIdOrNumberAreRefused() {
    Lesson lesson = new CourseSamples(1).lesson(1);
    CborWriter out = head("brush", "Brush", "2026-01-31", 0).array(2);
    LessonCodec.write(out, lesson);
    LessonCodec.write(out, lesson);
    assertThatThrownBy(() -> Contents.decode(out.toBytes()))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("share");
  }

  static Stream<Arguments> lessons() {
    return Stream.of(
        Arguments.of("number 0", lesson(0, 1, asset(0, 0, "a/b", "", 1), moment(0, 0, true))),
        Arguments.of("folder 0", lesson(1, 0, asset(0, 0, "a/b", "", 1), moment(0, 0, true))),
        Arguments.of("number 1000", lesson(1000, 1, asset(0, 0, "a/b", "", 1), moment(0, 0, true))),
        Arguments.of("role 10", lesson(1, 1, asset(10, 0, "a/b", "", 1), moment(0, 0, true))),
        Arguments.of("rendition 3", lesson(1, 1, asset(0, 3, "a/b", "", 1), moment(0, 0, true))),
        Arguments.of("no media type", lesson(1, 1, asset(0, 0, "mp4", "", 1), moment(0, 0, true))),
        Arguments.of(
            "header trick", lesson(1, 1, asset(0, 0, "a/b\r\nx", "", 1), moment(0, 0, true))),
        Arguments.of("language", lesson(1, 1, asset(0, 0, "a/b", "e n", 1), moment(0, 0, true))),
        Arguments.of("no part", lesson(1, 1, asset(0, 0, "a/b", "", 0), moment(0, 0, true))),
        Arguments.of("target 6", lesson(1, 1, asset(0, 0, "a/b", "", 1), moment(6, 0, false))),
        Arguments.of(
            "page of nothing", lesson(1, 1, asset(0, 0, "a/b", "", 1), moment(0, 3, true))),
        Arguments.of("page 0", lesson(1, 1, asset(0, 0, "a/b", "", 1), moment(1, 0, false))),
        Arguments.of("file missing", lesson(1, 1, asset(0, 0, "a/b", "", 1), moment(2, 0, true))),
        Arguments.of("file unwanted", lesson(1, 1, asset(0, 0, "a/b", "", 1), moment(0, 0, false))),
        Arguments.of("foreign file", lesson(1, 1, asset(0, 0, "a/b", "", 1), foreign())));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("lessons")
  void aBrokenLessonIsRefused(String fault, byte[] bytes) {
    assertThatThrownBy(() -> LessonCodec.read(CborReader.of(bytes)))
        .isInstanceOfAny(VaultException.Malformed.class, VaultException.TooLarge.class);
  }

  @Test
  void theLessonOfTheTableIsRightWithoutItsFault() throws VaultException {
    byte[] bytes = lesson(1, 1, asset(0, 0, "a/b", "", 1), moment(2, 0, false));
    Lesson lesson = LessonCodec.read(CborReader.of(bytes));
    assertThat(lesson.assets(AssetRole.VIDEO)).hasSize(1);
    assertThat(lesson.asset(lesson.assets().get(0).id())).isPresent();
  }

  /** Fragments are written as whole values and joined: CBOR has no frame around elements. */
  private static byte[] lesson(int number, int folder, byte[] asset, byte[] moment) {
    var out = new ByteArrayOutputStream();
    out.write(0x89);
    out.writeBytes(new CborWriter().bytes(new byte[16]).toBytes());
    out.writeBytes(new CborWriter().uint(number).toBytes());
    out.writeBytes(new CborWriter().uint(folder).toBytes());
    out.writeBytes(new CborWriter().text("t").toBytes());
    out.writeBytes(new CborWriter().text("").toBytes());
    out.writeBytes(new byte[] {(byte) 0xf4, (byte) 0xf6, (byte) 0x81});
    out.writeBytes(asset);
    out.write(0x81);
    out.writeBytes(moment);
    return out.toByteArray();
  }

  private static byte[] asset(int role, int rendition, String type, String language, int parts) {
    CborWriter out = new CborWriter().array(8).bytes(new byte[16]).uint(role).uint(rendition);
    out.text("n").text(type).text(language).uint(7).array(parts);
    for (int i = 0; i < parts; i++) {
      out.array(2).bytes(new byte[32]).bytes(new byte[32]);
    }
    return out.toBytes();
  }

  private static byte[] moment(int target, int page, boolean withoutFile) {
    CborWriter out = new CborWriter().array(5).uint(5).text("m").uint(target);
    return (withoutFile ? out.nil() : out.bytes(new byte[16])).uint(page).toBytes();
  }

  private static byte[] foreign() {
    byte[] other = new byte[16];
    other[0] = 1;
    return new CborWriter().array(5).uint(5).text("m").uint(2).bytes(other).uint(0).toBytes();
  }
}
