package org.lehrcase.core.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.FailingMedium;
import org.lehrcase.core.file.FailingMedium.Way;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

class EditionMergeTest {
  @TempDir Path work;
  private CopyShop shop;
  private FrontPage older;
  private FrontPage newer;
  private Path old;
  private Path changes;
  private Map<String, Octets> before;
  private Map<String, Octets> after;

  /** Edition 2 changes the film of lesson 2 and adds lesson 3; its keys file has fewer chunks. */
  @BeforeEach
  void pack() throws Exception {
    shop = new CopyShop();
    old = work.resolve("old");
    older = shop.pack(old, 1, 1500, 1, 2);
    before = CopyShop.files(old);
    changes = work.resolve("changes");
    newer = shop.pack(changes, 2, 3, 1, 4, 5);
    after = CopyShop.files(changes);
    for (PartEntry part : newer.facts().parts()) {
      if (older.part(part.address()).isPresent()) {
        Path folder = changes.resolve(EditionLayout.folderName(part.folder()));
        Files.delete(folder.resolve(EditionLayout.partName(part.address())));
        Files.deleteIfExists(folder.resolve(EditionLayout.digestsName(part.address())));
      }
    }
  }

  private EditionMerge merge(Path folder, WholeFiles files) throws Exception {
    return EditionMerge.of(shop.open(changes), shop.open(folder), files);
  }

  private Path oldCopy(String name) throws IOException {
    Path copy = work.resolve(name);
    CopyShop.copyTree(old, copy);
    return copy;
  }

  @Test
  void theOlderEditionBecomesTheNewerOne() throws Exception {
    MergeNeed need = merge(old, WholeFiles.ON_SYSTEM).need();
    assertThat(need.addedBytes()).isGreaterThan(400_000);
    assertThat(need.keptBytes()).isGreaterThan(200_000).isLessThan(210_000);
    assertThat(need.goingBytes()).isGreaterThan(200_000);
    assertThat(need.fits()).isTrue();
    EditionCheck check = merge(old, WholeFiles.ON_SYSTEM).run(Progress.NONE);
    assertThat(check.isWhole()).isTrue();
    assertThat(CopyShop.files(old)).isEqualTo(after);
    assertThat(old.resolve(EditionLayout.NEXT)).doesNotExist();
    assertThat(shop.open(old).frontPage().digest()).isEqualTo(newer.digest());
  }

  @ParameterizedTest
  @EnumSource(Way.class)
  void cutAtAnyStepTheFolderOpensAsOneOfTheTwoAndGoesOn(Way way) throws Exception {
    FailingMedium sound = new FailingMedium(way, 0);
    merge(oldCopy("sound"), new WholeFiles(sound)).run(Progress.NONE);
    assertThat(sound.steps()).isGreaterThan(50);
    int asOld = 0;
    for (int step = 1; step <= sound.steps(); step++) {
      Path folder = oldCopy("cut " + step);
      var broken = new FailingMedium(way, step);
      try {
        merge(folder, new WholeFiles(broken)).run(Progress.NONE);
      } catch (IOException | FailingMedium.PowerGone e) {
        assertThat(broken.failed()).isTrue();
      }
      boolean isOld = opensWhole(folder, "step " + step).equals(older.digest());
      asOld += isOld ? 1 : 0;
      goOn(folder);
      assertThat(CopyShop.files(folder)).as("step %d", step).isEqualTo(after);
    }
    assertThat(asOld).isBetween(10, sound.steps() - 10);
  }

  /** Opens the folder as any reader does, reads every byte, and says which edition it is. */
  private Octets opensWhole(Path folder, String told) throws Exception {
    EditionFolder opened = shop.open(folder);
    EditionCheck check = EditionCheck.everyByte(opened, Progress.NONE);
    assertThat(check.isWhole()).as(told).isTrue();
    assertThat(check.keys()).as(told).isEqualTo(PartState.HERE);
    return opened.frontPage().digest();
  }

  private void goOn(Path folder) throws Exception {
    EditionMerge.finish(folder, shop.roots());
    if (shop.open(folder).frontPage().digest().equals(older.digest())) {
      merge(folder, WholeFiles.ON_SYSTEM).run(Progress.NONE);
    }
  }

  @Test
  void aMergeThatIsCutWhileItIsBroughtToItsEndGoesOnAgain() throws Exception {
    FailingMedium sound = new FailingMedium(Way.POWER_GONE, 0);
    merge(oldCopy("sound"), new WholeFiles(sound)).run(Progress.NONE);
    for (int step = sound.steps() - 25; step < sound.steps(); step++) {
      Path folder = oldCopy("cut " + step);
      cut(folder, step);
      for (int again = 1; again < 7; again++) {
        try {
          var broken = new WholeFiles(new FailingMedium(Way.POWER_GONE, again));
          EditionMerge.finish(folder, shop.roots(), broken);
        } catch (FailingMedium.PowerGone e) {
          opensWhole(folder, "step " + step + ", again " + again);
        }
      }
      goOn(folder);
      assertThat(CopyShop.files(folder)).as("step %d", step).isEqualTo(after);
    }
  }

  private void cut(Path folder, int step) throws Exception {
    try {
      merge(folder, new WholeFiles(new FailingMedium(Way.POWER_GONE, step))).run(Progress.NONE);
    } catch (FailingMedium.PowerGone e) {
      opensWhole(folder, "step " + step);
    }
  }

  @Test
  void aFrontPageLostInTheMomentOfChangeComesBack() throws Exception {
    int steps = 1;
    Path ready = old.resolve(EditionLayout.NEXT).resolve(EditionLayout.FRONT_PAGE);
    while (!Files.exists(ready)) {
      cut(old, steps++);
    }
    Files.delete(old.resolve(EditionLayout.FRONT_PAGE)); // as a stick's file system may
    assertThat(EditionMerge.finish(old, shop.roots())).isTrue();
    assertThat(CopyShop.files(old)).isEqualTo(after);
    assertThat(EditionMerge.finish(old, shop.roots())).isFalse();
  }

  /** Cuts the merge just behind the commit and returns the folder of what lies ready. */
  private Path readyToFinish() throws Exception {
    Path room = old.resolve(EditionLayout.NEXT);
    for (int step = 1; !Files.exists(room.resolve(EditionLayout.FRONT_PAGE)); step++) {
      cut(old, step);
    }
    return room;
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void nothingBehindALinkIsRemoved(boolean inTheRoom) throws Exception {
    Path room = readyToFinish();
    Path pocket = Files.createDirectory(work.resolve("pocket"));
    Path own = Files.writeString(pocket.resolve("9999"), "a person's own file");
    Path keys = (inTheRoom ? room : old).resolve(EditionLayout.KEYS);
    Files.move(keys, work.resolve("away"));
    Files.createSymbolicLink(keys, pocket);
    try {
      EditionMerge.finish(old, shop.roots());
    } catch (IOException e) {
      assertThat(inTheRoom).isFalse(); // a link where the folder of the keys file must be
    }
    assertThat(own).hasContent("a person's own file");
    assertThat(shop.open(old).frontPage().digest()).isEqualTo(newer.digest());
  }

  @Test
  void whatLiesReadyAndIsNotTheNextEditionSaysNothing() throws Exception {
    Path room = old.resolve(EditionLayout.NEXT);
    new CopyShop().pack(room, 2, 1, 1);
    assertThat(EditionMerge.finish(old, TrustedRoots.firstMeeting())).isFalse();
    Path third = work.resolve("third");
    shop.pack(third, 3, 1, 7);
    CopyShop.copyTree(changes, third.resolve(EditionLayout.NEXT)); // edition 2 for edition 3
    assertThat(EditionMerge.finish(third, shop.roots())).isFalse();
    assertThat(CopyShop.files(old).entrySet()).containsAll(before.entrySet());
    assertThat(opensWhole(old, "a stranger's page lies ready")).isEqualTo(older.digest());
  }

  @Test
  void nothingForeignInTheFolderOfAMergeIsRemoved() throws Exception {
    Path room = Files.createDirectories(old.resolve(EditionLayout.NEXT));
    Path going = old.resolve("002");
    String film = EditionLayout.partName(older.parts(2).get(0).address());
    List<Path> own =
        List.of(
            room.resolve("holiday.jpg"),
            Files.createDirectory(room.resolve("letters")).resolve("to Änne.txt"),
            Files.createDirectory(room.resolve(EditionLayout.KEYS)).resolve("house keys.txt"),
            going.resolve(film + ".txt"),
            going.resolve("notes.txt"));
    for (Path file : own) {
      Files.writeString(file, "a person's own file");
    }
    merge(old, WholeFiles.ON_SYSTEM).run(Progress.NONE);
    assertThat(own).allSatisfy(file -> assertThat(file).hasContent("a person's own file"));
    assertThat(shop.open(old).frontPage().digest()).isEqualTo(newer.digest());
    assertThat(EditionMerge.finish(old, shop.roots())).isFalse();
    assertThat(opensWhole(old, "with foreign files")).isEqualTo(newer.digest());
    for (Path file : own) {
      Files.delete(file);
    }
    Files.delete(room.resolve("letters"));
    Files.delete(room.resolve(EditionLayout.KEYS));
    Files.delete(room);
    assertThat(CopyShop.files(old)).isEqualTo(after);
  }

  @Test
  void anEditionThatAPersonPutIntoThatFolderIsNotTakenForAMerge() throws Exception {
    Path own = old.resolve(EditionLayout.NEXT);
    CopyShop.copyTree(changes, own);
    Map<String, Octets> all = CopyShop.files(old);
    assertThat(EditionMerge.finish(old, shop.roots())).isFalse();
    assertThatThrownBy(() -> merge(old, WholeFiles.ON_SYSTEM).run(Progress.NONE))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("move it elsewhere");
    assertThat(CopyShop.files(old).entrySet()).containsAll(all.entrySet());
    assertThat(shop.open(old).frontPage().digest()).isEqualTo(older.digest());
  }

  @Test
  void aStopLeavesTheOlderEdition() throws Exception {
    int[] calls = {0};
    assertThatThrownBy(() -> merge(old, WholeFiles.ON_SYSTEM).run(bytes -> ++calls[0] < 7))
        .isInstanceOf(CancellationException.class);
    assertThat(opensWhole(old, "stopped")).isEqualTo(older.digest());
    assertThat(CopyShop.files(old).entrySet()).containsAll(before.entrySet());
  }

  @Test
  void damagedChangesLeaveTheOlderEdition() throws Exception {
    PartEntry film = newer.parts(2).get(0);
    Path file = changes.resolve("002").resolve(EditionLayout.partName(film.address()));
    byte[] bytes = CopyShop.read(file);
    bytes[100_000] ^= 1;
    Files.write(file, bytes);
    assertThatThrownBy(() -> merge(old, WholeFiles.ON_SYSTEM).run(Progress.NONE))
        .isInstanceOf(VaultException.NotHere.class)
        .hasMessageContaining("the older one stays");
    assertThat(opensWhole(old, "refused")).isEqualTo(older.digest());
  }

  @Test
  void damageInAnUnchangedPartStopsTheMerge() throws Exception {
    PartEntry film = older.parts(1).get(0);
    Path file = old.resolve("001").resolve(EditionLayout.partName(film.address()));
    byte[] bytes = CopyShop.read(file);
    bytes[100_000] ^= 1;
    Files.write(file, bytes);
    assertThatThrownBy(() -> merge(old, WholeFiles.ON_SYSTEM).run(Progress.NONE))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(shop.open(old).frontPage().digest()).isEqualTo(older.digest());
  }

  @Test
  void anOlderEditionThatWasNotAllHereMayBeMergedToo() throws Exception {
    PartEntry notes = older.parts(1).get(1);
    Files.delete(old.resolve("001").resolve(EditionLayout.partName(notes.address())));
    EditionCheck check = merge(old, WholeFiles.ON_SYSTEM).run(Progress.NONE);
    assertThat(check.isDamaged()).isFalse();
    assertThat(shop.open(old).frontPage().digest()).isEqualTo(newer.digest());
  }

  @Test
  void onlyANewerEditionOfTheSameShopIsMerged() throws Exception {
    EditionFolder first = shop.open(old);
    EditionFolder second = shop.open(changes);
    assertThatThrownBy(() -> EditionMerge.of(first, second))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("not newer");
    CopyShop stranger = new CopyShop();
    stranger.pack(work.resolve("stranger"), 9, 1, 1);
    EditionFolder third = stranger.open(work.resolve("stranger"));
    assertThatThrownBy(() -> EditionMerge.of(third, first))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("different series or teachers");
  }
}
