package org.lehrcase.desk.sales;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

class SalesBookTest {
  @TempDir Path folder;
  private SalesBook book;

  @BeforeEach
  void open() throws IOException {
    book = SalesBook.create(folder.resolve("sales.db"), BookFixture.NOON);
  }

  @AfterEach
  void close() throws IOException {
    book.close();
  }

  @Test
  void onlyTheOwnerMayReadTheBook() throws IOException {
    for (String name : List.of("sales.db", "sales.db-wal")) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(name))))
          .isEqualTo("rw-------");
    }
  }

  @Test
  void anExistingFileIsNotTakenForANewBook() {
    assertThatThrownBy(() -> SalesBook.create(folder.resolve("sales.db"), BookFixture.NOON))
        .isInstanceOf(FileAlreadyExistsException.class);
  }

  @Test
  void aMissingBookIsNotMadeByOpening() {
    assertThatThrownBy(() -> SalesBook.open(folder.resolve("other.db"), BookFixture.NOON))
        .isInstanceOf(SalesException.class)
        .hasMessageContaining("no sales book");
    assertThat(folder.resolve("other.db")).doesNotExist();
  }

  @Test
  void buyersAreFoundByAddressInEitherCase() throws IOException {
    book.people().add(BookFixture.IDA);
    assertThat(book.people().byEmail("IDA@Studio.Example")).contains(BookFixture.IDA);
    assertThat(book.people().byEmail("eda@studio.example")).isEmpty();
  }

  @Test
  void oneAddressIsOneBuyer() throws IOException {
    book.people().add(BookFixture.IDA);
    assertThatThrownBy(
            () ->
                book.people()
                    .add(
                        new Person(
                            "00000000000000a2", "Other", "IDA@STUDIO.EXAMPLE", BookFixture.DAY)))
        .isInstanceOf(SalesException.class);
  }

  @Test
  void aLicenseComesBackAsItWasAdded() throws IOException {
    addLicense(BookFixture.entry(1, 2, "kiln", "brush", "kiln"));
    LicenseEntry read = book.licenses().byId(BookFixture.license(1)).orElseThrow();
    assertThat(read).isEqualTo(BookFixture.entry(1, 2, "brush", "kiln"));
    assertThat(book.licenses().all()).containsExactly(read);
    assertThat(book.licenses().byId(BookFixture.license(2))).isEmpty();
  }

  @Test
  void onlyOpenLicensesOfTheSeriesAndEpochAreEntitled() throws IOException {
    addLicense(BookFixture.entry(1, 1, "brush"));
    book.licenses().add(BookFixture.entry(2, 1, "kiln"));
    book.licenses().add(BookFixture.entry(3, 1, "brush", "kiln"));
    book.licenses().mark(BookFixture.license(1), LicenseState.BLOCKED);
    assertThat(book.licenses().entitled("brush", 0))
        .extracting(LicenseEntry::id)
        .containsExactly(BookFixture.license(3));
    assertThat(book.licenses().entitled("brush", -1)).isEmpty();
  }

  @Test
  void theFileIssuedLastIsKeptUntilItsBuyerIsErased() throws IOException {
    addLicense(BookFixture.entry(1, 1, "brush"));
    book.licenses().keepIssued(BookFixture.license(1), new byte[100]);
    book.licenses().keepIssued(BookFixture.license(1), new byte[200]);
    assertThat(book.licenses().issued(BookFixture.license(1)).orElseThrow().size()).isEqualTo(200);
    book.people().erase(BookFixture.IDA.id());
    assertThat(book.licenses().issued(BookFixture.license(1))).isEmpty();
  }

  @Test
  void coveringOnceMoreAddsNothingTwice() throws IOException {
    addLicense(BookFixture.entry(1, 1, "brush"));
    book.licenses().cover(BookFixture.license(1), List.of("brush", "kiln"));
    book.licenses().countIssue(BookFixture.license(1));
    LicenseEntry read = book.licenses().byId(BookFixture.license(1)).orElseThrow();
    assertThat(read.terms().series()).containsExactly("brush", "kiln");
    assertThat(read.issue()).isEqualTo(2);
  }

  @Test
  void placesEndWhereTheLicenseEnds() throws IOException {
    addLicense(BookFixture.entry(1, 2, "brush"));
    book.places().add(BookFixture.living(1, 1));
    book.places().add(BookFixture.living(1, 2));
    assertThatThrownBy(() -> book.places().add(BookFixture.living(1, 3)))
        .isInstanceOf(SalesException.class)
        .hasMessageContaining("every place of this license is in use");
    book.places().retire(BookFixture.license(1), BookFixture.place(1));
    book.places().add(BookFixture.living(1, 3));
    assertThat(book.places().of(BookFixture.license(1))).hasSize(3);
    assertThat(book.places().of(BookFixture.license(1)).stream().filter(Place::living)).hasSize(2);
  }

  @Test
  void aCardLeadsToItsPlaceAndLetter() throws IOException {
    addLicense(BookFixture.entry(1, 1, "brush"));
    Place place = BookFixture.living(1, 1);
    book.places().add(place);
    assertThat(book.places().answeredBy(place.cardDigest())).contains(place);
    assertThat(book.places().answeredBy(BookFixture.digest("another"))).isEmpty();
    assertThat(book.places().byId(place.license(), place.id())).contains(place);
    assertThat(book.places().byId(place.license(), BookFixture.place(9))).isEmpty();
  }

  @Test
  void editionsAreOrderedByRestoreAndNumber() throws IOException {
    book.editions().nameSeries("brush", "Brush");
    book.editions().nameSeries("brush", "Brush, again");
    EditionEntry second = edition("22", 0, 2);
    EditionEntry afterRestore = edition("33", 1, 1);
    EditionEntry first = edition("11", 0, 1);
    book.editions().add(second);
    book.editions().add(afterRestore);
    book.editions().add(first);
    assertThat(book.editions().of("brush")).containsExactly(first, second, afterRestore);
    assertThat(book.editions().newest("brush")).contains(afterRestore);
    assertThat(book.editions().newest("kiln")).isEmpty();
    assertThat(book.editions().byId(first.id())).contains(first);
  }

  @Test
  void anEditionNumberIsUsedOnce() throws IOException {
    book.editions().nameSeries("brush", "Brush");
    book.editions().add(edition("11", 0, 1));
    assertThatThrownBy(() -> book.editions().add(edition("22", 0, 1)))
        .isInstanceOf(SalesException.class);
  }

  @Test
  void aLessonKeepsItsIdentityThroughRenaming() throws IOException {
    book.editions().nameSeries("brush", "Brush");
    LessonId id = LessonId.ofHex("0123456789abcdef0123456789abcdef");
    book.lessons().keep(new LessonEntry(id, "brush", 7, 1, "Looking"));
    book.lessons().keep(new LessonEntry(id, "brush", 7, 4, "Looking into water"));
    assertThat(book.lessons().of("brush"))
        .containsExactly(new LessonEntry(id, "brush", 7, 4, "Looking into water"));
  }

  @Test
  void refusedStepsLeaveNothing() throws IOException {
    assertThatThrownBy(
            () ->
                book.<Void, IllegalArgumentException>together(
                    () -> {
                      book.people().add(BookFixture.IDA);
                      throw new IllegalArgumentException("no");
                    }))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(book.people().byEmail(BookFixture.IDA.email())).isEmpty();
    book.people().add(BookFixture.IDA);
    assertThat(book.today()).isEqualTo(BookFixture.DAY);
  }

  @Test
  void theBookIsTheSameAfterOpeningAgain() throws IOException {
    addLicense(BookFixture.entry(1, 1, "brush"));
    book.close();
    book = SalesBook.open(folder.resolve("sales.db"), BookFixture.NOON);
    assertThat(book.licenses().all()).containsExactly(BookFixture.entry(1, 1, "brush"));
  }

  private void addLicense(LicenseEntry entry) throws IOException {
    book.people().add(BookFixture.IDA);
    book.licenses().add(entry);
  }

  private static EditionEntry edition(String twoDigits, int restores, int number) {
    return new EditionEntry(
        EditionId.ofHex(twoDigits.repeat(16)),
        "brush",
        restores,
        number,
        0,
        "Brush",
        BookFixture.DAY,
        "/editions/brush");
  }
}
