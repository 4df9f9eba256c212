package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.keeping.BookKeeping;

/** Nobody who is entitled is shut out by a keys file written again; a blocked license is. */
class KeysIssueTest {
  @TempDir Path folder;
  private TestDesk desk;
  private Path edition;
  private LicenseId before;

  @BeforeEach
  void packAfterOneSale() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    before = sell("ida@studio.example");
    edition =
        new PackRun(desk, folder.resolve("out")).pack(TinyCourse.in(folder.resolve("c"))).folder();
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  private LicenseId sell(String email) throws Exception {
    return new Licensing(desk.book(), desk.keys(), desk.home().statement(), new SecureRandom())
        .sell(new Order("Ida", email, List.of("brush"), new Allowance(1, 2)))
        .id();
  }

  private KeysIssue.Written write() throws Exception {
    return new KeysIssue(desk.home(), desk.keys(), new SecureRandom()).write(edition);
  }

  private KeysFile keysFile() throws Exception {
    TrustedRoots shop = TrustedRoots.pinned(desk.home().statement().root());
    FrontPage front = EditionFolder.open(edition, shop).frontPage();
    return KeysFile.open(edition, front.edition(), front.digest(), shop);
  }

  private boolean opens(LicenseId license) throws Exception {
    LicenseKey key = desk.keys().master(0).licenseKey(license, 0);
    try (PlaceKeys keys =
        new PlaceKeys(
            key,
            desk.keys()
                .master(0)
                .placeSecret(license, org.lehrcase.core.id.PlaceId.ofHex("aa".repeat(8))))) {
      return keysFile().find(keys).isPresent();
    }
  }

  @Test
  void aLaterBuyerIsInTheNextIssueAndTheEarlierOneStays() throws Exception {
    LicenseId after = sell("bo@studio.example");
    assertThat(opens(after)).isFalse();
    assertThat(write()).isEqualTo(new KeysIssue.Written(2, 2));
    assertThat(opens(after)).isTrue();
    assertThat(opens(before)).isTrue();
    keysFile().check();
    assertThat(write().issue()).isEqualTo(3);
  }

  @Test
  void aBlockedLicenseIsNotInTheNextIssue() throws Exception {
    new BookKeeping(desk.book()).block(before);
    assertThat(write().licenses()).isZero();
    assertThat(opens(before)).isFalse();
  }

  @Test
  void aTornKeysFileIsMended() throws Exception {
    java.nio.file.Files.delete(edition.resolve(KeysFile.INDEX_NAME));
    assertThat(write().issue()).isEqualTo(2);
    assertThat(opens(before)).isTrue();
  }

  /** Every licensed reader, at every step at which a write can be cut, and after the next try. */
  @Test
  void aReaderFindsOneWholeIssueWhereverTheWritingIsCut() throws Exception {
    int steps = 0;
    for (boolean cut = true; cut; steps++) {
      LicenseId after = sell("buyer" + steps + "@studio.example");
      cut = cutAt(steps);
      assertThat(readers(before)).as("the earlier buyer, cut at step %d", steps).isTrue();
      assertThat(readers(after) || cut).as("the later buyer when nothing was cut").isTrue();
      int issued = write().issue();
      assertThat(opens(before)).isTrue();
      assertThat(opens(after)).isTrue();
      assertThat(keysFile().index().about().serial()).isEqualTo(issued);
      assertThat(edition.resolve("next")).doesNotExist();
    }
    assertThat(steps).as("steps that were cut").isGreaterThan(5);
  }

  private boolean cutAt(int last) throws Exception {
    int[] left = {last};
    KeysRoom.Watch cutting =
        step -> {
          if (left[0]-- == 0) {
            throw new java.io.IOException("cut before " + step);
          }
        };
    try {
      new KeysIssue(desk.home(), desk.keys(), new SecureRandom(), cutting).write(edition);
      return false;
    } catch (java.io.IOException e) {
      return true;
    }
  }

  /** Reads as a bench does: the folder's own files first, then those in next. */
  private boolean readers(LicenseId license) throws Exception {
    TrustedRoots shop = TrustedRoots.pinned(desk.home().statement().root());
    EditionFolder opened = EditionFolder.open(edition, shop);
    FrontPage front = opened.frontPage();
    LicenseKey key = desk.keys().master(0).licenseKey(license, 0);
    try (PlaceKeys keys =
        new PlaceKeys(
            key,
            desk.keys()
                .master(0)
                .placeSecret(license, org.lehrcase.core.id.PlaceId.ofHex("aa".repeat(8))))) {
      for (Path root : opened.roots()) {
        try {
          return KeysFile.open(root, front.edition(), front.digest(), shop).find(keys).isPresent();
        } catch (VaultException e) {
          continue; // torn, as a bench sees it
        }
      }
      return false;
    }
  }

  @Test
  void anEditionOfAnotherDeskIsRefused() throws Exception {
    try (TestDesk other = TestDesk.fresh(folder.resolve("other"))) {
      KeysIssue issue = new KeysIssue(other.home(), other.keys(), new SecureRandom());
      assertThatThrownBy(() -> issue.write(edition))
          .isInstanceOfAny(RefusedException.class, VaultException.class);
    }
    assertThat(Optional.of(keysFile().index().about().serial())).contains(1);
  }
}
