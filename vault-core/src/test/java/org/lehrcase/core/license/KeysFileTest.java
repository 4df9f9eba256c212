package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.KeyRow;

class KeysFileTest {
  @TempDir private Path folder;
  private CountedShop shop;
  private Octets frontPage;

  @BeforeEach
  void open() throws VaultException {
    shop = new CountedShop(12);
    frontPage = Octets.random(shop.random, 16);
  }

  /** Writes a keys file with this license at a generation, among others. */
  private KeysFileDraft draft(int generation, int others) {
    KeysFileDraft draft = KeysFileDraft.start(shop.edition, shop.random);
    draft.add(shop.master.licenseKey(shop.license, generation), shop.editionKey());
    for (int i = 0; i < others; i++) {
      LicenseId other = LicenseId.random(shop.random);
      draft.add(shop.master.licenseKey(other, 0), shop.editionKey());
    }
    return draft;
  }

  private KeysFile written(KeysFileDraft draft) throws IOException, VaultException {
    draft.write(folder, frontPage, 1, shop.signer);
    return read();
  }

  private KeysFile read() throws IOException, VaultException {
    return KeysFile.open(folder, shop.edition, frontPage, shop.roots());
  }

  private boolean isTheKey(OpenedRow opened) {
    return opened.editionKey().check(shop.edition).equals(shop.editionKey().check(shop.edition));
  }

  private static byte[] bytes(Path file) throws IOException, VaultException {
    return FoundFile.read(file, 1 << 21);
  }

  @ParameterizedTest(name = "row at {0}, place at {1}: {2}")
  @CsvSource({
    "0, 0, true",
    "0, 1, true",
    "0, 63, true",
    "5, 5, true",
    "5, 4, false",
    "5, 0, false",
    "5, 6, true",
    "63, 63, true",
    "63, 62, false",
  })
  void aPlaceFindsItsRowThroughAllEarlierGenerations(int row, int place, boolean found)
      throws Exception {
    KeysFile file = written(draft(row, 20));
    Optional<OpenedRow> opened = file.find(shop.keys(place));
    assertThat(opened.isPresent()).isEqualTo(found);
    opened.ifPresent(o -> assertThat(isTheKey(o)).isTrue());
    opened.ifPresent(o -> assertThat(o.rekeyed()).isFalse());
  }

  @Tag("slow")
  @ParameterizedTest(name = "{0} licenses give {1} rows")
  @CsvSource({"1, 64", "64, 64", "65, 128", "129, 256", "1025, 2048"})
  void dummyRowsFillUpToAPowerOfTwo(int licenses, int rows) throws Exception {
    KeysFile file = written(draft(0, licenses - 1));
    assertThat(file.index().rowCount()).isEqualTo(rows);
    assertThat(file.index().chunkCount()).isEqualTo((rows + 1023) / 1024);
    long size = 0;
    for (int chunk = 0; chunk < file.index().chunkCount(); chunk++) {
      size += Files.size(KeysFile.chunkPath(folder, chunk));
    }
    assertThat(size).isEqualTo(48L * rows);
    file.check();
    assertThat(file.find(shop.keys(0))).isPresent();
  }

  @Tag("slow")
  @Test
  void rowsAreSortedByTagAcrossChunks() throws Exception {
    written(draft(0, 1500));
    Octets before = Octets.of(new byte[8]);
    for (int chunk = 0; chunk < 2; chunk++) {
      byte[] rows = bytes(KeysFile.chunkPath(folder, chunk));
      for (int at = 0; at < rows.length; at += KeyRow.BYTES) {
        Octets tag = Octets.of(Arrays.copyOfRange(rows, at, at + 8));
        assertThat(tag).isGreaterThan(before);
        before = tag;
      }
    }
  }

  @ParameterizedTest(name = "place at {0}, license now at {1}")
  @CsvSource({"0, 1", "0, 63", "5, 6", "62, 63", "5, 9"})
  void aSurvivingPlaceFindsTheNewerKeyThroughItsRekeyRow(int own, int now) throws Exception {
    KeysFileDraft draft = draft(now, 10);
    draft.addRekey(
        shop.master.placeSecret(shop.license, shop.place),
        shop.master.licenseKey(shop.license, now));
    OpenedRow opened = written(draft).find(shop.keys(own)).orElseThrow();
    assertThat(isTheKey(opened)).isTrue();
    assertThat(opened.rekeyed()).isTrue();
    assertThat(opened.placeKeys().licenseKey().generation()).isEqualTo(now);
    assertThat(opened.placeKeys().secret().sameAs(shop.keys(now).secret())).isTrue();
  }

  @Test
  void aLostPlaceFindsNoRekeyRow() throws Exception {
    PlaceId lost = PlaceId.random(shop.random);
    KeysFileDraft draft = draft(1, 10);
    draft.addRekey(
        shop.master.placeSecret(shop.license, shop.place), shop.master.licenseKey(shop.license, 1));
    assertThat(written(draft).find(shop.keys(lost, 0))).isEmpty();
  }

  @Test
  void aRekeyRowOfAnotherLicensesKeyIsNotFollowed() throws Exception {
    KeysFileDraft draft = KeysFileDraft.start(shop.edition, shop.random);
    LicenseId other = LicenseId.random(shop.random);
    draft.add(shop.master.licenseKey(other, 1), shop.editionKey());
    draft.addRekey(
        shop.master.placeSecret(shop.license, shop.place), shop.master.licenseKey(other, 1));
    assertThat(written(draft).find(shop.keys(0))).isEmpty();
  }

  @Test
  void twoIssuesShareNoRow() throws Exception {
    written(draft(0, 0));
    byte[] first = bytes(KeysFile.chunkPath(folder, 0));
    written(draft(0, 0));
    byte[] second = bytes(KeysFile.chunkPath(folder, 0));
    for (int at = 0; at < first.length; at += KeyRow.BYTES) {
      for (int other = 0; other < second.length; other += KeyRow.BYTES) {
        assertThat(Arrays.compare(first, at, at + 8, second, other, other + 8)).isNotZero();
      }
    }
  }

  @Test
  void theSameLicenseTwiceIsAMistakeOfTheProgram() {
    KeysFileDraft draft = draft(0, 0);
    assertThatThrownBy(() -> draft.add(shop.master.licenseKey(shop.license, 0), shop.editionKey()))
        .isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aKeysFileOfAnotherEditionOrFrontPageIsRefused() throws Exception {
    written(draft(0, 0));
    EditionId other = EditionId.random(shop.random);
    assertThatThrownBy(() -> KeysFile.open(folder, other, frontPage, shop.roots()))
        .isInstanceOf(VaultException.Tampered.class);
    Octets page = Octets.random(shop.random, 16);
    assertThatThrownBy(() -> KeysFile.open(folder, shop.edition, page, shop.roots()))
        .isInstanceOf(VaultException.Tampered.class);
    TrustedRoots stranger = new CountedShop(13).roots();
    assertThatThrownBy(() -> KeysFile.open(folder, shop.edition, frontPage, stranger))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aChangedChunkIsDamagedAndAMissingOneIsNotHere() throws Exception {
    KeysFile file = written(draft(0, 0));
    Path chunk = KeysFile.chunkPath(folder, 0);
    byte[] rows = bytes(chunk);
    rows[100] ^= 1;
    Files.write(chunk, rows);
    assertThatThrownBy(() -> file.find(shop.keys(0))).isInstanceOf(VaultException.Tampered.class);
    Files.write(chunk, Arrays.copyOf(rows, rows.length - 48));
    assertThatThrownBy(() -> file.find(shop.keys(0))).isInstanceOf(VaultException.Truncated.class);
    Files.write(chunk, Arrays.copyOf(rows, rows.length + 1));
    assertThatThrownBy(() -> file.find(shop.keys(0))).isInstanceOf(VaultException.TooLarge.class);
    Files.delete(chunk);
    assertThatThrownBy(() -> file.find(shop.keys(0))).isInstanceOf(VaultException.NotHere.class);
    Files.createDirectory(chunk);
    assertThatThrownBy(() -> file.find(shop.keys(0))).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aLinkIsNotFollowed() throws Exception {
    written(draft(0, 0));
    Path index = folder.resolve(KeysFile.INDEX_NAME);
    Path elsewhere = folder.resolve("elsewhere");
    Files.move(index, elsewhere);
    Files.createSymbolicLink(index, elsewhere);
    assertThatThrownBy(this::read).isInstanceOf(VaultException.Malformed.class);
    Files.delete(index);
    assertThatThrownBy(this::read).isInstanceOf(VaultException.NotHere.class);
  }

  @ParameterizedTest(name = "{0} bytes")
  @ValueSource(ints = {0, 1, 6, 72, 400})
  void anIndexThatWasCutIsRefused(int length) throws Exception {
    written(draft(0, 0));
    Path index = folder.resolve(KeysFile.INDEX_NAME);
    Files.write(index, Arrays.copyOf(bytes(index), length));
    assertThatThrownBy(this::read).isInstanceOf(VaultException.class);
  }

  @Test
  void anEndlessIndexIsRefusedWithoutBeingReadWhole() throws Exception {
    Files.write(folder.resolve(KeysFile.INDEX_NAME), new byte[(1 << 20) + 1]);
    assertThatThrownBy(this::read).isInstanceOf(VaultException.TooLarge.class);
  }

  @Tag("slow")
  @Test
  void nothingHalfWrittenStaysBeside() throws Exception {
    written(draft(0, 1500));
    try (var names = Files.walk(folder)) {
      assertThat(names.map(p -> p.getFileName().toString()).filter(n -> n.endsWith(".part")))
          .isEmpty();
    }
  }
}
