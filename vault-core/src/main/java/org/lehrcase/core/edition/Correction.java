package org.lehrcase.core.edition;

import java.security.SecureRandom;
import java.util.HexFormat;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartSealer;

/**
 * A signed note that corrects an edition already sold: {@code [1, statement, edition b16, sealed]}.
 * It travels as a small file in the edition folder or as text in a mail; its words are sealed, so
 * that only buyers read them. A verified value; immutable.
 */
public final class Correction {

  private static final int FIELDS = 4;
  private static final int MAX_SEALED_BYTES = 20 << 10;

  private final Octets message;
  private final Octets digest;
  private final Statement statement;
  private final EditionId edition;
  private final Octets sealed;

  private Correction(
      byte[] message, Octets digest, Statement statement, EditionId edition, byte[] sealed) {
    this.message = Octets.of(message);
    this.digest = digest;
    this.statement = statement;
    this.edition = edition;
    this.sealed = Octets.of(sealed);
  }

  /**
   * Seals the words of a correction for the buyers of an edition.
   *
   * @param note what it says
   * @param edition the edition it corrects
   * @param key the edition's key; not kept
   * @param random where salt and id come from
   * @return the bytes to sign
   */
  public static byte[] seal(
      CorrectionNote note, EditionId edition, EditionKey key, SecureRandom random) {
    byte[] clear = CorrectionCodec.encode(note);
    var header = PartHeader.single(PartKind.CORRECTION, AssetId.random(random), clear.length);
    try (PartKey correctionKey = key.correctionKey(edition)) {
      return new PartSealer(random).sealBytes(clear, header, correctionKey);
    }
  }

  /**
   * Signs a sealed correction.
   *
   * @param sealed what {@link #seal} gave
   * @param edition the edition it corrects
   * @param statement the root's word for the desk key
   * @param desk the key that the statement names
   * @throws VaultException if the statement does not name this key as a desk's
   */
  public static Correction sign(
      byte[] sealed, EditionId edition, Statement statement, SigningKey desk)
      throws VaultException {
    byte[] payload =
        new CborWriter()
            .array(FIELDS)
            .uint(1)
            .bytes(statement.toBytes())
            .bytes(edition.octets())
            .bytes(sealed)
            .toBytes();
    byte[] message = SignedMessage.sign(MessageType.CORRECTION, payload, desk);
    return verify(message, TrustedRoots.pinned(statement.root()));
  }

  /**
   * Verifies a correction by the statement inside it.
   *
   * @param message the signed message
   * @param roots which shops are accepted: for an edition, only its own
   * @throws VaultException.Tampered if a signature fails or the shop is not accepted
   * @throws VaultException if the form is not exact
   */
  public static Correction verify(byte[] message, TrustedRoots roots) throws VaultException {
    Verified verified =
        SignedMessage.verifySelf(MessageType.CORRECTION, message, p -> signer(p, roots));
    CborReader fields = verified.fields(FIELDS);
    Statement statement = readStatement(fields, roots);
    EditionId edition = new EditionId(fields.octets(EditionId.BYTES));
    byte[] sealed = fields.bytes(MAX_SEALED_BYTES);
    fields.end();
    return new Correction(message, verified.digest16(), statement, edition, sealed);
  }

  /**
   * Says whether bytes have the form of a correction, so that one that was changed on its way can
   * be called by its name. Proves nothing.
   */
  public static boolean looksLikeOne(byte[] message) {
    boolean[] looks = {false};
    try {
      SignedMessage.verifySelf(
          MessageType.CORRECTION,
          message,
          payload -> {
            CborReader fields = Verified.fields(payload, FIELDS);
            fields.bytes(MessageType.STATEMENT.maxBytes());
            fields.octets(EditionId.BYTES);
            fields.bytes(MAX_SEALED_BYTES);
            fields.end();
            looks[0] = true;
            throw new VaultException.Tampered("only looked at");
          });
    } catch (VaultException e) {
      return looks[0];
    }
    return looks[0];
  }

  private static VerifyKey signer(byte[] payload, TrustedRoots roots) throws VaultException {
    return readStatement(Verified.fields(payload, FIELDS), roots).deskKey();
  }

  private static Statement readStatement(CborReader fields, TrustedRoots roots)
      throws VaultException {
    return Statement.verify(fields.bytes(MessageType.STATEMENT.maxBytes()), roots);
  }

  /**
   * Opens the words.
   *
   * @param key the key of the edition it corrects
   * @throws VaultException.Tampered if the key is another edition's
   * @throws VaultException if the words are not exactly as the format says
   */
  public CorrectionNote open(EditionKey key) throws VaultException {
    byte[] bytes = sealed.toBytes();
    PartHeader found = PartHeader.parse(bytes);
    if (found.kind() != PartKind.CORRECTION || found.plainBytes() > CorrectionCodec.MAX_BYTES) {
      throw new VaultException.Malformed("the words of a correction are no such part");
    }
    var expected =
        new PartHeader(
            found.kind(), found.asset(), found.plainBytes(), found.log2SegmentBytes(), 0, 1);
    try (PartKey correctionKey = key.correctionKey(edition)) {
      return CorrectionCodec.decode(PartSealer.openBytes(bytes, correctionKey, expected));
    }
  }

  /** Returns the edition it corrects. */
  public EditionId edition() {
    return edition;
  }

  /** Returns the root's word for the key that signed. */
  public Statement statement() {
    return statement;
  }

  /** Returns the name of this correction, 16 bytes; the same words sealed again have another. */
  public Octets digest() {
    return digest;
  }

  /** Returns the name of its file in the folder of corrections: SHA-256 of the message, in hex. */
  public String fileName() {
    return nameOf(message.toBytes());
  }

  /** Returns the name that a message would have as a file, whether it verifies or not. */
  public static String nameOf(byte[] message) {
    return HexFormat.of().formatHex(Sha256.of(message));
  }

  /** Returns the signed message. */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "Correction[" + digest + " of " + edition + "]";
  }
}
