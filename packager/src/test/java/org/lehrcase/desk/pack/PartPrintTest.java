package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.EOFException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.core.seal.Progress;

class PartPrintTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 65_440, 65_441, 1_048_240, 1_048_241, 5_000_000})
  void sealingGivesThePrintWithoutFurtherReading(int size) throws Exception {
    byte[] bytes = noise(size);
    Counting source = new Counting(bytes);
    PartHeader header = header(size);
    PartPrint print = new PartPrint(source, header.layout());
    PartSealer sealer = new PartSealer(new SecureRandom());
    PartKey key = PartKey.random(new SecureRandom());
    sealer.seal(print, header, key, folder.resolve("part"), Progress.NONE);
    long read = source.read.get();
    assertThat(read).isEqualTo(size);
    assertThat(print.print()).isEqualTo(of(bytes));
    assertThat(source.read.get()).as("nothing is read twice").isEqualTo(read);
  }

  @Test
  void anyOtherBytesHaveAnotherPrint() throws Exception {
    byte[] bytes = noise(2_500_000);
    Octets print = of(bytes);
    for (int at : new int[] {0, 1_048_239, 1_048_240, 2_000_000, 2_499_999}) {
      byte[] other = bytes.clone();
      other[at] ^= 1;
      assertThat(of(other)).isNotEqualTo(print);
    }
    assertThat(of(java.util.Arrays.copyOf(bytes, bytes.length + 1))).isNotEqualTo(print);
  }

  @Test
  void oddReadsDoNotSpoilThePrint() throws Exception {
    byte[] bytes = noise(2_500_000);
    PartPrint print = new PartPrint(ByteSource.of(bytes), header(bytes.length).layout());
    print.readExactly(5, ByteBuffer.allocate(1000));
    print.readExactly(0, ByteBuffer.allocate(10));
    print.readExactly(1_048_240, ByteBuffer.allocate(700_000));
    assertThat(print.print()).isEqualTo(of(bytes));
  }

  @Test
  void aSourceThatEndsEarlyIsSaid() {
    PartPrint print = new PartPrint(ByteSource.of(noise(100)), header(200).layout());
    assertThatThrownBy(print::print).isInstanceOf(EOFException.class);
  }

  private static Octets of(byte[] bytes) throws Exception {
    return new PartPrint(ByteSource.of(bytes), header(bytes.length).layout()).print();
  }

  private static PartHeader header(long size) {
    return PartHeader.single(PartKind.ASSET, AssetId.of(new byte[16]), size);
  }

  private static byte[] noise(int size) {
    byte[] bytes = new byte[size];
    new Random(size).nextBytes(bytes);
    return bytes;
  }

  private static final class Counting implements ByteSource {
    private final byte[] bytes;
    private final AtomicLong read = new AtomicLong();

    Counting(byte[] bytes) {
      this.bytes = bytes;
    }

    @Override
    public long sizeBytes() {
      return bytes.length;
    }

    @Override
    public int readAt(long position, ByteBuffer target) {
      if (position >= bytes.length) {
        return -1;
      }
      int count = (int) Math.min(target.remaining(), bytes.length - position);
      target.put(bytes, (int) position, count);
      read.addAndGet(count);
      return count;
    }

    @Override
    public void close() {}
  }
}
