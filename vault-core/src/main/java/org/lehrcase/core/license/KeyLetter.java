package org.lehrcase.core.license;

import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
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
 * The desk's answer to a card: {@code [1, card digest, place, generation, moves, enc, ct, check]},
 * signed by the desk key; its keys open only with the seed of that card. A verified value;
 * immutable.
 */
public final class KeyLetter {
  /** Most moves that a letter can allow. */
  public static final int MAX_MOVES = 23;

  private static final int FIELDS = 8;
  private static final String INFO = "lehrcase/1 letter seal";

  private final Octets message;
  private final Verified verified;
  private final Octets cardDigest;
  private final Grant grant;
  private final SealedKeys sealed;
  private final Octets check;

  private KeyLetter(byte[] message, Verified verified) throws VaultException {
    CborReader fields = verified.fields(FIELDS);
    this.cardDigest = fields.octets(16);
    PlaceId place = new PlaceId(fields.octets(PlaceId.BYTES));
    int generation = fields.smallUint(LicenseKey.LAST_GENERATION);
    this.grant = new Grant(place, generation, fields.smallUint(MAX_MOVES));
    this.sealed = SealedKeys.read(fields);
    this.check = fields.octets(PlaceKeys.CHECK_BYTES);
    fields.end();
    this.message = Octets.of(message);
    this.verified = verified;
  }

  /**
   * What a letter gives.
   *
   * @param place the place
   * @param generation the generation of the license key inside
   * @param moves how often the place may move without the desk, 0 to {@link #MAX_MOVES}
   */
  public record Grant(PlaceId place, int generation, int moves) {}

  /**
   * Answers a card. Each call seals anew: the desk stores the bytes of the first answer and sends
   * those again when the same card comes again.
   *
   * @param card the card
   * @param place the place that the card's laptop gets
   * @param moves how often the place may move
   * @param keys the license key and the place's secret
   * @param desk the desk key
   * @return the letter
   * @throws VaultException.Malformed if the card's public key cannot be used
   */
  public static KeyLetter issue(
      LaptopCard card, PlaceId place, int moves, PlaceKeys keys, SigningKey desk)
      throws VaultException {
    Grant grant = new Grant(place, keys.licenseKey().generation(), moves);
    byte[] info = info(card.digest(), grant, desk.publicKey());
    SealedKeys sealed = SealedKeys.seal(card.sealPublicKey(), info, keys);
    CborWriter payload =
        new CborWriter()
            .array(FIELDS)
            .uint(1)
            .bytes(card.digest())
            .bytes(place.octets())
            .uint(grant.generation())
            .uint(moves);
    sealed.write(payload);
    payload.bytes(keys.check(place));
    byte[] message = SignedMessage.sign(MessageType.LETTER, payload.toBytes(), desk);
    return verify(message, desk.publicKey());
  }

  /**
   * Verifies a letter.
   *
   * @param message the signed message
   * @param desk the desk key, as a statement names it
   * @return the letter
   * @throws VaultException.Tampered if this key did not sign it as a letter
   * @throws VaultException if the form is not exact
   */
  public static KeyLetter verify(byte[] message, VerifyKey desk) throws VaultException {
    return new KeyLetter(message, SignedMessage.verify(MessageType.LETTER, message, desk));
  }

  /**
   * Verifies a letter by any of the desk keys that a laptop knows.
   *
   * @param message the signed message
   * @param desks desk keys of accepted statements
   * @return the letter
   * @throws VaultException.Tampered if none of them signed it as a letter
   * @throws VaultException if the form is not exact
   */
  public static KeyLetter verifyAny(byte[] message, List<VerifyKey> desks) throws VaultException {
    for (VerifyKey desk : desks) {
      try {
        return verify(message, desk);
      } catch (VaultException.Tampered e) {
        continue;
      }
    }
    throw new VaultException.Tampered(
        "no shop that this laptop knows has signed this key letter; bring in the license first");
  }

  /**
   * Opens the letter with the seed of the card that it answers.
   *
   * @param card the card
   * @param seed the card's seed
   * @return the place's keys
   * @throws VaultException.WrongLaptop if the letter answers another card
   * @throws VaultException.Tampered if the keys do not open or are not those of the place
   */
  public PlaceKeys open(LaptopCard card, PlaceSeed seed) throws VaultException {
    if (!cardDigest.equals(card.digest()) || !card.isOf(seed)) {
      throw new VaultException.WrongLaptop(
          "this key letter answers another laptop card; bring it to the laptop that made that"
              + " card");
    }
    PlaceKeys keys =
        sealed.open(seed, info(cardDigest, grant, verified.signer()), grant.generation());
    requireCheck(keys);
    return keys;
  }

  /**
   * Checks keys of this or a later generation against the value that the letter was signed with.
   */
  void requireCheck(PlaceKeys keys) throws VaultException.Tampered {
    try (LicenseKey first = keys.licenseKey().at(grant.generation())) {
      PlaceKeys asIssued = new PlaceKeys(first, keys.placeSecret());
      if (!asIssued.check(grant.place()).equals(check)) {
        throw new VaultException.Tampered("the keys in this letter are not those of its place");
      }
    }
  }

  /**
   * Says whether this letter gives the place of these keys, so that a desk which lost its book can
   * tell whose letter it is.
   *
   * @param keys keys derived for the place, of the letter's generation or a later one
   * @return whether the letter was signed for them
   */
  public boolean isFor(PlaceKeys keys) {
    try {
      requireCheck(keys);
      return true;
    } catch (VaultException.Tampered e) {
      return false;
    }
  }

  private static byte[] info(Octets cardDigest, Grant grant, VerifyKey desk) {
    return new SealInfo(INFO)
        .add(cardDigest)
        .add(grant.place().octets())
        .add(grant.generation())
        .add(desk.octets())
        .toBytes();
  }

  /** Returns the digest of the card that is answered (16 bytes). */
  public Octets cardDigest() {
    return cardDigest;
  }

  /** Returns what the letter gives (place, generation, moves). */
  public Grant grant() {
    return grant;
  }

  /** Returns the desk key that signed. */
  public VerifyKey desk() {
    return verified.signer();
  }

  /** Returns the digest of the signed bytes, which the first link of a move names (16 bytes). */
  public Octets digest() {
    return verified.digest16();
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "KeyLetter[place " + grant.place() + ", generation " + grant.generation() + "]";
  }
}
