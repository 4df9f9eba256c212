package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FileTargetTest {
  private static final int GROUP = SealRun.GROUP_BYTES;

  @TempDir Path folder;

  private static void fill(SealTarget target, byte[] bytes) throws IOException {
    int groups = (bytes.length + GROUP - 1) / GROUP;
    List<Integer> order = IntStream.range(0, groups).boxed().collect(Collectors.toList());
    Collections.shuffle(order, new Random(groups));
    for (int group : order) {
      int from = group * GROUP;
      int size = Math.min(GROUP, bytes.length - from);
      target.writeAt(from, ByteBuffer.wrap(bytes, from, size));
    }
    target.force();
  }

  private static void writesWhatIsGiven(Path file, int size) throws IOException {
    byte[] bytes = Samples.clear(size, size);
    try (SealTarget target = SealTarget.newFile(file, size)) {
      fill(target, bytes);
    }
    assertThat(Files.size(file)).isEqualTo(size);
    try (FileSource source = FileSource.open(file)) {
      byte[] read = new byte[size];
      source.readExactly(0, ByteBuffer.wrap(read));
      assertThat(Arrays.mismatch(read, bytes)).isEqualTo(-1);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {96, GROUP - 1, GROUP, GROUP + 1, 3 * GROUP, 3 * GROUP + 65_536, 5_000_001})
  void anyLengthIsWrittenInAnyOrder(int size) throws IOException {
    writesWhatIsGiven(folder.resolve("part"), size);
  }

  @Test
  void aMemoryFileSystemIsWrittenThroughTheCache() throws IOException {
    Path memory = Path.of("/dev/shm");
    Path file = (Files.isWritable(memory) ? memory : folder).resolve("part-" + System.nanoTime());
    try {
      writesWhatIsGiven(file, 2 * GROUP + 77);
    } finally {
      Files.deleteIfExists(file);
    }
  }

  @Test
  void piecesThatFitNoBlockAreWrittenToo() throws IOException {
    byte[] bytes = Samples.clear(2 * GROUP, 4);
    Path file = folder.resolve("part");
    try (SealTarget target = SealTarget.newFile(file, bytes.length)) {
      for (int at = 0; at < bytes.length; at += 99_991) {
        int size = Math.min(99_991, bytes.length - at);
        target.writeAt(at, ByteBuffer.wrap(bytes, at, size));
      }
      target.force();
    }
    assertThat(file).hasBinaryContent(bytes);
  }

  @Test
  void anExistingFileIsNeverOpened() throws IOException {
    Path file = Files.writeString(folder.resolve("part"), "mine");
    assertThatThrownBy(() -> SealTarget.newFile(file, 4L * GROUP))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("mine");
  }
}
