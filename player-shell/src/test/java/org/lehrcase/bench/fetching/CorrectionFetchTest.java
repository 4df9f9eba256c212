package org.lehrcase.bench.fetching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.CopySource;
import org.lehrcase.core.copies.CorrectionFetch;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionList;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.license.TrustedRoots;

/** Corrections from a plain web server, which cannot be listed, honest and not. */
class CorrectionFetchTest {
  @TempDir Path work;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private Path web;
  private Path copy;
  private FrontPage front;

  @BeforeEach
  void pack() throws Exception {
    shop = new TinyShop();
    web = work.resolve("web");
    edition = shop.pack(web);
    copy = work.resolve("copy");
    TinyBench.copy(web, copy);
    front = EditionFolder.open(copy, TrustedRoots.firstMeeting()).frontPage();
  }

  private Correction correction(TinyShop by, String text) throws Exception {
    CorrectionNote note =
        new CorrectionNote(
            edition.second().id(),
            CorrectionPin.TIME,
            61_000,
            Optional.empty(),
            text,
            LocalDate.of(2026, 3, 1));
    return by.correct(edition.id(), note);
  }

  private Path publish(Correction correction, String name) throws Exception {
    Path shelf = Files.createDirectories(web.resolve(EditionLayout.CORRECTIONS));
    Files.write(shelf.resolve(name), correction.toBytes());
    return shelf;
  }

  private int fetch() throws Exception {
    try (Mirror mirror = new Mirror(web, Mirror.Manner.HONEST)) {
      CopySource source = new WebSource(mirror.address(), WebSource.Limits.USUAL);
      return new CorrectionFetch(front, copy).from(List.of(source));
    }
  }

  private List<Correction> here() throws Exception {
    return CorrectionShelf.of(EditionFolder.open(copy, TrustedRoots.firstMeeting()));
  }

  @Test
  void whatTheListNamesComesOnce() throws Exception {
    Correction first = correction(shop, "Stir it.");
    Correction second = correction(shop, "Let it dry overnight.");
    publish(first, first.fileName());
    CorrectionList.write(publish(second, second.fileName()));
    assertThat(fetch()).isEqualTo(2);
    assertThat(here())
        .extracting(Correction::digest)
        .containsExactlyInAnyOrder(first.digest(), second.digest());
    assertThat(fetch()).isZero();
  }

  @Test
  void aServerWithoutAListHasNone() throws Exception {
    Correction unlisted = correction(shop, "Stir it.");
    publish(unlisted, unlisted.fileName());
    assertThat(fetch()).isZero();
    assertThat(copy.resolve(EditionLayout.CORRECTIONS)).doesNotExist();
  }

  @Test
  void whatTheTeacherDidNotSignForThisEditionIsNotTaken() throws Exception {
    Correction strangers = correction(new TinyShop("Somebody"), "Send me money.");
    TinyShop.Packed other = shop.pack(work.resolve("other"));
    Correction ofAnother =
        shop.correct(
            other.id(),
            new CorrectionNote(
                other.second().id(),
                CorrectionPin.TIME,
                1000,
                Optional.empty(),
                "Elsewhere.",
                LocalDate.of(2026, 3, 1)));
    Correction underAnotherName = correction(shop, "Stir it.");
    publish(strangers, strangers.fileName());
    publish(ofAnother, ofAnother.fileName());
    CorrectionList.write(publish(underAnotherName, "ab".repeat(32)));
    assertThat(fetch()).isZero();
    assertThat(here()).isEmpty();
  }

  @Test
  void aListOfNonsenseNamesNothing() {
    byte[] nonsense = ("../../etc/passwd\n" + "AB".repeat(32) + "\n\u0000\n").getBytes(US);
    assertThat(CorrectionList.names(nonsense)).isEmpty();
    String name = "0f".repeat(32);
    assertThat(CorrectionList.names((name + "\r\n " + name + " \n").getBytes(US)))
        .containsExactly(name);
  }

  private static final java.nio.charset.Charset US = java.nio.charset.StandardCharsets.US_ASCII;

  @Test
  void aSingleOneIsPutInPlaceOnlyIfItIsOfThisEdition() throws Exception {
    CorrectionFetch fetch = new CorrectionFetch(front, copy);
    Correction right = correction(shop, "Stir it.");
    assertThat(fetch.one(right.toBytes())).isTrue();
    assertThat(fetch.one(right.toBytes())).isFalse();
    byte[] changed = right.toBytes();
    changed[changed.length - 1] ^= 1;
    assertThatThrownBy(() -> fetch.one(changed)).isInstanceOf(VaultException.Tampered.class);
    assertThat(here()).extracting(Correction::digest).containsExactly(right.digest());
  }
}
