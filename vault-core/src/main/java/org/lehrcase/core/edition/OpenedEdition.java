package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;

/**
 * An edition whose lessons can be read: all of them with its key, the open ones without.
 *
 * <p>Immutable, and safe for use by many threads. Holds part keys in memory as long as it lives.
 */
public final class OpenedEdition {

  private final EditionFolder folder;
  private final Optional<Contents> contents;
  private final Optional<PartKey> searchKey;
  private final List<Lesson> lessons;

  private OpenedEdition(
      EditionFolder folder, Optional<Contents> contents, Optional<PartKey> searchKey) {
    this.folder = folder;
    this.contents = contents;
    this.searchKey = searchKey;
    this.lessons = contents.map(Contents::lessons).orElse(folder.frontPage().facts().openLessons());
  }

  /**
   * Opens every lesson.
   *
   * @param folder where the edition lies
   * @param key its key; not kept
   * @throws VaultException.NotLicensed if the key is another edition's
   * @throws VaultException.NotHere if the contents are missing
   * @throws VaultException if the contents are not what the front page names
   * @throws IOException if the medium fails
   */
  public static OpenedEdition open(EditionFolder folder, EditionKey key)
      throws IOException, VaultException {
    Contents contents = ContentsOpening.open(folder, key);
    PartKey searchKey = key.searchKey(contents.edition());
    return new OpenedEdition(folder, Optional.of(contents), Optional.of(searchKey));
  }

  /**
   * Opens every lesson with a closing key that its shop has published.
   *
   * @throws VaultException.NotLicensed if the key is of another shop or epoch
   * @throws VaultException as {@link #open}
   * @throws IOException if the medium fails
   */
  public static OpenedEdition openClosed(EditionFolder folder, ClosingKey closing)
      throws IOException, VaultException {
    ContentsSeal seal = folder.frontPage().facts().seal();
    if (!closing.check().equals(seal.closingCheck())) {
      throw new VaultException.NotLicensed(
          "this closing key is of another shop or another time; its editions open with theirs");
    }
    EditionId edition = folder.frontPage().edition();
    try (EditionKey key = closing.open(edition, seal.closingRow())) {
      return open(folder, key);
    }
  }

  /** Opens the lessons that play without a license; there may be none. */
  public static OpenedEdition openLessonsOnly(EditionFolder folder) {
    return new OpenedEdition(folder, Optional.empty(), Optional.empty());
  }

  /**
   * Returns the header that sealed contents carry: their asset id is the id of the edition.
   *
   * @param edition the edition
   * @param plainBytes length of the encoded contents
   */
  public static PartHeader contentsHeader(EditionId edition, long plainBytes) {
    return PartHeader.single(PartKind.CONTENTS, AssetId.of(edition.toBytes()), plainBytes);
  }

  /** Returns where the edition lies. */
  public EditionFolder folder() {
    return folder;
  }

  /** Returns the front page. */
  public FrontPage frontPage() {
    return folder.frontPage();
  }

  /** Returns the contents; empty if only the open lessons are open. */
  public Optional<Contents> contents() {
    return contents;
  }

  /** Returns the lessons that can be read, in the order of study. */
  public List<Lesson> lessons() {
    return lessons;
  }

  /** Finds a lesson that can be read. */
  public Optional<Lesson> lesson(LessonId id) {
    return lessons.stream().filter(l -> l.id().equals(id)).findFirst();
  }

  /** Finds a file of any lesson that can be read. */
  public Optional<Asset> asset(AssetId id) {
    return lessons.stream().flatMap(l -> l.asset(id).stream()).findFirst();
  }

  /** Returns the same lessons, looked for in other folders: the stick has another name now. */
  public OpenedEdition in(EditionFolder elsewhere) {
    if (!elsewhere.frontPage().digest().equals(frontPage().digest())) {
      throw new IllegalArgumentException("another edition lies there");
    }
    return new OpenedEdition(elsewhere, contents, searchKey);
  }

  /** Says whether every part of a file is here, by name and length. */
  public boolean isHere(Asset asset) {
    return asset.parts().stream()
        .allMatch(p -> frontPage().part(p.address()).flatMap(folder::locate).isPresent());
  }

  /**
   * Opens a file for reading at any place; the caller closes it. Only its first part is opened now,
   * every other part when a byte of it is read, which then fails if that part is not here.
   *
   * @throws VaultException.NotHere if the first part, or the digest list of it, is in no folder
   * @throws VaultException if the first part is not what the contents name
   * @throws IOException if the medium fails
   */
  public ClearSource open(Asset asset) throws IOException, VaultException {
    return AssetOpening.open(folder, asset);
  }

  /**
   * Reads a small file whole, such as captions or a table.
   *
   * @throws VaultException.TooLarge if it is longer than the limit
   * @throws VaultException as {@link #open(Asset)}
   * @throws IOException if the medium fails
   */
  public byte[] read(Asset asset, int maxBytes) throws IOException, VaultException {
    if (asset.plainBytes() > maxBytes) {
      throw new VaultException.TooLarge(
          asset.name() + ": " + asset.plainBytes() + " bytes, the limit is " + maxBytes);
    }
    try (ClearSource source = open(asset)) {
      byte[] bytes = new byte[(int) source.sizeBytes()];
      source.readExactly(0, ByteBuffer.wrap(bytes));
      return bytes;
    }
  }

  /**
   * Reads the search image of the edition into memory.
   *
   * @return its clear bytes; empty if the edition was packed without one, or only its open lessons
   *     are open
   * @throws VaultException.NotHere if it has one that this copy lacks
   * @throws VaultException.TooLarge if it is longer than {@link SearchPart#MAX_BYTES}
   * @throws VaultException if it is not what the front page names
   * @throws IOException if the medium fails
   */
  public Optional<byte[]> searchImage() throws IOException, VaultException {
    return contents.isEmpty() || searchKey.isEmpty()
        ? Optional.empty()
        : SearchPart.read(folder, contents.get(), searchKey.get());
  }

  @Override
  public String toString() {
    return "OpenedEdition[" + frontPage() + ", " + lessons.size() + " lessons]";
  }
}
