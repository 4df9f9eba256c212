package org.lehrcase.core.license;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Moment;
import org.lehrcase.core.course.MomentTarget;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.ContentsSeal;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.FrontPageFacts;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartSealer;

/**
 * A shop with one message of each kind, the same on every run but for the letter, whose sealing
 * draws from the machine. Its keys come from a counter and are obviously no secrets.
 */
final class MessageVectorShop {
  static final LocalDate DAY = LocalDate.of(2026, 3, 14);

  final SecureRandom random = new Counted();
  final RootSecret secret = RootSecret.random(random);
  final SigningKey root = secret.signingKey();
  final MasterKey master = secret.masterKey(0);
  final SigningKey desk = SigningKey.fromSeed(SecretBytes.random(random, 32));
  final PlaceSeed seed = PlaceSeed.random(random);
  final EditionId edition = EditionId.random(random);
  final LicenseId license = LicenseId.random(random);
  final PlaceId place = PlaceId.random(random);
  final LessonId lesson = LessonId.random(random);
  final AssetId asset = AssetId.random(random);
  final PartRef part = new PartRef(PartAddress.of(bytes(32)), PartKey.ofBytes(bytes(32)));
  final EditionKey key = master.editionKey(edition);
  final Statement statement;
  final DeskSigner signer;

  MessageVectorShop() throws VaultException {
    var terms =
        new Statement.Terms(desk.publicKey(), 2, SignerRole.DESK, "Kiln & Kelp", List.of(digest()));
    statement = Statement.issue(terms, root);
    signer = new DeskSigner(statement, desk);
  }

  private byte[] bytes(int size) {
    byte[] bytes = new byte[size];
    random.nextBytes(bytes);
    return bytes;
  }

  private static Octets digest() {
    return Octets.of(Sha256.of16(new byte[] {7}));
  }

  TrustedRoots roots() {
    return TrustedRoots.pinned(root.publicKey());
  }

  PlaceKeys placeKeys() {
    return new PlaceKeys(master.licenseKey(license, 1), master.placeSecret(license, place));
  }

  License licenseMessage() throws VaultException {
    var terms =
        new LicenseTerms(
            license,
            new LicenseTerms.Issue(0, 1, DAY),
            "Ada Example",
            List.of("brush", "depth"),
            new LicenseTerms.Allowance(2, 3));
    Octets salt = Octets.of(Sha256.of16(new byte[] {8}));
    Octets row = master.licenseKey(license, 0).keyRow(edition, salt, key);
    return License.issue(terms, List.of(new RowEntry(edition, salt, row)), signer);
  }

  LaptopCard card() {
    return LaptopCard.make(seed, LaptopCard.About.replacing(license, place));
  }

  KeyLetter letter() throws VaultException {
    return KeyLetter.issue(card(), place, 3, placeKeys(), desk);
  }

  Lesson lesson() {
    Asset film =
        new Asset(
            asset,
            AssetRole.VIDEO,
            Rendition.FULL,
            "far water.mp4",
            "video/mp4",
            "",
            70_000,
            List.of(part));
    Moment moment = new Moment(12_400, "second wash", MomentTarget.PAGE, Optional.of(asset), 3);
    return new Lesson(
        lesson,
        1,
        1,
        "Far water",
        "Blue.\nThen green.",
        true,
        List.of(film),
        List.of(moment),
        Optional.empty());
  }

  Contents contents() {
    return new Contents(
        edition, "brush", "Brush", DAY, Set.of(AssetRole.HANDOUT), List.of(lesson()));
  }

  FrontPage frontPage() throws VaultException, IOException {
    byte[] clear = contents().encode();
    var header = OpenedEdition.contentsHeader(edition, clear.length);
    byte[] sealed =
        new PartSealer(new Counted()).sealBytes(clear, header, key.contentsKey(edition));
    DigestList digests = DigestList.ofFile(ByteSource.of(sealed), 16);
    var facts =
        new FrontPageFacts(
            new EditionTitle(edition, "brush", 0, 1, "Brush", "Six sheets.", "shop.invalid"),
            ContentsSeal.of(edition, digests, key, secret.closingKey(0)),
            List.of(new OutlineEntry(1, "Far water", true)),
            List.of(new PartEntry(1, part.address(), 70_112, Rendition.FULL)),
            List.of(lesson()));
    return FrontPage.sign(facts, statement, desk);
  }

  CorrectionNote note() {
    return new CorrectionNote(
        lesson, CorrectionPin.PAGE, 3, Optional.of(asset), "Two washes, not three.", DAY);
  }

  Correction correction() throws VaultException {
    byte[] sealed = Correction.seal(note(), edition, key, new Counted());
    return Correction.sign(sealed, edition, statement, desk);
  }

  /** Writes a keys file into an empty folder and returns its index. */
  byte[] keysIndex(Path folder) throws IOException, VaultException {
    KeysFileDraft draft = KeysFileDraft.start(edition, new Counted());
    draft.add(master.licenseKey(license, 1), key);
    draft.write(Files.createDirectories(folder), digest(), 1, signer);
    return FoundFile.read(folder.resolve(KeysFile.INDEX_NAME), 1 << 20);
  }

  /** SHA-256 of a counter. */
  private static final class Counted extends SecureRandom {
    private static final long serialVersionUID = 1L;

    private long count;

    @Override
    public void nextBytes(byte[] bytes) {
      for (int at = 0; at < bytes.length; at += 32) {
        byte[] block = Sha256.of(ByteBuffer.allocate(8).putLong(count++).array());
        System.arraycopy(block, 0, bytes, at, Math.min(32, bytes.length - at));
      }
    }
  }
}
