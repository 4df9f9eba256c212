package org.lehrcase.core.edition;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.keys.ClosingKey;
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
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * A small shop with one edition of two lessons, packed into a folder: lesson 1 plays without a
 * license and has its video full and light; lesson 2 has a video of two parts; both share a
 * picture.
 */
final class SampleEdition {

  static final SecureRandom RANDOM = new SecureRandom();

  final RootSecret root = RootSecret.random(RANDOM);
  final MasterKey master = root.masterKey(0);
  final ClosingKey closing = root.closingKey(0);
  final SigningKey desk = SigningKey.fromSeed(SecretBytes.random(RANDOM, 32));
  final Statement statement;
  final EditionId id = EditionId.random(RANDOM);
  final EditionKey key = master.editionKey(id);
  final Path folder;
  final List<PartEntry> parts = new ArrayList<>();
  Asset picture;
  Lesson first;
  Lesson second;
  Contents contents;
  FrontPage frontPage;

  private SampleEdition(Path folder) throws VaultException {
    this.folder = folder;
    statement = statement(desk, 1, SignerRole.DESK);
  }

  static SampleEdition pack(Path folder) throws IOException, VaultException {
    SampleEdition edition = new SampleEdition(folder);
    edition.writeLessons();
    edition.writeFront();
    return edition;
  }

  Statement statement(SigningKey signer, int serial, SignerRole role) throws VaultException {
    var terms = new Statement.Terms(signer.publicKey(), serial, role, "Sample shop", List.of());
    return Statement.issue(terms, root.signingKey());
  }

  TrustedRoots roots() {
    return TrustedRoots.pinned(root.signingKey().publicKey());
  }

  EditionFolder open() throws IOException, VaultException {
    return EditionFolder.open(folder, roots());
  }

  static byte[] film(int seed, int size) {
    byte[] film = new byte[size];
    for (int i = 0; i < size; i++) {
      film[i] = (byte) (i * 31 + (i >> 8) * 7 + seed);
    }
    return film;
  }

  private void writeLessons() throws IOException {
    picture = asset(0, AssetRole.IMAGE, Rendition.COMMON, List.of(film(5, 900)));
    Asset full = asset(1, AssetRole.VIDEO, Rendition.FULL, List.of(film(1, 200_000)));
    Asset light = asset(1, AssetRole.VIDEO, Rendition.LIGHT, List.of(film(2, 90_000)));
    Asset handout = asset(1, AssetRole.HANDOUT, Rendition.COMMON, List.of("pages".getBytes(UTF_8)));
    int whole = (int) (3L * ((1 << 16) - SegmentLayout.TAG_BYTES) - 80);
    Asset film =
        asset(2, AssetRole.VIDEO, Rendition.COMMON, List.of(film(3, whole), film(4, 70_001)));
    first = lesson(1, "Looking into water", true, List.of(full, light, handout, picture));
    second = lesson(2, "Far water", false, List.of(film, picture));
  }

  private static Lesson lesson(int number, String title, boolean open, List<Asset> assets) {
    return new Lesson(
        LessonId.random(RANDOM),
        number,
        number,
        title,
        "",
        open,
        assets,
        List.of(),
        Optional.empty());
  }

  private Asset asset(int inFolder, AssetRole role, Rendition rendition, List<byte[]> clear)
      throws IOException {
    AssetId asset = AssetId.random(RANDOM);
    List<PartRef> refs = new ArrayList<>();
    for (int i = 0; i < clear.size(); i++) {
      PartKey partKey = PartKey.random(RANDOM);
      var header = new PartHeader(PartKind.ASSET, asset, clear.get(i).length, 16, i, clear.size());
      byte[] sealed = new PartSealer(RANDOM).sealBytes(clear.get(i), header, partKey);
      DigestList digests = DigestList.ofFile(ByteSource.of(sealed), 16);
      Path dir = Files.createDirectories(folder.resolve(EditionLayout.folderName(inFolder)));
      Files.write(dir.resolve(EditionLayout.partName(digests.address())), sealed);
      if (digests.segments() > 1) {
        Files.write(dir.resolve(EditionLayout.digestsName(digests.address())), digests.toBytes());
      }
      parts.add(new PartEntry(inFolder, digests.address(), sealed.length, rendition));
      refs.add(new PartRef(digests.address(), partKey));
    }
    long total = clear.stream().mapToLong(c -> c.length).sum();
    String name = role.name().toLowerCase(Locale.ROOT) + ".bin";
    return new Asset(asset, role, rendition, name, "video/mp4", "", total, refs);
  }

  private void writeFront() throws IOException, VaultException {
    contents =
        new Contents(
            id,
            "brush",
            "Brush",
            LocalDate.of(2026, 1, 31),
            Set.of(AssetRole.HANDOUT),
            List.of(first, second));
    byte[] sealed = sealContents(contents.encode());
    Files.write(folder.resolve(EditionLayout.CONTENTS), sealed);
    frontPage = FrontPage.sign(facts(sealed), statement, desk);
    Files.write(folder.resolve(EditionLayout.FRONT_PAGE), frontPage.toBytes());
    KeysFileDraft keys = KeysFileDraft.start(id, RANDOM);
    keys.add(master.licenseKey(LicenseId.random(RANDOM), 63), key);
    keys.write(folder, frontPage.digest(), 1, new DeskSigner(statement, desk));
  }

  byte[] sealContents(byte[] clear) {
    PartHeader header = OpenedEdition.contentsHeader(id, clear.length);
    return new PartSealer(RANDOM).sealBytes(clear, header, key.contentsKey(id));
  }

  FrontPageFacts facts(byte[] sealedContents) throws IOException {
    DigestList digests = DigestList.ofFile(ByteSource.of(sealedContents), 16);
    return new FrontPageFacts(
        new EditionTitle(id, "brush", 0, 1, "Brush", "Six sheets of water.", "shop.invalid"),
        ContentsSeal.of(id, digests, key, closing),
        List.of(
            new OutlineEntry(1, first.title(), true), new OutlineEntry(2, second.title(), false)),
        parts,
        List.of(first));
  }

  /** The entry of part {@code number} of a lesson's file of a rendition. */
  PartEntry entry(Lesson lesson, int asset, int number) {
    return frontPage.part(lesson.assets().get(asset).parts().get(number).address()).orElseThrow();
  }

  Path path(PartEntry part) {
    return folder
        .resolve(EditionLayout.folderName(part.folder()))
        .resolve(EditionLayout.partName(part.address()));
  }

  /** Changes one bit of a file. */
  static void damage(Path file, long position) throws IOException {
    byte[] bytes = read(file);
    bytes[(int) position] ^= 1;
    Files.write(file, bytes);
  }

  static void cut(Path file, int by) throws IOException {
    byte[] bytes = read(file);
    Files.write(file, Arrays.copyOf(bytes, bytes.length - by));
  }

  static byte[] read(Path file) throws IOException {
    try (var in = Files.newInputStream(file)) {
      return in.readNBytes(1 << 24);
    }
  }

  static final Progress QUIET = Progress.NONE;
}
