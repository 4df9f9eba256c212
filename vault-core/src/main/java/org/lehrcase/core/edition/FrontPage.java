package org.lehrcase.core.edition;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * The signed, public front of an edition. A verified value: there is no way to have one whose
 * signature was not checked. Immutable.
 */
public final class FrontPage {

  private final Octets message;
  private final Verified verified;
  private final Statement statement;
  private final FrontPageFacts facts;
  private final Map<PartAddress, PartEntry> parts = new HashMap<>();

  private FrontPage(byte[] message, Verified verified, Statement statement, FrontPageFacts facts) {
    this.message = Octets.of(message);
    this.verified = verified;
    this.statement = statement;
    this.facts = facts;
    facts.parts().forEach(p -> parts.put(p.address(), p));
  }

  /**
   * Signs a front page.
   *
   * @param facts what it says
   * @param statement the root's word for the desk key
   * @param desk the key that the statement names
   * @return the front page
   * @throws VaultException if the statement does not name this key as a desk's
   * @throws IllegalArgumentException if the page would be longer than 1 MiB
   */
  public static FrontPage sign(FrontPageFacts facts, Statement statement, SigningKey desk)
      throws VaultException {
    var payload = new CborWriter();
    payload.array(FrontPageCodec.FIELDS).uint(1).bytes(statement.toBytes());
    FrontPageCodec.write(payload, facts);
    byte[] message = SignedMessage.sign(MessageType.FRONT_PAGE, payload.toBytes(), desk);
    return verify(message, TrustedRoots.pinned(statement.root()));
  }

  /**
   * Verifies a front page: the root in its statement must be accepted, the statement must be signed
   * by it and name a desk key, and that key must have signed the page.
   *
   * @param message the bytes of {@code lehrcase.front}
   * @param roots which shops are accepted
   * @return the front page
   * @throws VaultException.Tampered if a signature fails or the shop is not accepted
   * @throws VaultException if anything is not exactly as the format says
   */
  public static FrontPage verify(byte[] message, TrustedRoots roots) throws VaultException {
    Verified verified =
        SignedMessage.verifySelf(MessageType.FRONT_PAGE, message, p -> signer(p, roots));
    CborReader fields = verified.fields(FrontPageCodec.FIELDS);
    Statement statement = readStatement(fields, roots);
    FrontPageFacts facts = FrontPageCodec.read(fields);
    fields.end();
    return new FrontPage(message, verified, statement, facts);
  }

  private static VerifyKey signer(byte[] payload, TrustedRoots roots) throws VaultException {
    return readStatement(Verified.fields(payload, FrontPageCodec.FIELDS), roots).deskKey();
  }

  private static Statement readStatement(CborReader fields, TrustedRoots roots)
      throws VaultException {
    return Statement.verify(fields.bytes(MessageType.STATEMENT.maxBytes()), roots);
  }

  /** Returns everything that it says. */
  public FrontPageFacts facts() {
    return facts;
  }

  /** Returns what the edition is called. */
  public EditionTitle title() {
    return facts.title();
  }

  /** Returns the edition's id. */
  public EditionId edition() {
    return facts.title().edition();
  }

  /** Returns the root's word for the key that signed. */
  public Statement statement() {
    return statement;
  }

  /** Finds the entry of a part; empty if the edition does not have it. */
  public Optional<PartEntry> part(PartAddress address) {
    return Optional.ofNullable(parts.get(address));
  }

  /** Returns the parts of one folder, in the order of the page. */
  public List<PartEntry> parts(int folder) {
    return facts.parts().stream().filter(p -> p.folder() == folder).toList();
  }

  /**
   * Returns the name of this front page: the first 16 bytes of SHA-256 over what is signed. The
   * keys file is bound to it.
   */
  public Octets digest() {
    return verified.digest16();
  }

  /**
   * Says whether the page is good for a reader who has seen a newer statement of the same root: it
   * is if its own statement is no older, or if the newer one lists it among those that stay good.
   *
   * <p>What a reader accepted before stays accepted; this is for pages that are new to it.
   */
  public boolean isGoodUnder(Statement newest) {
    return statement.terms().serial() >= newest.terms().serial()
        || newest.terms().goodFrontPages().contains(digest());
  }

  /** Returns the signed message, as it stands in {@code lehrcase.front}. */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "FrontPage[" + title().series() + " " + title().number() + ", " + edition() + "]";
  }
}
