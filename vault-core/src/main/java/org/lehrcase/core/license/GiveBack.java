package org.lehrcase.core.license;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
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
 * A laptop gives its place back: {@code [1, card, letter digest, [link…], place]}, signed by the
 * laptop that had it last. Card and links say which key that is, so nobody else can make one. A
 * verified value; immutable. It names a place for good: the same slip again says nothing new.
 */
public final class GiveBack {
  private static final int FIELDS = 5;
  private static final int DIGEST_BYTES = 16;

  private final Octets message;
  private final Chain chain;
  private final PlaceId place;

  private GiveBack(byte[] message, Chain chain, PlaceId place) {
    this.message = Octets.of(message);
    this.chain = chain;
    this.place = place;
  }

  /**
   * How the place came to the laptop.
   *
   * @param card the card at its head
   * @param letterDigest digest of the letter that answered it, 16 bytes
   * @param links one for each move, oldest first
   */
  public record Chain(LaptopCard card, Octets letterDigest, List<MoveLink> links) {
    /** Copies the list. */
    public Chain {
      links = List.copyOf(links);
    }

    private VerifyKey last() {
      return links.isEmpty() ? card.verifyKey() : links.get(links.size() - 1).to();
    }
  }

  /**
   * Makes the slip of a laptop that gives up its keys in the same step.
   *
   * @param chain how the place came there
   * @param place the place
   * @param seed the seed of the last card or ask of the chain
   * @return the slip
   * @throws VaultException if the seed is not that of the chain's last laptop
   */
  public static GiveBack issue(Chain chain, PlaceId place, PlaceSeed seed) throws VaultException {
    CborWriter payload =
        new CborWriter()
            .array(FIELDS)
            .uint(1)
            .bytes(Octets.of(chain.card().toBytes()))
            .bytes(chain.letterDigest())
            .array(chain.links().size());
    chain.links().forEach(link -> payload.bytes(Octets.of(link.toBytes())));
    payload.bytes(place.octets());
    try (SigningKey signer = seed.signingKey()) {
      return verify(SignedMessage.sign(MessageType.GIVE_BACK, payload.toBytes(), signer));
    }
  }

  /**
   * Verifies a slip by the chain inside it.
   *
   * @param message the signed message
   * @return the slip
   * @throws VaultException.Tampered if the chain does not hold, or its last laptop did not sign
   * @throws VaultException if the form is not exact
   */
  public static GiveBack verify(byte[] message) throws VaultException {
    Verified verified =
        SignedMessage.verifySelf(
            MessageType.GIVE_BACK,
            message,
            payload -> readChain(Verified.fields(payload, FIELDS)).last());
    CborReader fields = verified.fields(FIELDS);
    Chain chain = readChain(fields);
    PlaceId place = new PlaceId(fields.octets(PlaceId.BYTES));
    fields.end();
    return new GiveBack(message, chain, place);
  }

  private static Chain readChain(CborReader fields) throws VaultException {
    LaptopCard card = LaptopCard.verify(fields.bytes(MessageType.CARD.maxBytes()));
    Octets letter = fields.octets(DIGEST_BYTES);
    int count = fields.array(KeyLetter.MAX_MOVES);
    List<MoveLink> links = new ArrayList<>();
    VerifyKey from = card.verifyKey();
    MoveLink.Position next = new MoveLink.Position(letter, 1);
    for (int i = 0; i < count; i++) {
      MoveLink link = MoveLink.verify(fields.bytes(MessageType.LINK.maxBytes()), from, next);
      links.add(link);
      from = link.to();
      next = MoveLink.Position.after(link);
    }
    return new Chain(card, letter, links);
  }

  /** Returns how the place came to the laptop that gives it back. */
  public Chain chain() {
    return chain;
  }

  /** Returns the place that is free again. */
  public PlaceId place() {
    return place;
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "GiveBack[" + place + "]";
  }
}
