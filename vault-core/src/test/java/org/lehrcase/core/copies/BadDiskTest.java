package org.lehrcase.core.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.FaultyDisk;
import org.lehrcase.core.file.FaultyDisk.Act;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

/** Checking and fetching on disks with bad spots, that only read, or that say nothing. */
class BadDiskTest {
  @TempDir Path work;
  private CopyShop shop;
  private FrontPage front;
  private Path good;
  private Path real;
  private Map<String, Octets> whole;
  private final Set<Path> unreadable = new HashSet<>();

  /** The copy, on a disk whose bad spots are gone when another file takes the name. */
  private Path copy;

  @BeforeEach
  void pack() throws Exception {
    shop = new CopyShop();
    good = work.resolve("good");
    front = shop.pack(good, 1, 1, 1, 2, 3);
    whole = CopyShop.files(good);
    real = work.resolve("copy");
    CopyShop.copyTree(good, real);
    copy = FaultyDisk.at(real, this::badSpots);
  }

  private void badSpots(Act act, Path file) throws IOException {
    if (act == Act.MOVE || act == Act.DELETE) {
      unreadable.remove(file);
    } else if ((act == Act.READ || act == Act.LIST) && unreadable.contains(file)) {
      throw new FileSystemException(file.toString(), null, "Input/output error");
    }
  }

  private Path listOf(PartEntry part) {
    return real.resolve(EditionLayout.folderName(part.folder()))
        .resolve(EditionLayout.digestsName(part.address()));
  }

  private FetchResult mend() throws Exception {
    FetchWish wish = FetchWish.all(front, copy);
    FetchNeed need = FetchNeed.of(wish, Progress.NONE);
    return EditionFetch.run(wish, need, List.of(new FolderSource(good)), Progress.NONE);
  }

  @Test
  void aListOfDigestsThatCannotBeReadIsDamageAndTheCheckGoesOn() throws Exception {
    unreadable.add(listOf(front.parts(2).get(0)));
    EditionCheck check = EditionCheck.everyByte(shop.open(copy), Progress.NONE);
    assertThat(check.folders())
        .extracting(report -> report.state())
        .containsExactly(PartState.HERE, PartState.DAMAGED, PartState.HERE);
  }

  @Test
  void aMediumThatIsGoneAsAWholeIsNotCalledDamaged() throws Exception {
    EditionFolder opened = shop.open(copy);
    unreadable.add(listOf(front.parts(1).get(0)));
    unreadable.add(real);
    assertThatThrownBy(() -> EditionCheck.everyByte(opened, Progress.NONE))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("Input/output error");
  }

  @Test
  void whatCannotBeReadIsFetchedAgain() throws Exception {
    unreadable.add(listOf(front.parts(1).get(0)));
    unreadable.add(real.resolve("002").resolve(front.parts(2).get(0).address().hex()));
    unreadable.add(real.resolve(EditionLayout.KEYS_INDEX));
    unreadable.add(real.resolve(EditionLayout.KEYS).resolve(EditionLayout.chunkName(0)));
    unreadable.add(real.resolve(EditionLayout.CONTENTS));
    unreadable.add(real.resolve(EditionLayout.FRONT_PAGE));
    assertThat(mend().lacking()).isEmpty();
    assertThat(unreadable).isEmpty();
    assertThat(CopyShop.files(real)).isEqualTo(whole);
  }

  @Test
  void aBeginningThatCannotBeReadIsFetchedFromItsStart() throws Exception {
    PartEntry film = front.parts(1).get(0);
    Path place = real.resolve("001").resolve(film.address().hex());
    Path begun = place.resolveSibling(place.getFileName() + WholeFiles.UNFINISHED);
    Files.move(place, begun);
    unreadable.add(begun);
    assertThat(mend().brought()).containsExactly(film);
    assertThat(CopyShop.files(real)).isEqualTo(whole);
  }

  @Test
  void aStickThatOnlyReadsSaysSoAndIsAsBefore() throws Exception {
    Files.delete(listOf(front.parts(1).get(0)));
    Path locked =
        FaultyDisk.at(
            real,
            (act, file) -> {
              if (act != Act.READ && act != Act.LIST && act != Act.STORE) {
                throw new FileSystemException(file.toString(), null, "Read-only file system");
              }
            });
    FetchWish wish = FetchWish.all(front, locked);
    FetchNeed need = FetchNeed.of(wish, Progress.NONE);
    Map<String, Octets> before = CopyShop.files(real);
    assertThatThrownBy(
            () -> EditionFetch.run(wish, need, List.of(new FolderSource(good)), Progress.NONE))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("Read-only");
    assertThat(CopyShop.files(real)).isEqualTo(before);
    assertThat(EditionMerge.finish(locked, TrustedRoots.firstMeeting())).isFalse();
  }

  @Test
  void aDiskThatDoesNotSayItsRoomIsTriedAllTheSame() throws Exception {
    Path silent =
        FaultyDisk.at(
            work.resolve("new copy"),
            (act, file) -> {
              if (act == Act.STORE) {
                throw new IOException("Mount point not found");
              }
            });
    assertThat(DiskSpace.freeAt(silent)).isEqualTo(DiskSpace.UNKNOWN);
    FetchWish wish = FetchWish.all(front, silent);
    FetchNeed need = FetchNeed.of(wish, Progress.NONE);
    assertThat(need.freeBytes()).isEqualTo(DiskSpace.UNKNOWN);
    assertThat(need.afterwardsBytes()).isEqualTo(DiskSpace.UNKNOWN);
    assertThat(need.fits()).isTrue();
    EditionFetch.run(wish, need, List.of(new FolderSource(good)), Progress.NONE);
    assertThat(CopyShop.files(work.resolve("new copy"))).isEqualTo(whole);
  }

  @Test
  void theRoomOfABeginningIsNotAskedForTwice() throws Exception {
    PartEntry film = front.parts(1).get(0);
    Path place = real.resolve("001").resolve(film.address().hex());
    byte[] half = Arrays.copyOf(CopyShop.read(place), 150_000);
    Files.delete(place);
    Files.write(place.resolveSibling(place.getFileName() + WholeFiles.UNFINISHED), half);
    FetchNeed need = FetchNeed.of(FetchWish.all(front, real), Progress.NONE);
    assertThat(need.missing()).containsExactly(film);
    assertThat(need.begunBytes()).isEqualTo(150_000);
    long tight = film.sealedBytes() - 150_000 + (16 << 20);
    assertThat(new FetchNeed(need.missing(), List.of(), 150_000, tight).fits()).isTrue();
    assertThat(new FetchNeed(need.missing(), List.of(), 0, tight).fits()).isFalse();
  }

  @Test
  void aGlanceNamesWhatIsMissingWithoutReadingIt() throws Exception {
    PartEntry film = front.parts(3).get(0);
    Files.delete(real.resolve("003").resolve(film.address().hex()));
    Set<Path> read = new HashSet<>();
    Path watched =
        FaultyDisk.at(
            real,
            (act, file) -> {
              if (act == Act.READ && file.toString().endsWith(".digests")) {
                read.add(file);
              }
            });
    FetchNeed need = FetchNeed.glance(FetchWish.all(front, watched));
    assertThat(need.missing()).containsExactly(film);
    assertThat(need.damaged()).isEmpty();
    assertThat(read).isEmpty();
  }
}
