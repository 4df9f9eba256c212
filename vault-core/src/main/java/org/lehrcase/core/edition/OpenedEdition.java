package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.AssetReader;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartReader;
import org.lehrcase.core.seal.PartSealer;

/**
 * An edition whose lessons can be read: all of them with its key, the open ones without.
 *
 * <p>Immutable, and safe for use by many threads. Holds part keys in memory as long as it lives.
 */
public final class OpenedEdition {

  private final EditionFolder folder;
  private final Optional<Contents> contents;
  private final List<Lesson> lessons;

  private OpenedEdition(EditionFolder folder, Optional<Contents> contents) {
    this.folder = folder;
    this.contents = contents;
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
    return new OpenedEdition(folder, Optional.of(readContents(folder, key)));
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
    return new OpenedEdition(folder, Optional.empty());
  }

  private static Contents readContents(EditionFolder folder, EditionKey key)
      throws IOException, VaultException {
    FrontPage front = folder.frontPage();
    EditionId edition = front.edition();
    if (!key.check(edition).equals(front.facts().seal().editionCheck())) {
      throw new VaultException.NotLicensed(
          "this key does not open edition " + front.title().title());
    }
    byte[] sealed = folder.readContents();
    PartHeader header = contentsHeader(edition, PartHeader.parse(sealed));
    byte[] clear;
    try (PartKey contentsKey = key.contentsKey(edition)) {
      clear = PartSealer.openBytes(sealed, contentsKey, header);
    }
    try {
      Contents contents = Contents.decode(clear);
      requireFits(contents, front);
      return contents;
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
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

  private static PartHeader contentsHeader(EditionId edition, PartHeader found)
      throws VaultException {
    if (found.plainBytes() > Contents.MAX_BYTES) {
      throw new VaultException.TooLarge("contents of " + found.plainBytes() + " bytes");
    }
    PartHeader usual = contentsHeader(edition, found.plainBytes());
    return new PartHeader(
        usual.kind(), usual.asset(), usual.plainBytes(), found.log2SegmentBytes(), 0, 1);
  }

  /** The contents must be of this edition and name no part that the front page does not list. */
  private static void requireFits(Contents contents, FrontPage front) throws VaultException {
    boolean same =
        contents.edition().equals(front.edition())
            && contents.series().equals(front.title().series());
    boolean listed =
        contents.lessons().stream()
            .flatMap(l -> l.assets().stream())
            .flatMap(a -> a.parts().stream())
            .allMatch(p -> front.part(p.address()).isPresent());
    if (!same || !listed) {
      throw new VaultException.Malformed("the contents do not belong to this front page");
    }
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
    return new OpenedEdition(elsewhere, contents);
  }

  /** Says whether every part of a file is here, by name and length. */
  public boolean isHere(Asset asset) {
    return asset.parts().stream()
        .allMatch(p -> frontPage().part(p.address()).flatMap(folder::locate).isPresent());
  }

  /**
   * Opens a file for reading at any place; the caller closes it.
   *
   * @throws VaultException.NotHere if a part, or the digest list of one, is in no folder
   * @throws VaultException if a part is not what the contents name
   * @throws IOException if the medium fails
   */
  public ClearSource open(Asset asset) throws IOException, VaultException {
    List<PartReader> readers = new ArrayList<>();
    boolean whole = false;
    try {
      for (int i = 0; i < asset.parts().size(); i++) {
        readers.add(openPart(asset, i));
      }
      AssetReader reader = AssetReader.of(readers);
      if (reader.sizeBytes() != asset.plainBytes()) {
        throw new VaultException.Tampered("the parts of " + asset.name() + " do not add up");
      }
      whole = true;
      return reader;
    } finally {
      if (!whole) {
        for (PartReader reader : readers) {
          reader.close();
        }
      }
    }
  }

  private PartReader openPart(Asset asset, int number) throws IOException, VaultException {
    PartRef ref = asset.parts().get(number);
    PartEntry entry =
        frontPage()
            .part(ref.address())
            .orElseThrow(() -> new VaultException.Malformed("a part that is not listed"));
    var path =
        folder
            .locate(entry)
            .orElseThrow(
                () ->
                    new VaultException.NotHere(
                        asset.name() + " is not in this copy; a fuller copy may have it"));
    FileSource file = BoundedFile.open(path, entry.sealedBytes());
    boolean handedOver = false;
    try {
      PartHeader header = PartDigests.header(file);
      requireHeader(header, asset, number);
      var digests = PartDigests.proven(path, file, entry);
      handedOver = true;
      return PartReader.open(file, ref.key(), header, digests);
    } finally {
      if (!handedOver) {
        file.close();
      }
    }
  }

  private static void requireHeader(PartHeader header, Asset asset, int number)
      throws VaultException {
    if (header.kind() != PartKind.ASSET
        || !header.asset().equals(asset.id())
        || header.part() != number
        || header.parts() != asset.parts().size()) {
      throw new VaultException.Tampered("a part of " + asset.name() + " is another one's");
    }
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

  @Override
  public String toString() {
    return "OpenedEdition[" + frontPage() + ", " + lessons.size() + " lessons]";
  }
}
