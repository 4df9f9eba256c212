package org.lehrcase.core.license;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * What a laptop says about itself: {@code [1, license, x25519, ed25519, place, proof]}, signed by
 * its own key. Says nothing about the machine. A verified value; immutable. The signature proves
 * only that one laptop made the card, not whose laptop it is.
 */
public final class LaptopCard {
  private static final int FIELDS = 6;
  private static final int PROOF_BYTES = 16;

  private final Octets message;
  private final Octets digest;
  private final LaptopKeys keys;
  private final About about;
  private final Optional<Octets> proof;

  private LaptopCard(byte[] message, Verified verified) throws VaultException {
    CborReader fields = verified.fields(FIELDS);
    Optional<LicenseId> license = fields.octetsOrNull(LicenseId.BYTES).map(LicenseId::new);
    this.keys = LaptopKeys.read(fields);
    this.about = new About(license, fields.octetsOrNull(PlaceId.BYTES).map(PlaceId::new));
    this.proof = fields.octetsOrNull(PROOF_BYTES);
    fields.end();
    if (license.isEmpty() && (about.replaces().isPresent() || proof.isPresent())) {
      throw new VaultException.Malformed("a card without a license cannot name a place or a code");
    }
    this.message = Octets.of(message);
    this.digest = verified.digest16();
  }

  /**
   * What a card may name.
   *
   * @param license the license, if there is one already
   * @param replaces the place that this laptop replaces, if it replaces one
   */
  public record About(Optional<LicenseId> license, Optional<PlaceId> replaces) {
    /** A card made before the license exists. */
    public static final About NOTHING = new About(Optional.empty(), Optional.empty());

    /**
     * A card for a new place of a license.
     *
     * @param license the license
     * @return what the card names
     */
    public static About license(LicenseId license) {
      return new About(Optional.of(license), Optional.empty());
    }

    /**
     * A card that retires a place.
     *
     * @param license the license
     * @param place the place that the card replaces
     * @return what the card names
     */
    public static About replacing(LicenseId license, PlaceId place) {
      return new About(Optional.of(license), Optional.of(place));
    }
  }

  /**
   * Makes a card without a code.
   *
   * @param seed a fresh seed, kept before the card is shown
   * @param about what the card names
   * @return the card
   */
  public static LaptopCard make(PlaceSeed seed, About about) {
    return make(seed, about, Optional.empty());
  }

  /**
   * Makes a card that proves a paper letter's code.
   *
   * @param seed a fresh seed, kept before the card is shown
   * @param about what the card names; a license must be among it
   * @param code the typed code
   * @return the card
   */
  public static LaptopCard make(PlaceSeed seed, About about, PaperCode code) {
    byte[] labelled = labelled(LaptopKeys.of(seed), about);
    return make(seed, about, Optional.of(code.proof(about.license().orElseThrow(), labelled)));
  }

  private static LaptopCard make(PlaceSeed seed, About about, Optional<Octets> proof) {
    CborWriter payload = new CborWriter().array(FIELDS);
    writeUnproved(payload, LaptopKeys.of(seed), about);
    proof.ifPresentOrElse(payload::bytes, payload::nil);
    try (SigningKey key = seed.signingKey()) {
      return verify(SignedMessage.sign(MessageType.CARD, payload.toBytes(), key));
    } catch (VaultException e) {
      throw new IllegalArgumentException("a card without a license names a place", e);
    }
  }

  /**
   * Verifies a card by the key inside it.
   *
   * @param message the signed message
   * @return the card
   * @throws VaultException.Tampered if the signature fails
   * @throws VaultException if the form is not exact
   */
  public static LaptopCard verify(byte[] message) throws VaultException {
    return new LaptopCard(
        message, SignedMessage.verifySelf(MessageType.CARD, message, LaptopCard::ownKey));
  }

  private static VerifyKey ownKey(byte[] payload) throws VaultException {
    CborReader fields = Verified.fields(payload, FIELDS);
    fields.octetsOrNull(LicenseId.BYTES);
    return LaptopKeys.read(fields).verify();
  }

  private static void writeUnproved(CborWriter payload, LaptopKeys keys, About about) {
    payload.uint(1);
    about.license().ifPresentOrElse(id -> payload.bytes(id.octets()), payload::nil);
    keys.write(payload);
    about.replaces().ifPresentOrElse(id -> payload.bytes(id.octets()), payload::nil);
  }

  /** {@code label ‖ 00 ‖ the array without its proof}. */
  private static byte[] labelled(LaptopKeys keys, About about) {
    CborWriter array = new CborWriter().array(FIELDS - 1);
    writeUnproved(array, keys, about);
    ByteArrayOutputStream labelled = new ByteArrayOutputStream();
    labelled.writeBytes(MessageType.CARD.label().getBytes(StandardCharsets.US_ASCII));
    labelled.write(0);
    labelled.writeBytes(array.toBytes());
    return labelled.toByteArray();
  }

  /**
   * Says whether the card proves a code.
   *
   * @param code the code that the desk derives for the card's license
   * @return true only if the card names a license and carries the proof of this code
   */
  public boolean proves(PaperCode code) {
    if (about.license().isEmpty() || proof.isEmpty()) {
      return false;
    }
    return code.proof(about.license().get(), labelled(keys, about)).equals(proof.get());
  }

  /** Says whether the card carries the proof of some code. */
  public boolean hasProof() {
    return proof.isPresent();
  }

  /**
   * Says whether a seed made this card.
   *
   * @param seed a seed of this laptop
   * @return whether the card is of that seed
   */
  public boolean isOf(PlaceSeed seed) {
    return keys.equals(LaptopKeys.of(seed));
  }

  /** Returns the license that the card names, empty if it was made before there was one. */
  public Optional<LicenseId> license() {
    return about.license();
  }

  /** Returns the place that this laptop replaces, empty if it replaces none. */
  public Optional<PlaceId> replaces() {
    return about.replaces();
  }

  /** Returns the key that letters are sealed to (an X25519 public key, 32 bytes). */
  public Octets sealPublicKey() {
    return keys.seal();
  }

  /** Returns the key that signed the card and would sign a link. */
  public VerifyKey verifyKey() {
    return keys.verify();
  }

  /** Returns the digest of the signed bytes (16 bytes), which letters answer to. */
  public Octets digest() {
    return digest;
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "LaptopCard[" + digest + "]";
  }
}
