package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

class CorrectionTest {

  @TempDir Path folder;
  private SampleEdition sample;
  private CorrectionNote note;
  private Correction correction;

  @BeforeEach
  void pack() throws Exception {
    sample = SampleEdition.pack(folder);
    note = page(4, "Hold for 8 minutes, not 18.");
    correction = signed(note);
  }

  private CorrectionNote page(long number, String text) {
    Optional<AssetId> handout = Optional.of(sample.first.assets().get(2).id());
    return new CorrectionNote(
        sample.first.id(), CorrectionPin.PAGE, number, handout, text, LocalDate.of(2026, 2, 1));
  }

  private Correction signed(CorrectionNote words) throws VaultException {
    byte[] sealed = Correction.seal(words, sample.id, sample.key, SampleEdition.RANDOM);
    return Correction.sign(sealed, sample.id, sample.statement, sample.desk);
  }

  private Path shelve(Correction shelved, String name) throws Exception {
    Path shelf = Files.createDirectories(folder.resolve(EditionLayout.CORRECTIONS));
    return Files.write(shelf.resolve(name), shelved.toBytes());
  }

  @Test
  void aBuyerReadsWhatTheTeacherWrote() throws Exception {
    Correction read = Correction.verify(correction.toBytes(), sample.roots());
    assertThat(read.open(sample.key)).isEqualTo(note);
    assertThat(read.edition()).isEqualTo(sample.id);
    assertThat(read.digest()).isEqualTo(correction.digest());
    assertThat(read.statement().terms()).isEqualTo(sample.statement.terms());
  }

  @Test
  void aTimeIsPinnedWithoutAFile() throws Exception {
    var atTime =
        new CorrectionNote(
            sample.second.id(),
            CorrectionPin.TIME,
            61_000,
            Optional.empty(),
            "Stir first.",
            LocalDate.of(2026, 2, 1));
    assertThat(signed(atTime).open(sample.key)).isEqualTo(atTime);
  }

  @Test
  void theWordsAreNotInTheMessage() {
    String raw = new String(correction.toBytes(), java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(raw).doesNotContain("minutes");
  }

  @Test
  void theSameWordsSealedAgainShareNothing() throws Exception {
    Correction again = signed(note);
    assertThat(again.digest()).isNotEqualTo(correction.digest());
    assertThat(again.fileName()).isNotEqualTo(correction.fileName());
  }

  @Test
  void theKeyOfAnotherEditionOpensNothing() {
    var other = sample.master.editionKey(EditionId.random(SampleEdition.RANDOM));
    assertThatThrownBy(() -> correction.open(other)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aFellowBuyerCannotWriteOne() {
    byte[] message = correction.toBytes();
    SigningKey stranger = SigningKey.fromSeed(SecretBytes.random(SampleEdition.RANDOM, 32));
    assertThatThrownBy(
            () ->
                Correction.sign(
                    Correction.seal(note, sample.id, sample.key, SampleEdition.RANDOM),
                    sample.id,
                    sample.statement,
                    stranger))
        .isInstanceOf(VaultException.Tampered.class);
    message[message.length - 70] ^= 1;
    assertThatThrownBy(() -> Correction.verify(message, sample.roots()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aFrontPageIsNoCorrection() {
    assertThatThrownBy(() -> Correction.verify(sample.frontPage.toBytes(), sample.roots()))
        .isInstanceOf(VaultException.class);
  }

  @Test
  void aSignedPartOfAnotherKindIsRefused() throws Exception {
    byte[] film = sample.sealContents(new byte[10]);
    Correction odd = Correction.sign(film, sample.id, sample.statement, sample.desk);
    assertThatThrownBy(() -> odd.open(sample.key)).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void signedNonsenseIsRefused() {
    byte[] message = SignedMessage.sign(MessageType.CORRECTION, new byte[] {1}, sample.desk);
    assertThatThrownBy(() -> Correction.verify(message, sample.roots()))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void theShelfShowsWhatIsOfThisEditionAndNothingElse(@TempDir Path other) throws Exception {
    shelve(correction, correction.fileName());
    shelve(signed(page(5, "Under a wrong name.")), "0".repeat(64));
    shelve(correction, "readme.txt");
    SampleEdition foreign = SampleEdition.pack(other);
    byte[] sealed = Correction.seal(note, foreign.id, foreign.key, SampleEdition.RANDOM);
    Correction alien = Correction.sign(sealed, foreign.id, foreign.statement, foreign.desk);
    shelve(alien, alien.fileName());
    var shown = CorrectionShelf.of(sample.open());
    assertThat(shown).extracting(Correction::digest).containsExactly(correction.digest());
  }

  @Test
  void theSameNoteInTwoFoldersIsOne(@TempDir Path other) throws Exception {
    shelve(correction, correction.fileName());
    Path shelf = Files.createDirectories(other.resolve(EditionLayout.CORRECTIONS));
    Files.write(shelf.resolve(correction.fileName()), correction.toBytes());
    assertThat(CorrectionShelf.of(sample.open().alsoIn(java.util.List.of(other)))).hasSize(1);
  }

  @Test
  void aShelfThatIsALinkIsNotEntered(@TempDir Path other) throws Exception {
    Path shelf = Files.createDirectories(other.resolve("shelf"));
    Files.write(shelf.resolve(correction.fileName()), correction.toBytes());
    Files.createSymbolicLink(folder.resolve(EditionLayout.CORRECTIONS), shelf);
    assertThat(CorrectionShelf.of(sample.open())).isEmpty();
  }

  @Test
  void impossibleNotesAreRefused() {
    LocalDate day = LocalDate.of(2026, 2, 1);
    LessonId lesson = sample.first.id();
    Optional<AssetId> file = note.asset();
    assertThatThrownBy(() -> page(0, "x")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> page(10_000, "x")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> page(1, " \n")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new CorrectionNote(lesson, CorrectionPin.TIME, 0, file, "x", day))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () -> new CorrectionNote(lesson, CorrectionPin.PAGE, 1, Optional.empty(), "x", day))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(CorrectionPin.ofCode(2)).isEmpty();
  }
}
