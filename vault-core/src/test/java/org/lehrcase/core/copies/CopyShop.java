package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.ContentsSeal;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.FrontPageFacts;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.license.DeskSigner;
import org.lehrcase.core.license.KeysFileDraft;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartSealer;

/**
 * A small shop whose editions share the parts of the films that they share. A film is a number; it
 * has four segments, and a page of notes beside it has one.
 */
final class CopyShop {
  private static final int FILM_BYTES = 200_000;

  private final SecureRandom random = new SecureRandom();
  private final RootSecret root = RootSecret.random(random);
  private final MasterKey master = root.masterKey(0);
  private final SigningKey desk = SigningKey.fromSeed(SecretBytes.random(random, 32));
  private final Statement statement;
  private final Map<Integer, Sealed> sealed = new HashMap<>();

  private record Sealed(AssetId id, PartKey key, byte[] bytes, DigestList digests) {}

  CopyShop() throws VaultException {
    var terms =
        new Statement.Terms(desk.publicKey(), 1, SignerRole.DESK, "Invented Studio", List.of());
    statement = Statement.issue(terms, root.signingKey());
  }

  TrustedRoots roots() {
    return TrustedRoots.pinned(root.signingKey().publicKey());
  }

  EditionFolder open(Path folder) throws IOException, VaultException {
    return EditionFolder.open(folder, roots());
  }

  /** Packs an edition with one lesson per film; its keys file gets this many rows. */
  FrontPage pack(Path folder, int number, int rows, int... films)
      throws IOException, VaultException {
    Files.createDirectories(folder);
    EditionId id = EditionId.random(random);
    List<PartEntry> parts = new ArrayList<>();
    List<Lesson> lessons = new ArrayList<>();
    List<OutlineEntry> outline = new ArrayList<>();
    for (int i = 0; i < films.length; i++) {
      int lesson = i + 1;
      Asset film = add(folder, lesson, AssetRole.VIDEO, films[i], FILM_BYTES, parts);
      Asset notes = add(folder, lesson, AssetRole.HANDOUT, -films[i], 900, parts);
      lessons.add(lesson(lesson, List.of(film, notes)));
      outline.add(new OutlineEntry(lesson, "Lesson " + lesson, false));
    }
    EditionKey key = master.editionKey(id);
    byte[] contents = sealContents(id, key, lessons);
    Files.write(folder.resolve(EditionLayout.CONTENTS), contents);
    ContentsSeal seal =
        ContentsSeal.of(
            id, DigestList.ofFile(ByteSource.of(contents), 16), key, root.closingKey(0));
    EditionTitle title = new EditionTitle(id, "brush", 0, number, "Brush", "", "");
    FrontPageFacts facts = new FrontPageFacts(title, seal, outline, parts, List.of());
    FrontPage front = FrontPage.sign(facts, statement, desk);
    Files.write(folder.resolve(EditionLayout.FRONT_PAGE), front.toBytes());
    KeysFileDraft keys = KeysFileDraft.start(id, random);
    for (int i = 0; i < rows; i++) {
      keys.add(master.licenseKey(LicenseId.random(random), 63), key);
    }
    keys.write(folder, front.digest(), 1, new DeskSigner(statement, desk));
    return front;
  }

  private byte[] sealContents(EditionId id, EditionKey key, List<Lesson> lessons) {
    byte[] clear =
        new Contents(id, "brush", "Brush", LocalDate.of(2026, 1, 31), Set.of(), lessons).encode();
    PartHeader header = OpenedEdition.contentsHeader(id, clear.length);
    return new PartSealer(random).sealBytes(clear, header, key.contentsKey(id));
  }

  private Lesson lesson(int number, List<Asset> assets) {
    return new Lesson(
        LessonId.random(random),
        number,
        number,
        "Lesson " + number,
        "",
        false,
        assets,
        List.of(),
        Optional.empty());
  }

  private Asset add(
      Path folder, int lesson, AssetRole role, int seed, int size, List<PartEntry> parts)
      throws IOException {
    Sealed part = sealed.get(seed);
    if (part == null) {
      part = seal(seed, size);
      sealed.put(seed, part);
    }
    Path place = Files.createDirectories(folder.resolve(EditionLayout.folderName(lesson)));
    String name = EditionLayout.partName(part.digests.address());
    Files.write(place.resolve(name), part.bytes);
    if (part.digests.segments() > 1) {
      Files.write(
          place.resolve(EditionLayout.digestsName(part.digests.address())), part.digests.toBytes());
    }
    parts.add(new PartEntry(lesson, part.digests.address(), part.bytes.length, Rendition.COMMON));
    List<PartRef> refs = List.of(new PartRef(part.digests.address(), part.key));
    return new Asset(part.id, role, Rendition.COMMON, "a.bin", "video/mp4", "", size, refs);
  }

  private Sealed seal(int seed, int size) throws IOException {
    byte[] clear = new byte[size];
    for (int i = 0; i < size; i++) {
      clear[i] = (byte) (i * 31 + (i >> 8) * 7 + seed);
    }
    AssetId asset = AssetId.random(random);
    PartKey key = PartKey.random(random);
    PartHeader header = PartHeader.single(PartKind.ASSET, asset, size);
    byte[] bytes = new PartSealer(random).sealBytes(clear, header, key);
    return new Sealed(asset, key, bytes, DigestList.ofFile(ByteSource.of(bytes), 16));
  }

  static byte[] read(Path file) throws IOException {
    try (var in = Files.newInputStream(file)) {
      return in.readNBytes(1 << 24);
    }
  }

  /** Every file below a folder by name, as the hash of its bytes. */
  static Map<String, Octets> files(Path folder) throws IOException {
    Map<String, Octets> files = new TreeMap<>();
    try (var walk = Files.walk(folder)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        files.put(name, Octets.of(Sha256.of(read(file))));
      }
    }
    return files;
  }

  static void copyTree(Path from, Path to) throws IOException {
    try (var walk = Files.walk(from)) {
      for (Path file : walk.toList()) {
        Path place = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(place);
        } else {
          Files.copy(file, place);
        }
      }
    }
  }
}
