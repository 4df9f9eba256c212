package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;

import com.upokecenter.cbor.CBORObject;
import com.upokecenter.cbor.CBORType;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.FrontPageFacts;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * A stranger's reader: a general CBOR library takes our messages apart and the platform's own
 * Ed25519 verifies them, by {@code docs/format.md} alone and without a line of our own code
 * between.
 */
class GeneralReaderTest {
  /** The fixed front of an Ed25519 public key in the form of RFC 8410. */
  private static final byte[] SPKI = HexFormat.of().parseHex("302a300506032b6570032100");

  @TempDir Path empty;
  private MessageVectorShop shop;
  private License license;
  private LaptopCard card;
  private KeyLetter letter;
  private FrontPage front;
  private Correction correction;
  private byte[] index;
  private MoveAsk ask;

  @BeforeEach
  void makeOneOfEach() throws Exception {
    shop = new MessageVectorShop();
    license = shop.licenseMessage();
    card = shop.card();
    letter = shop.letter();
    front = shop.frontPage();
    correction = shop.correction();
    index = shop.keysIndex(empty);
    ask = MoveAsk.make(shop.seed);
  }

  private static CBORObject payload(byte[] message) {
    CBORObject cose = CBORObject.DecodeFromBytes(message);
    assertThat(cose.getType()).isEqualTo(CBORType.Array);
    assertThat(cose.size()).isEqualTo(4);
    return CBORObject.DecodeFromBytes(cose.get(2).GetByteString());
  }

  private static Octets octets(CBORObject value) {
    return Octets.of(value.GetByteString());
  }

  private static byte[] toBeSigned(byte[] message, String label) {
    CBORObject cose = CBORObject.DecodeFromBytes(message);
    return CBORObject.NewArray()
        .Add("Signature1")
        .Add(cose.get(0).GetByteString())
        .Add(label.getBytes(StandardCharsets.US_ASCII))
        .Add(cose.get(2).GetByteString())
        .EncodeToBytes();
  }

  private static boolean platformVerifies(byte[] message, String label, byte[] key)
      throws GeneralSecurityException {
    ByteArrayOutputStream encoded = new ByteArrayOutputStream();
    encoded.writeBytes(SPKI);
    encoded.writeBytes(key);
    PublicKey publicKey =
        KeyFactory.getInstance("Ed25519")
            .generatePublic(new X509EncodedKeySpec(encoded.toByteArray()));
    Signature verifier = Signature.getInstance("Ed25519");
    verifier.initVerify(publicKey);
    verifier.update(toBeSigned(message, label));
    return verifier.verify(CBORObject.DecodeFromBytes(message).get(3).GetByteString());
  }

  private record Signed(String label, byte[] message, byte[] key) {}

  /** Who must have signed, read from the message itself where it stands in it. */
  private List<Signed> all() {
    List<Signed> all = new ArrayList<>();
    byte[] root = payload(shop.statement.toBytes()).get(1).GetByteString();
    byte[] desk = payload(shop.statement.toBytes()).get(2).GetByteString();
    all.add(new Signed("lehrcase/1 statement", shop.statement.toBytes(), root));
    all.add(new Signed("lehrcase/1 license", license.toBytes(), desk));
    byte[] own = payload(card.toBytes()).get(3).GetByteString();
    all.add(new Signed("lehrcase/1 card", card.toBytes(), own));
    all.add(new Signed("lehrcase/1 letter", letter.toBytes(), desk));
    byte[] asking = payload(ask.toBytes()).get(2).GetByteString();
    all.add(new Signed("lehrcase/1 ask", ask.toBytes(), asking));
    all.add(new Signed("lehrcase/1 front page", front.toBytes(), desk));
    all.add(new Signed("lehrcase/1 keys index", index, desk));
    all.add(new Signed("lehrcase/1 correction", correction.toBytes(), desk));
    return all;
  }

  @Test
  void thePlatformVerifiesEverySignatureUnderItsOwnLabelOnly() throws Exception {
    for (Signed signed : all()) {
      for (MessageType type : MessageType.values()) {
        assertThat(platformVerifies(signed.message(), type.label(), signed.key()))
            .as("%s as %s", signed.label(), type.label())
            .isEqualTo(type.label().equals(signed.label()));
      }
    }
  }

  @Test
  void theHeaderSaysEdDsaAndNothingElse() {
    for (Signed signed : all()) {
      CBORObject cose = CBORObject.DecodeFromBytes(signed.message());
      CBORObject header = CBORObject.DecodeFromBytes(cose.get(0).GetByteString());
      assertThat(header.getKeys()).containsExactly(CBORObject.FromObject(1));
      assertThat(header.get(CBORObject.FromObject(1)).AsInt32Value()).isEqualTo(-8);
      assertThat(cose.get(1).getType()).isEqualTo(CBORType.Map);
      assertThat(cose.get(1).size()).isZero();
      assertThat(cose.get(3).GetByteString()).hasSize(64);
    }
  }

  @Test
  void everyPayloadIsAnArrayWithVersionOneInFrontAndWrittenTheShortestWay() {
    Map<String, Integer> fields = new LinkedHashMap<>();
    fields.put("lehrcase/1 statement", 7);
    fields.put("lehrcase/1 license", 11);
    fields.put("lehrcase/1 card", 6);
    fields.put("lehrcase/1 letter", 8);
    fields.put("lehrcase/1 ask", 3);
    fields.put("lehrcase/1 front page", 17);
    fields.put("lehrcase/1 keys index", 8);
    fields.put("lehrcase/1 correction", 4);
    for (Signed signed : all()) {
      CBORObject payload = payload(signed.message());
      assertThat(payload.size()).as(signed.label()).isEqualTo(fields.get(signed.label()));
      assertThat(payload.get(0).AsInt32Value()).isEqualTo(1);
      byte[] written = CBORObject.DecodeFromBytes(signed.message()).get(2).GetByteString();
      assertThat(payload.EncodeToBytes()).as(signed.label()).isEqualTo(written);
    }
  }

  @Test
  void theDigestOfAMessageIsHalfTheHashOfWhatWasSigned() throws Exception {
    Map<Octets, byte[]> digests = new LinkedHashMap<>();
    digests.put(card.digest(), toBeSigned(card.toBytes(), "lehrcase/1 card"));
    digests.put(letter.digest(), toBeSigned(letter.toBytes(), "lehrcase/1 letter"));
    digests.put(front.digest(), toBeSigned(front.toBytes(), "lehrcase/1 front page"));
    digests.put(license.digest(), toBeSigned(license.toBytes(), "lehrcase/1 license"));
    digests.put(correction.digest(), toBeSigned(correction.toBytes(), "lehrcase/1 correction"));
    digests.put(ask.digest(), toBeSigned(ask.toBytes(), "lehrcase/1 ask"));
    for (var digest : digests.entrySet()) {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(digest.getValue());
      assertThat(Octets.of(hash).slice(0, 16)).isEqualTo(digest.getKey());
    }
  }

  @Test
  void aStatementHasTheFieldsOfTheDocument() {
    CBORObject fields = payload(shop.statement.toBytes());
    Statement.Terms terms = shop.statement.terms();
    assertThat(octets(fields.get(1))).isEqualTo(shop.root.publicKey().octets());
    assertThat(octets(fields.get(2))).isEqualTo(terms.key().octets());
    assertThat(fields.get(3).AsInt32Value()).isEqualTo(terms.serial());
    assertThat(fields.get(4).AsInt32Value()).isZero();
    assertThat(fields.get(5).AsString()).isEqualTo("Kiln & Kelp");
    assertThat(fields.get(6).size()).isEqualTo(1);
    assertThat(fields.get(6).get(0).GetByteString()).hasSize(16);
  }

  @Test
  void aLicenseHasTheFieldsOfTheDocument() {
    CBORObject fields = payload(license.toBytes());
    LicenseTerms terms = license.terms();
    assertThat(fields.get(1).GetByteString()).isEqualTo(shop.statement.toBytes());
    assertThat(octets(fields.get(2))).isEqualTo(terms.license().octets());
    assertThat(fields.get(3).AsInt32Value()).isEqualTo(terms.issue().epoch());
    assertThat(fields.get(4).AsInt32Value()).isEqualTo(terms.issue().number());
    assertThat(fields.get(5).AsString()).isEqualTo(terms.name());
    assertThat(fields.get(6).get(0).AsString()).isEqualTo("brush");
    assertThat(fields.get(6).get(1).AsString()).isEqualTo("depth");
    assertThat(fields.get(7).AsInt32Value()).isEqualTo(terms.allowance().places());
    assertThat(fields.get(8).AsInt32Value()).isEqualTo(terms.allowance().moves());
    assertThat(fields.get(9).AsString()).isEqualTo("2026-03-14");
    RowEntry row = license.rows().get(0);
    assertThat(octets(fields.get(10).get(0).get(0))).isEqualTo(row.edition().octets());
    assertThat(octets(fields.get(10).get(0).get(1))).isEqualTo(row.salt());
    assertThat(octets(fields.get(10).get(0).get(2))).isEqualTo(row.row());
  }

  @Test
  void aCardHasTheFieldsOfTheDocument() {
    CBORObject fields = payload(card.toBytes());
    assertThat(octets(fields.get(1))).isEqualTo(shop.license.octets());
    assertThat(octets(fields.get(2))).isEqualTo(card.sealPublicKey());
    assertThat(octets(fields.get(3))).isEqualTo(card.verifyKey().octets());
    assertThat(octets(fields.get(4))).isEqualTo(shop.place.octets());
    assertThat(fields.get(5).isNull()).isTrue();
  }

  @Test
  void aCardWithoutALicenseHasThreeNulls() {
    CBORObject fields = payload(LaptopCard.make(shop.seed, LaptopCard.About.NOTHING).toBytes());
    assertThat(List.of(fields.get(1), fields.get(4), fields.get(5))).allMatch(CBORObject::isNull);
  }

  @Test
  void aLetterHasTheFieldsOfTheDocument() {
    CBORObject fields = payload(letter.toBytes());
    assertThat(octets(fields.get(1))).isEqualTo(card.digest());
    assertThat(octets(fields.get(2))).isEqualTo(shop.place.octets());
    assertThat(fields.get(3).AsInt32Value()).isEqualTo(1);
    assertThat(fields.get(4).AsInt32Value()).isEqualTo(3);
    assertThat(fields.get(5).GetByteString()).hasSize(32);
    assertThat(fields.get(6).GetByteString()).hasSize(80);
    assertThat(octets(fields.get(7))).isEqualTo(shop.placeKeys().check(shop.place));
  }

  @Test
  void aFrontPageHasTheFieldsOfTheDocument() {
    CBORObject fields = payload(front.toBytes());
    FrontPageFacts facts = front.facts();
    assertThat(fields.get(1).GetByteString()).isEqualTo(shop.statement.toBytes());
    assertThat(octets(fields.get(2))).isEqualTo(shop.edition.octets());
    assertThat(fields.get(3).AsString()).isEqualTo("brush");
    assertThat(fields.get(4).AsInt32Value()).isZero();
    assertThat(fields.get(5).AsInt32Value()).isEqualTo(1);
    assertThat(fields.get(6).AsString()).isEqualTo("Brush");
    assertThat(fields.get(7).AsString()).isEqualTo("Six sheets.");
    assertThat(fields.get(8).AsString()).isEqualTo("shop.invalid");
    assertThat(octets(fields.get(9))).isEqualTo(facts.seal().address().octets());
    assertThat(fields.get(10).AsInt64Value()).isEqualTo(facts.seal().sealedBytes());
    assertThat(octets(fields.get(11))).isEqualTo(shop.key.check(shop.edition));
    assertThat(octets(fields.get(12))).isEqualTo(shop.secret.closingKey(0).check());
    assertThat(octets(fields.get(13))).isEqualTo(facts.seal().closingRow());
    CBORObject outline = fields.get(14).get(0);
    assertThat(outline.get(0).AsInt32Value()).isEqualTo(1);
    assertThat(outline.get(1).AsString()).isEqualTo("Far water");
    assertThat(outline.get(2).AsBoolean()).isTrue();
    PartEntry part = facts.parts().get(0);
    assertThat(fields.get(15).get(0).get(0).AsInt32Value()).isEqualTo(part.folder());
    assertThat(octets(fields.get(15).get(0).get(1))).isEqualTo(part.address().octets());
    assertThat(fields.get(15).get(0).get(2).AsInt64Value()).isEqualTo(part.sealedBytes());
    assertThat(fields.get(15).get(0).get(3).AsInt32Value()).isEqualTo(part.rendition().code());
    assertLesson(fields.get(16).get(0), shop.lesson());
  }

  @Test
  void theContentsHaveTheFieldsOfTheDocument() {
    Contents contents = shop.contents();
    CBORObject fields = CBORObject.DecodeFromBytes(contents.encode());
    assertThat(fields.size()).isEqualTo(7);
    assertThat(octets(fields.get(1))).isEqualTo(contents.edition().octets());
    assertThat(fields.get(2).AsString()).isEqualTo("brush");
    assertThat(fields.get(3).AsString()).isEqualTo("Brush");
    assertThat(fields.get(4).AsString()).isEqualTo("2026-03-14");
    assertThat(fields.get(5).AsInt32Value()).isEqualTo(1 << 3);
    assertLesson(fields.get(6).get(0), contents.lessons().get(0));
    assertThat(fields.EncodeToBytes()).isEqualTo(contents.encode());
  }

  private static void assertLesson(CBORObject fields, Lesson lesson) {
    assertThat(fields.size()).isEqualTo(9);
    assertThat(octets(fields.get(0))).isEqualTo(lesson.id().octets());
    assertThat(fields.get(1).AsInt32Value()).isEqualTo(lesson.number());
    assertThat(fields.get(2).AsInt32Value()).isEqualTo(lesson.folder());
    assertThat(fields.get(3).AsString()).isEqualTo(lesson.title());
    assertThat(fields.get(4).AsString()).isEqualTo(lesson.summary());
    assertThat(fields.get(5).AsBoolean()).isTrue();
    assertThat(fields.get(6).isNull()).isTrue();
    CBORObject asset = fields.get(7).get(0);
    assertThat(asset.size()).isEqualTo(8);
    assertThat(octets(asset.get(0))).isEqualTo(lesson.assets().get(0).id().octets());
    assertThat(asset.get(1).AsInt32Value()).isZero();
    assertThat(asset.get(2).AsInt32Value()).isEqualTo(1);
    assertThat(asset.get(3).AsString()).isEqualTo("far water.mp4");
    assertThat(asset.get(4).AsString()).isEqualTo("video/mp4");
    assertThat(asset.get(6).AsInt64Value()).isEqualTo(70_000);
    assertThat(asset.get(7).get(0).get(1).GetByteString()).hasSize(32);
    CBORObject moment = fields.get(8).get(0);
    assertThat(moment.get(0).AsInt32Value()).isEqualTo(12_400);
    assertThat(moment.get(1).AsString()).isEqualTo("second wash");
    assertThat(moment.get(2).AsInt32Value()).isEqualTo(1);
    assertThat(octets(moment.get(3))).isEqualTo(lesson.assets().get(0).id().octets());
    assertThat(moment.get(4).AsInt32Value()).isEqualTo(3);
  }

  @Test
  void aKeysIndexHasTheFieldsOfTheDocumentAndTheHashOfItsChunk() throws Exception {
    CBORObject fields = payload(index);
    assertThat(octets(fields.get(2))).isEqualTo(shop.edition.octets());
    assertThat(fields.get(3).GetByteString()).hasSize(16);
    assertThat(fields.get(4).AsInt32Value()).isEqualTo(1);
    assertThat(fields.get(5).GetByteString()).hasSize(16);
    assertThat(fields.get(6).AsInt32Value()).isEqualTo(64);
    byte[] chunk = FoundFile.read(empty.resolve("keys").resolve("0000"), 64 * 48);
    CBORObject entry = fields.get(7).get(0);
    assertThat(octets(entry.get(0))).isEqualTo(Octets.of(chunk).slice(0, 8));
    assertThat(entry.get(1).GetByteString())
        .isEqualTo(MessageDigest.getInstance("SHA-256").digest(chunk));
  }

  @Test
  void aCorrectionHoldsAWholePartOfItsKind() {
    CBORObject fields = payload(correction.toBytes());
    assertThat(octets(fields.get(2))).isEqualTo(shop.edition.octets());
    byte[] part = fields.get(3).GetByteString();
    assertThat(new String(part, 0, 8, StandardCharsets.US_ASCII)).isEqualTo("LEHRCASE");
    assertThat(part[9]).isEqualTo((byte) 3);
  }

  @Test
  void aMoveLinkIsReadAndVerifiedByTheSameRules() throws Exception {
    MoveLink link =
        MoveLink.issue(MoveLink.Position.after(letter), ask, shop.placeKeys(), shop.seed);
    VerifyKey from = card.verifyKey();
    assertThat(platformVerifies(link.toBytes(), "lehrcase/1 link", from.octets().toBytes()))
        .isTrue();
    CBORObject fields = payload(link.toBytes());
    assertThat(fields.size()).isEqualTo(7);
    assertThat(octets(fields.get(1))).isEqualTo(letter.digest());
    assertThat(octets(fields.get(2))).isEqualTo(ask.verifyKey().octets());
    assertThat(fields.get(3).AsInt32Value()).isEqualTo(1);
    assertThat(fields.get(4).AsInt32Value()).isEqualTo(1);
    assertThat(fields.get(5).GetByteString()).hasSize(32);
    assertThat(fields.get(6).GetByteString()).hasSize(80);
  }
}
