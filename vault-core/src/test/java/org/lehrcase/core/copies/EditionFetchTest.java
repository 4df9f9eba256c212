package org.lehrcase.core.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.FailingMedium;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

class EditionFetchTest {
  @TempDir Path work;
  private CopyShop shop;
  private FrontPage front;
  private Path good;
  private Path copy;
  private Map<String, Octets> whole;

  @BeforeEach
  void pack() throws Exception {
    shop = new CopyShop();
    good = work.resolve("Kurs für Änne");
    front = shop.pack(good, 1, 1, 1, 2, 3);
    whole = CopyShop.files(good);
    copy = work.resolve("Mein Stück");
  }

  private FetchResult fetch(FetchWish wish, CopySource... from) throws Exception {
    FetchNeed need = FetchNeed.of(wish, Progress.NONE);
    return EditionFetch.run(wish, need, List.of(from), Progress.NONE);
  }

  private FetchWish everything() {
    return FetchWish.all(front, copy);
  }

  private PartEntry film(int lesson) {
    return front.parts(lesson).get(0);
  }

  private Path at(Path folder, PartEntry part) {
    return folder
        .resolve(EditionLayout.folderName(part.folder()))
        .resolve(EditionLayout.partName(part.address()));
  }

  private static void change(Path file, int position) throws IOException {
    byte[] bytes = CopyShop.read(file);
    bytes[position] ^= 1;
    Files.write(file, bytes);
  }

  @Test
  void anEmptyFolderBecomesAWholeCopy() throws Exception {
    FetchNeed need = FetchNeed.of(everything(), Progress.NONE);
    assertThat(need.missing()).hasSize(6);
    assertThat(need.neededBytes())
        .isEqualTo(front.facts().parts().stream().mapToLong(PartEntry::sealedBytes).sum());
    assertThat(need.fits()).isTrue();
    FetchResult result = fetch(everything(), new FolderSource(good));
    assertThat(result.lacking()).isEmpty();
    assertThat(result.broughtBytes()).isEqualTo(need.neededBytes());
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void chosenLessonsComeAndTheOthersAreNotHere() throws Exception {
    fetch(FetchWish.lessons(front, copy, Set.of(2)), new FolderSource(good));
    EditionCheck check = EditionCheck.everyByte(shop.open(copy), Progress.NONE);
    assertThat(check.isDamaged()).isFalse();
    assertThat(check.folders())
        .extracting(report -> report.state())
        .containsExactly(PartState.NOT_HERE, PartState.HERE, PartState.NOT_HERE);
  }

  @Test
  void whatIsWholeIsNotFetchedAgain() throws Exception {
    CopyShop.copyTree(good, copy);
    change(at(copy, film(1)), 70_000);
    FetchNeed need = FetchNeed.of(everything(), Progress.NONE);
    assertThat(need.damaged()).containsExactly(film(1));
    assertThat(need.missing()).isEmpty();
    assertThat(fetch(everything(), new FolderSource(good)).brought()).containsExactly(film(1));
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void onlyTheDamagedSegmentIsAskedFor() throws Exception {
    CopyShop.copyTree(good, copy);
    change(at(copy, film(1)), 70_000);
    FakeSource source = new FakeSource(good);
    fetch(everything(), source);
    assertThat(source.asked).containsExactly("001/" + film(1).address().hex() + " from 65536");
  }

  @Test
  void aFileThatOnlyHasTheRightLengthIsNoLie() throws Exception {
    Files.delete(at(good, film(1)));
    FetchResult result = fetch(everything(), new FolderSource(good));
    assertThat(result.lacking()).containsExactly(film(1));
    assertThat(result.trouble()).isEqualTo("a part is not there");
  }

  @Test
  void twoCopiesDamagedInDifferentPlacesMakeOneWhole() throws Exception {
    Path other = work.resolve("other");
    CopyShop.copyTree(good, other);
    CopyShop.copyTree(good, copy);
    change(at(copy, film(1)), 70_000);
    change(at(other, film(1)), 10);
    change(at(other, film(1)), 199_000);
    assertThat(fetch(everything(), new FolderSource(other)).lacking()).isEmpty();
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void theDamagedPartStaysUntilItsSubstituteIsWhole() throws Exception {
    CopyShop.copyTree(good, copy);
    Path other = work.resolve("other");
    CopyShop.copyTree(good, other);
    change(at(copy, film(1)), 70_000);
    change(at(other, film(1)), 70_001);
    byte[] before = CopyShop.read(at(copy, film(1)));
    FetchResult result = fetch(everything(), new FolderSource(other));
    assertThat(result.lacking()).containsExactly(film(1));
    assertThat(result.trouble()).contains("other bytes than the teacher signed");
    assertThat(CopyShop.read(at(copy, film(1)))).isEqualTo(before);
    fetch(everything(), new FolderSource(good));
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void aStoppedFetchGoesOnBehindTheLastProvenSegment() throws Exception {
    int[] calls = {0};
    FetchNeed need = FetchNeed.of(everything(), Progress.NONE);
    assertThatThrownBy(
            () ->
                EditionFetch.run(
                    everything(), need, List.of(new FolderSource(good)), b -> ++calls[0] < 3))
        .isInstanceOf(CancellationException.class);
    assertThat(at(copy, film(1))).doesNotExist();
    FakeSource source = new FakeSource(good);
    fetch(everything(), source);
    assertThat(source.asked).contains("001/" + film(1).address().hex() + " from 196608");
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void anUnfinishedFileIsBelievedOnlyAsFarAsItIsRight() throws Exception {
    Path unfinished = Path.of(at(copy, film(1)) + WholeFiles.UNFINISHED);
    Files.createDirectories(unfinished.getParent());
    byte[] half = Arrays.copyOf(CopyShop.read(at(good, film(1))), 150_000);
    half[66_000] ^= 1;
    Files.write(unfinished, half);
    FakeSource source = new FakeSource(good);
    fetch(everything(), source);
    assertThat(source.asked).contains("001/" + film(1).address().hex() + " from 65536");
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void filesFromADownloadsFolderAreKnownByWhatIsInThem() throws Exception {
    Path downloads = Files.createDirectory(work.resolve("Downloads"));
    int number = 0;
    try (var walk = Files.walk(good)) {
      for (Path file : walk.filter(Files::isRegularFile).sorted().toList()) {
        boolean key = file.getParent().endsWith(EditionLayout.KEYS);
        String name = key ? "chunk.bin" : numbered(file.getFileName().toString(), ++number);
        Files.copy(file, downloads.resolve(name));
      }
    }
    Files.write(downloads.resolve("holiday.jpg"), new byte[900]);
    FolderSource source = new FolderSource(downloads);
    FrontPage found = EditionFetch.frontPage(source, TrustedRoots.firstMeeting());
    assertThat(found.digest()).isEqualTo(front.digest());
    assertThat(fetch(everything(), source).lacking()).isEmpty();
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  private static String numbered(String name, int number) {
    int dot = name.lastIndexOf('.');
    String added = number % 2 == 0 ? " (" + number + ")" : "(1)";
    return dot < 0 ? name + added : name.substring(0, dot) + added + name.substring(dot);
  }

  @Test
  void nothingOfALyingPlaceGetsAName() throws Exception {
    for (FakeSource.Lie lie : FakeSource.Lie.values()) {
      Path target = work.resolve("from " + lie);
      FetchWish wish = FetchWish.all(front, target);
      FakeSource liar = new FakeSource(good, lie);
      assertThatThrownBy(() -> fetch(wish, liar))
          .as("%s", lie)
          .isInstanceOfAny(VaultException.NotHere.class, IOException.class);
      assertThat(CopyShop.files(target)).as("%s", lie).isEmpty();
      liar.onlyParts = true;
      if (lie == FakeSource.Lie.ERROR) {
        continue; // aPlaceThatFailsAgainAndAgainIsGivenUp
      }
      Files.createDirectories(target);
      FetchResult result = fetch(wish, liar);
      assertThat(result.brought()).as("%s", lie).isEmpty();
      assertThat(whole.entrySet()).as("%s", lie).containsAll(named(target).entrySet());
      assertThat(fetch(wish, liar, new FolderSource(good)).lacking()).as("%s", lie).isEmpty();
      assertThat(CopyShop.files(target)).as("%s", lie).isEqualTo(whole);
    }
  }

  private static Map<String, Octets> named(Path folder) throws IOException {
    Map<String, Octets> files = CopyShop.files(folder);
    files.keySet().removeIf(name -> name.endsWith(WholeFiles.UNFINISHED));
    return files;
  }

  @Test
  void aStrangersEditionDoesNotPassForThisOne() throws Exception {
    Path strangers = work.resolve("strangers");
    new CopyShop().pack(strangers, 1, 1, 1, 2, 3);
    assertThatThrownBy(() -> fetch(everything(), new FolderSource(strangers)))
        .isInstanceOf(VaultException.NotHere.class);
    assertThatThrownBy(() -> EditionFetch.frontPage(new FolderSource(strangers), shop.roots()))
        .isInstanceOf(VaultException.NotHere.class);
    assertThat(CopyShop.files(copy)).isEmpty();
  }

  @Test
  void aLinkInTheTargetIsReplacedAndNotFollowed() throws Exception {
    CopyShop.copyTree(good, copy);
    Path outside = Files.write(work.resolve("diary"), new byte[] {1, 2, 3});
    Files.delete(at(copy, film(2)));
    Files.createSymbolicLink(at(copy, film(2)), outside);
    fetch(everything(), new FolderSource(good));
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
    assertThat(CopyShop.read(outside)).containsExactly(1, 2, 3);
  }

  @Test
  void aFullDiskSaysSoAndKeepsWhatIsProven() throws Exception {
    FailingMedium full = new FailingMedium(FailingMedium.Way.FULL, 20);
    assertThatThrownBy(
            () ->
                EditionFetch.run(
                    everything(),
                    List.of(new FolderSource(good)),
                    new WholeFiles(full),
                    Progress.NONE))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("No space left");
    assertThat(whole.entrySet()).containsAll(named(copy).entrySet());
    fetch(everything(), new FolderSource(good));
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void aPlaceThatFailsAgainAndAgainIsGivenUp() {
    FakeSource broken = new FakeSource(good, FakeSource.Lie.ERROR);
    broken.onlyParts = true;
    assertThatThrownBy(() -> fetch(everything(), broken))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("broke off");
  }

  @Test
  void placesThatFailAreCountedEachForItself() throws Exception {
    List<CopySource> places = new ArrayList<>();
    List<FakeSource> broken = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      broken.add(new FakeSource(good, FakeSource.Lie.ERROR));
    }
    places.addAll(broken);
    places.add(new FolderSource(good));
    assertThat(fetch(everything(), places.toArray(CopySource[]::new)).lacking()).isEmpty();
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
    assertThat(broken).allSatisfy(place -> assertThat(place.asked).hasSize(4));
  }

  @Test
  void whenEveryPlaceHasFailedAgainAndAgainFetchingEnds() {
    FakeSource first = new FakeSource(good, FakeSource.Lie.ERROR);
    FakeSource second = new FakeSource(good, FakeSource.Lie.ERROR);
    first.onlyParts = true;
    second.onlyParts = true;
    assertThatThrownBy(() -> fetch(everything(), first, second))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("broke off");
  }

  /** A folder that may lie, and remembers what it was asked. */
  static final class FakeSource implements CopySource {
    enum Lie {
      SHORT,
      OTHER_PART,
      ERROR_PAGE,
      ENDLESS,
      ERROR
    }

    final List<String> asked = new ArrayList<>();
    boolean onlyParts;
    private final Path folder;
    private final Lie lie;
    private final boolean honest;

    FakeSource(Path folder) {
      this.folder = folder;
      this.lie = Lie.SHORT;
      this.honest = true;
    }

    FakeSource(Path folder, Lie lie) {
      this.folder = folder;
      this.lie = lie;
      this.honest = false;
    }

    @Override
    public String label() {
      return "https://mirror.invalid/";
    }

    @Override
    public List<Candidate> find(String path, OptionalLong exactBytes) {
      return List.of(new FakeCandidate(path));
    }

    private InputStream lie(String path, long position) throws IOException {
      byte[] bytes = CopyShop.read(folder.resolve(path));
      return switch (lie) {
        case SHORT -> new ByteArrayInputStream(bytes, 0, Math.max(0, bytes.length / 9));
        case OTHER_PART -> new ByteArrayInputStream(new byte[bytes.length], 0, bytes.length);
        case ERROR_PAGE ->
            new ByteArrayInputStream(
                "<!doctype html><title>404</title>".getBytes(StandardCharsets.US_ASCII));
        case ENDLESS -> new Endless();
        case ERROR -> throw new IOException("the connection broke off at " + position);
      };
    }

    private final class FakeCandidate implements Candidate {
      private final String path;

      FakeCandidate(String path) {
        this.path = path;
      }

      @Override
      public InputStream from(long position) throws IOException {
        asked.add(path + " from " + position);
        boolean part = path.matches("[0-9]{3}/.*");
        if (!honest && (part || !onlyParts)) {
          return lie(path, position);
        }
        byte[] bytes = CopyShop.read(folder.resolve(path));
        return new ByteArrayInputStream(bytes, (int) position, bytes.length - (int) position);
      }

      @Override
      public boolean isNear() {
        return false;
      }
    }

    private static final class Endless extends InputStream {
      @Override
      public int read() {
        return 7;
      }
    }
  }
}
