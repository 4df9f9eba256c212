package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

/** A long film on a slow stick: parts are opened when they are touched, and not before. */
class LazyAssetTest {
  private static final int PARTS = 4;
  private static final int PART = 70_000;
  private static final int ALL = PARTS * PART;

  private final SecureRandom random = new SecureRandom();
  private final PartKey key = PartKey.random(random);
  private final AssetId asset = AssetId.random(random);
  private final byte[] clear = Samples.clear(ALL, 9);
  private final List<PartHeader> headers = new ArrayList<>();
  private final List<byte[]> files = new ArrayList<>();
  private final AtomicIntegerArray opened = new AtomicIntegerArray(PARTS);
  private final Set<Integer> missing = new HashSet<>();
  private final List<FailingSource> sources = new ArrayList<>();

  @BeforeEach
  void seal() {
    for (int i = 0; i < PARTS; i++) {
      var header = new PartHeader(PartKind.ASSET, asset, PART, 16, i, PARTS);
      headers.add(header);
      byte[] piece = Arrays.copyOfRange(clear, i * PART, (i + 1) * PART);
      files.add(new PartSealer(random).sealBytes(piece, header, key));
    }
  }

  private PartReader open(int number) throws IOException, VaultException {
    opened.incrementAndGet(number);
    synchronized (missing) {
      if (missing.contains(number)) {
        throw new VaultException.NotHere("part " + number + " is on another stick");
      }
    }
    var source = new FailingSource(ByteSource.of(files.get(number)), FailingSource.NEVER);
    synchronized (sources) {
      sources.add(source);
    }
    DigestList digests = DigestList.ofFile(ByteSource.of(files.get(number)), 16);
    return PartReader.open(source, key, headers.get(number), digests);
  }

  private AssetReader film() {
    return AssetReader.lazily(headers, this::open);
  }

  private List<Integer> openings() {
    List<Integer> counts = new ArrayList<>();
    for (int i = 0; i < PARTS; i++) {
      counts.add(opened.get(i));
    }
    return counts;
  }

  private byte[] read(AssetReader film, long position, int count)
      throws IOException, VaultException {
    ByteBuffer target = ByteBuffer.allocate(count);
    film.readExactly(position, target);
    return target.array();
  }

  @Test
  void lengthAndBufferAreKnownBeforeAnythingIsOpen() throws Exception {
    try (AssetReader film = film()) {
      assertThat(film.sizeBytes()).isEqualTo(ALL);
      assertThat(film.bufferBytes()).isEqualTo(1 << 16);
      assertThat(film.readAt(ALL, ByteBuffer.allocate(1))).isEqualTo(-1);
    }
    assertThat(openings()).containsExactly(0, 0, 0, 0);
  }

  @Test
  void theBeginningNeedsTheFirstPartAlone() throws Exception {
    missing.addAll(List.of(1, 2, 3));
    try (AssetReader film = film()) {
      assertThat(read(film, 0, PART)).isEqualTo(Arrays.copyOf(clear, PART));
    }
    assertThat(openings()).containsExactly(1, 0, 0, 0);
  }

  @Test
  void aSeekOpensThePartThatItReachesAndNoOther() throws Exception {
    try (AssetReader film = film()) {
      film.touch(0);
      assertThat(read(film, 2 * PART + 5, 10))
          .isEqualTo(Arrays.copyOfRange(clear, 2 * PART + 5, 2 * PART + 15));
      byte[] buffer = new byte[film.bufferBytes()];
      assertThat(film.readSegment(3L * PART - 1, buffer).remaining()).isEqualTo(1);
    }
    assertThat(openings()).containsExactly(1, 0, 1, 0);
  }

  @Test
  void aPartIsOpenedOnceHoweverOftenItIsRead() throws Exception {
    try (AssetReader film = film()) {
      assertThat(Samples.all(film)).isEqualTo(clear);
      assertThat(Samples.all(film)).isEqualTo(clear);
    }
    assertThat(openings()).containsExactly(1, 1, 1, 1);
  }

  @Test
  void aMissingPartFailsWhereItIsTouchedAndPlaysWhenItComesBack() throws Exception {
    missing.add(1);
    try (AssetReader film = film()) {
      ByteBuffer across = ByteBuffer.allocate(20);
      assertThatThrownBy(() -> film.readExactly(PART - 10, across))
          .isInstanceOf(VaultException.NotHere.class)
          .hasMessageContaining("another stick");
      assertThat(across.position()).isEqualTo(10);
      assertThat(read(film, 2 * PART, 1)).containsExactly(clear[2 * PART]);
      missing.clear();
      assertThat(read(film, PART - 10, 20))
          .isEqualTo(Arrays.copyOfRange(clear, PART - 10, PART + 10));
    }
    assertThat(openings()).containsExactly(1, 2, 1, 0);
  }

  @Test
  void ofADamagedLaterPartNothingIsGivenOut() throws Exception {
    byte[] last = files.get(3);
    last[last.length - 1] ^= 1;
    try (AssetReader film = film()) {
      ByteBuffer target = ByteBuffer.allocate(100);
      assertThatThrownBy(() -> film.readAt(3L * PART + 9, target))
          .isInstanceOf(VaultException.class);
      assertThat(target.position()).isZero();
      assertThat(target.array()).containsOnly(0);
      assertThat(read(film, 0, 3 * PART)).isEqualTo(Arrays.copyOf(clear, 3 * PART));
    }
  }

  @Test
  void anotherPartUnderTheNumberIsAnErrorAndIsClosed() throws Exception {
    try (AssetReader film = AssetReader.lazily(headers, number -> open(0))) {
      film.touch(0);
      assertThatThrownBy(() -> film.readAt(PART, ByteBuffer.allocate(1)))
          .isInstanceOf(IllegalStateException.class);
      assertThat(sources.get(1).closed()).isTrue();
      assertThat(sources.get(0).closed()).isFalse();
    }
  }

  @Test
  void closingClosesWhatWasOpenedAndOpensNoMore() throws Exception {
    AssetReader film = film();
    film.touch(1);
    film.touch(3);
    film.close();
    assertThat(sources).hasSize(2).allMatch(FailingSource::closed);
    for (int part = 0; part < PARTS; part++) {
      long position = (long) part * PART;
      assertThatThrownBy(() -> film.readAt(position, ByteBuffer.allocate(1)))
          .isInstanceOf(ClosedChannelException.class);
    }
    assertThat(openings()).containsExactly(0, 1, 0, 1);
  }

  @Test
  void manyReadersOfOnePartOpenItOnce() throws Exception {
    ExecutorService readers = Executors.newFixedThreadPool(6);
    try (AssetReader film = film()) {
      List<Future<byte[]>> answers = new ArrayList<>();
      for (int i = 0; i < 24; i++) {
        int from = (i % PARTS) * PART + i;
        answers.add(readers.submit(() -> read(film, from, 1000)));
      }
      for (int i = 0; i < 24; i++) {
        int from = (i % PARTS) * PART + i;
        assertThat(answers.get(i).get(30, TimeUnit.SECONDS))
            .isEqualTo(Arrays.copyOfRange(clear, from, from + 1000));
      }
      assertThat(openings()).containsExactly(1, 1, 1, 1);
    } finally {
      readers.shutdownNow();
    }
  }

  @Test
  void headersOfTwoAssetsOrOutOfOrderAreRefused() {
    List<PartHeader> swapped = List.of(headers.get(1), headers.get(0));
    List<PartHeader> short3 = headers.subList(0, 3);
    for (List<PartHeader> wrong : List.of(List.<PartHeader>of(), swapped, short3)) {
      assertThatThrownBy(() -> AssetReader.lazily(wrong, this::open))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
