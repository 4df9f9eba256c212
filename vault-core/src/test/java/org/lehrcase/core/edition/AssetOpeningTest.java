package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.seal.DigestList;

/** A film of two parts, of which the second comes late, broken, or from somebody else. */
class AssetOpeningTest {
  private static final int FIRST = 3 * ((1 << 16) - 16) - 80;
  private static final int SECOND = 70_001;

  @TempDir Path folder;
  private SampleEdition sample;
  private OpenedEdition opened;
  private Asset film;
  private Path second;

  @BeforeEach
  void pack() throws Exception {
    sample = SampleEdition.pack(folder);
    opened = OpenedEdition.open(sample.open(), sample.key);
    film = sample.second.assets().get(0);
    second = sample.path(sample.entry(sample.second, 0, 1));
  }

  private static Path list(Path part) {
    return part.resolveSibling(part.getFileName() + EditionLayout.DIGESTS_ENDING);
  }

  private static byte[] read(ClearSource source, long position, int count) throws Exception {
    ByteBuffer target = ByteBuffer.allocate(count);
    source.readExactly(position, target);
    return target.array();
  }

  private static Asset like(Asset asset, AssetId id, long plainBytes, List<PartRef> parts) {
    return new Asset(
        id,
        asset.role(),
        asset.rendition(),
        asset.name(),
        asset.mediaType(),
        asset.language(),
        plainBytes,
        parts);
  }

  @Test
  void theFirstPartPlaysWithoutTheSecondAndItsList() throws Exception {
    byte[] kept = SampleEdition.read(second);
    byte[] keptList = SampleEdition.read(list(second));
    Files.delete(second);
    Files.delete(list(second));
    try (ClearSource source = opened.open(film)) {
      assertThat(source.sizeBytes()).isEqualTo(FIRST + SECOND);
      assertThat(read(source, 0, FIRST)).isEqualTo(SampleEdition.film(3, FIRST));
      ByteBuffer late = ByteBuffer.allocate(8);
      assertThatThrownBy(() -> source.readExactly(FIRST, late))
          .isInstanceOf(VaultException.NotHere.class)
          .hasMessageContaining("fuller copy");
      assertThat(late.position()).isZero();
      Files.write(second, kept);
      assertThatThrownBy(() -> source.readExactly(FIRST, late))
          .isInstanceOf(VaultException.NotHere.class)
          .hasMessageContaining("digest list");
      Files.write(list(second), keptList);
      assertThat(read(source, FIRST, SECOND)).isEqualTo(SampleEdition.film(4, SECOND));
    }
  }

  @Test
  void theFirstPartIsMissedAtOnce() throws Exception {
    Files.delete(sample.path(sample.entry(sample.second, 0, 0)));
    assertThatThrownBy(() -> opened.open(film)).isInstanceOf(VaultException.NotHere.class);
  }

  @ParameterizedTest(name = "byte {0} of the second part")
  @ValueSource(ints = {0, 9, 12, 20, 39, 45, 75, 70_000, 70_112})
  void aChangedSecondPartGivesOutNothingOfWhatWasChanged(int at) throws Exception {
    SampleEdition.damage(second, at);
    try (ClearSource source = opened.open(film)) {
      ByteBuffer target = ByteBuffer.allocate(SECOND);
      assertThatThrownBy(() -> source.readExactly(FIRST, target))
          .isInstanceOf(VaultException.class);
      byte[] given = Arrays.copyOf(target.array(), target.position());
      assertThat(given).isEqualTo(Arrays.copyOf(SampleEdition.film(4, SECOND), given.length));
      assertThat(Arrays.copyOfRange(target.array(), target.position(), SECOND)).containsOnly(0);
      assertThat(read(source, 0, FIRST)).isEqualTo(SampleEdition.film(3, FIRST));
    }
  }

  @Test
  void aCutSecondPartIsNotHereAsItsLengthIsSigned() throws Exception {
    SampleEdition.cut(second, 1);
    assertThat(opened.isHere(film)).isFalse();
    try (ClearSource source = opened.open(film)) {
      assertThatThrownBy(() -> read(source, FIRST, 1)).isInstanceOf(VaultException.NotHere.class);
    }
  }

  @Test
  void theListOfAnotherPartIsRefusedWhenThePartIsTouched() throws Exception {
    byte[] other = SampleEdition.read(list(sample.path(sample.entry(sample.second, 0, 0))));
    Files.write(list(second), other);
    try (ClearSource source = opened.open(film)) {
      assertThatThrownBy(() -> read(source, FIRST, 1)).isInstanceOf(VaultException.Tampered.class);
    }
  }

  @Test
  void lengthsThatDoNotAddUpAreRefusedBeforeAByteIsRead() {
    for (long wrong : new long[] {0, FIRST, FIRST + SECOND - 1, FIRST + SECOND + 1}) {
      Asset lying = like(film, film.id(), wrong, film.parts());
      assertThatThrownBy(() -> opened.open(lying))
          .as("%d", wrong)
          .isInstanceOf(VaultException.Tampered.class);
    }
  }

  @Test
  void partsInAnotherOrderAreRefused() {
    List<PartRef> swapped = List.of(film.parts().get(1), film.parts().get(0));
    Asset lying = like(film, film.id(), film.plainBytes(), swapped);
    assertThatThrownBy(() -> opened.open(lying)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void thePartsOfOneAssetAreNotThoseOfAnother() {
    Asset lying = like(film, AssetId.random(SampleEdition.RANDOM), film.plainBytes(), film.parts());
    assertThatThrownBy(() -> opened.open(lying)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aPartWithTheKeyOfAnotherDoesNotOpen() {
    PartRef first = film.parts().get(0);
    PartRef wrong = new PartRef(first.address(), film.parts().get(1).key());
    Asset lying = like(film, film.id(), film.plainBytes(), List.of(wrong, film.parts().get(1)));
    assertThatThrownBy(() -> opened.open(lying)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aPartThatTheFrontPageDoesNotListIsRefused() {
    PartRef stray = new PartRef(PartAddress.of(new byte[32]), film.parts().get(0).key());
    Asset lying = like(film, film.id(), film.plainBytes(), List.of(stray));
    assertThatThrownBy(() -> opened.open(lying)).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aForgedFirstSegmentWithAnotherSegmentSizeIsRefused() throws Exception {
    Path first = sample.path(sample.entry(sample.second, 0, 0));
    byte[] bytes = SampleEdition.read(first);
    bytes[10] = 17;
    Files.write(first, bytes);
    assertThatThrownBy(() -> opened.open(film)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aListOfAnotherSegmentSizeIsNotThatOfThePart() throws Exception {
    Path first = sample.path(sample.entry(sample.second, 0, 0));
    byte[] encoded = SampleEdition.read(list(first));
    DigestList good = DigestList.parse(encoded);
    assertThat(good.log2SegmentBytes()).isEqualTo(16);
    encoded["lehrcase/1 digests".length() + 9] = 17;
    Files.write(list(first), encoded);
    assertThatThrownBy(() -> opened.open(film)).isInstanceOf(VaultException.class);
  }

  @Test
  void partsMayLieOnTwoSticks(@TempDir Path other) throws Exception {
    Path there = Files.createDirectory(other.resolve("002"));
    Files.move(second, there.resolve(second.getFileName()));
    Files.move(list(second), there.resolve(list(second).getFileName()));
    OpenedEdition both = opened.in(sample.open().alsoIn(List.of(other)));
    assertThat(both.isHere(film)).isTrue();
    try (ClearSource source = both.open(film)) {
      assertThat(read(source, FIRST + 1L, 5))
          .isEqualTo(Arrays.copyOfRange(SampleEdition.film(4, SECOND), 1, 6));
    }
  }

  @Test
  void aClosedFilmOpensNoMoreParts() throws Exception {
    ClearSource source = opened.open(film);
    source.close();
    assertThatThrownBy(() -> read(source, FIRST, 1))
        .isInstanceOf(java.nio.channels.ClosedChannelException.class);
  }
}
