package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ByteSourceTest {
  @TempDir Path folder;
  private final byte[] bytes = Samples.clear(1000, 1);

  @Test
  void fileIsReadAtAnyPosition() throws Exception {
    Path file = Files.write(folder.resolve("file"), bytes);
    try (FileSource source = FileSource.open(file)) {
      assertThat(source.sizeBytes()).isEqualTo(1000);
      ByteBuffer target = ByteBuffer.allocate(10);
      source.readExactly(990, target);
      assertThat(target.flip()).isEqualTo(ByteBuffer.wrap(bytes, 990, 10));
      assertThat(source.readAt(1000, ByteBuffer.allocate(1))).isEqualTo(-1);
    }
  }

  @Test
  void linkIsNoFile() throws Exception {
    Path file = Files.write(folder.resolve("file"), bytes);
    Path link = Files.createSymbolicLink(folder.resolve("link"), file);
    assertThatThrownBy(() -> FileSource.open(link))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("not a regular file");
  }

  @Test
  void folderIsNoFile() {
    assertThatThrownBy(() -> FileSource.open(folder)).isInstanceOf(FileSystemException.class);
  }

  @Test
  void absentFileIsNamed() {
    assertThatThrownBy(() -> FileSource.open(folder.resolve("none")))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void readingPastTheEndIsAnError() {
    ByteSource source = ByteSource.of(bytes);
    assertThatThrownBy(() -> source.readExactly(995, ByteBuffer.allocate(6)))
        .isInstanceOf(EOFException.class)
        .hasMessageContaining("1 bytes missing");
  }

  @Test
  void sliceEndsWhereItShould() throws IOException {
    ByteSource slice = ByteSource.of(bytes).slice(100, 50);
    assertThat(slice.sizeBytes()).isEqualTo(50);
    ByteBuffer target = ByteBuffer.allocate(100);
    assertThat(slice.readAt(40, target)).isEqualTo(10);
    assertThat(target.limit()).isEqualTo(100);
    assertThat(target.flip()).isEqualTo(ByteBuffer.wrap(bytes, 140, 10));
    assertThat(slice.readAt(50, ByteBuffer.allocate(1))).isEqualTo(-1);
  }

  @Test
  void closingASliceLeavesTheWholeOpen() throws IOException {
    var whole = new FailingSource(ByteSource.of(bytes), FailingSource.NEVER);
    whole.slice(0, 10).close();
    assertThat(whole.closed()).isFalse();
  }

  @ParameterizedTest(name = "{1} bytes from {0}")
  @CsvSource({"-1, 1", "0, -1", "0, 1001", "1000, 1", "9223372036854775807, 1"})
  void sliceOutsideIsRefused(long from, long size) {
    ByteSource source = ByteSource.of(bytes);
    assertThatThrownBy(() -> source.slice(from, size)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void plainClearSourceGivesSegmentsThroughItsReads() throws Exception {
    ClearSource plain =
        new ClearSource() {
          private final ByteSource source = ByteSource.of(bytes);

          @Override
          public long sizeBytes() {
            return source.sizeBytes();
          }

          @Override
          public int readAt(long position, ByteBuffer target) throws IOException {
            return source.readAt(position, target);
          }

          @Override
          public void close() {}
        };
    byte[] buffer = new byte[plain.bufferBytes()];
    assertThat(plain.readSegment(900, buffer)).isEqualTo(ByteBuffer.wrap(bytes, 900, 100));
    assertThatThrownBy(() -> plain.readSegment(1000, buffer))
        .isInstanceOf(IndexOutOfBoundsException.class);
    assertThat(Samples.all(plain)).isEqualTo(bytes);
  }
}
