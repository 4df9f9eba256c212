package org.lehrcase.core.license;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * One laptop passes its place to another: {@code [1, previous, to, generation, hop, enc, ct]},
 * signed by the laptop before. A verified value; immutable. It stands in a chain that begins with a
 * key letter; {@link Position} says where.
 */
public final class MoveLink {
  private static final int FIELDS = 7;
  private static final int DIGEST_BYTES = 16;
  private static final String INFO = "lehrcase/1 link seal";

  private final Octets message;
  private final Verified verified;
  private final Position position;
  private final VerifyKey to;
  private final int generation;
  private final SealedKeys sealed;

  private MoveLink(byte[] message, Verified verified, Position expected) throws VaultException {
    CborReader fields = verified.fields(FIELDS);
    Octets previous = fields.octets(DIGEST_BYTES);
    this.to = new VerifyKey(fields.octets(VerifyKey.BYTES));
    this.generation = fields.smallUint(LicenseKey.LAST_GENERATION);
    this.position = new Position(previous, fields.smallUint(KeyLetter.MAX_MOVES));
    this.sealed = SealedKeys.read(fields);
    fields.end();
    if (!position.equals(expected)) {
      throw new VaultException.Tampered("this move does not follow on the one before it");
    }
    this.message = Octets.of(message);
    this.verified = verified;
  }

  /**
   * Where a link stands.
   *
   * @param previous digest of the letter, for the first link, or of the link before, 16 bytes
   * @param hop 1 for the first link
   */
  public record Position(Octets previous, int hop) {
    /**
     * The place of the first link after a letter.
     *
     * @param letter the letter
     * @return hop 1
     */
    public static Position after(KeyLetter letter) {
      return new Position(letter.digest(), 1);
    }

    /**
     * The place of the link after another one.
     *
     * @param link the link before
     * @return the next hop
     */
    public static Position after(MoveLink link) {
      return new Position(link.digest(), link.position().hop() + 1);
    }
  }

  /**
   * Passes a place on. Each call seals anew: the old laptop stores the bytes and gives up its keys
   * in one step, and exports what it stored.
   *
   * @param position where the link stands
   * @param ask the new laptop's ask, compared by both people
   * @param keys the place's keys
   * @param from the seed that the old laptop received the place with
   * @return the link
   * @throws VaultException if the ask's public key cannot be used
   */
  public static MoveLink issue(Position position, MoveAsk ask, PlaceKeys keys, PlaceSeed from)
      throws VaultException {
    int generation = keys.licenseKey().generation();
    try (SigningKey signer = from.signingKey()) {
      byte[] info = info(position.previous(), signer.publicKey(), ask.verifyKey(), generation);
      SealedKeys sealed = SealedKeys.seal(ask.sealPublicKey(), info, keys);
      CborWriter payload =
          new CborWriter()
              .array(FIELDS)
              .uint(1)
              .bytes(position.previous())
              .bytes(ask.verifyKey().octets())
              .uint(generation)
              .uint(position.hop());
      sealed.write(payload);
      byte[] message = SignedMessage.sign(MessageType.LINK, payload.toBytes(), signer);
      return verify(message, signer.publicKey(), position);
    }
  }

  /**
   * Verifies a link.
   *
   * @param message the signed message
   * @param from the key of the laptop before: of the letter's card, or of the link before
   * @param expected where the link must stand
   * @return the link
   * @throws VaultException.Tampered if this key did not sign it, or it stands elsewhere
   * @throws VaultException if the form is not exact
   */
  public static MoveLink verify(byte[] message, VerifyKey from, Position expected)
      throws VaultException {
    return new MoveLink(message, SignedMessage.verify(MessageType.LINK, message, from), expected);
  }

  /**
   * Opens the link with the seed of the ask that it answers, and checks the keys against the letter
   * at the head of the chain.
   *
   * @param seed the ask's seed
   * @param letter the letter that the chain begins with
   * @return the place's keys
   * @throws VaultException.WrongLaptop if the link answers another ask
   * @throws VaultException.Tampered if the keys do not open or are not those of the letter's place
   */
  public PlaceKeys open(PlaceSeed seed, KeyLetter letter) throws VaultException {
    if (!seed.verifyKey().equals(to)) {
      throw new VaultException.WrongLaptop("this move is meant for another laptop");
    }
    if (generation < letter.grant().generation() || position.hop() > letter.grant().moves()) {
      throw new VaultException.Tampered("this move goes beyond what its key letter allows");
    }
    byte[] info = info(position.previous(), verified.signer(), to, generation);
    PlaceKeys keys = sealed.open(seed, info, generation);
    letter.requireCheck(keys);
    return keys;
  }

  private static byte[] info(Octets previous, VerifyKey from, VerifyKey to, int generation) {
    return new SealInfo(INFO)
        .add(previous)
        .add(from.octets())
        .add(to.octets())
        .add(generation)
        .toBytes();
  }

  /** Returns where the link stands. */
  public Position position() {
    return position;
  }

  /** Returns the key of the laptop that the place goes to, which would sign the next link. */
  public VerifyKey to() {
    return to;
  }

  /**
   * Returns the generation of the license key inside.
   *
   * @return 0 to {@link LicenseKey#LAST_GENERATION}
   */
  public int generation() {
    return generation;
  }

  /** Returns the digest of the signed bytes, which the next link names (16 bytes). */
  public Octets digest() {
    return verified.digest16();
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "MoveLink[hop " + position.hop() + ", generation " + generation + "]";
  }
}
