package org.lehrcase.core.license;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlainWords;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.Line;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * The root's word that a key may sign for a shop: {@code [1, root, key, serial, role, name, [front
 * page digest…]]}, signed by the root. A verified value; immutable.
 */
public final class Statement {
  /** Most front pages that one statement can keep good. */
  public static final int MAX_FRONT_PAGES = 1024;

  private static final int FIELDS = 7;
  private static final int DIGEST_BYTES = 16;
  private static final int WORDS = 5;

  private final Octets message;
  private final VerifyKey root;
  private final Terms terms;

  private Statement(byte[] message, VerifyKey root, Terms terms) {
    this.message = Octets.of(message);
    this.root = root;
    this.terms = terms;
  }

  /**
   * What the root says.
   *
   * @param key the key that may sign
   * @param serial 1 for a new shop; raised when a key is replaced
   * @param role what the key may sign
   * @param name the teacher's or shop's name
   * @param goodFrontPages digests (16 bytes) of front pages signed by an earlier key that stay good
   */
  public record Terms(
      VerifyKey key, int serial, SignerRole role, String name, List<Octets> goodFrontPages) {
    /** Copies the list. */
    public Terms {
      goodFrontPages = List.copyOf(goodFrontPages);
    }
  }

  /**
   * Signs a statement.
   *
   * @param terms what it says
   * @param root the root's signing key
   * @return the statement
   * @throws VaultException if the terms break a rule of the format, such as a name of two lines
   */
  public static Statement issue(Terms terms, SigningKey root) throws VaultException {
    CborWriter payload =
        new CborWriter()
            .array(FIELDS)
            .uint(1)
            .bytes(root.publicKey().octets())
            .bytes(terms.key().octets())
            .uint(terms.serial())
            .uint(terms.role().code())
            .text(terms.name())
            .array(terms.goodFrontPages().size());
    terms.goodFrontPages().forEach(payload::bytes);
    byte[] message = SignedMessage.sign(MessageType.STATEMENT, payload.toBytes(), root);
    return verify(message, TrustedRoots.pinned(root.publicKey()));
  }

  /**
   * Verifies a statement by the root key inside it.
   *
   * @param message the signed message
   * @param roots which roots are accepted
   * @return the statement
   * @throws VaultException.Tampered if the signature fails or the root is not accepted
   * @throws VaultException if the form is not exact
   */
  public static Statement verify(byte[] message, TrustedRoots roots) throws VaultException {
    Verified verified =
        SignedMessage.verifySelf(MessageType.STATEMENT, message, payload -> root(payload, roots));
    CborReader fields = verified.fields(FIELDS);
    fields.octets(VerifyKey.BYTES);
    Terms terms = terms(fields);
    fields.end();
    return new Statement(message, verified.signer(), terms);
  }

  private static VerifyKey root(byte[] payload, TrustedRoots roots) throws VaultException {
    CborReader fields = Verified.fields(payload, FIELDS);
    VerifyKey root = new VerifyKey(fields.octets(VerifyKey.BYTES));
    if (!roots.accepts(root)) {
      throw new VaultException.Tampered(
          "this is signed by another shop than the one that this laptop knows under its name");
    }
    return root;
  }

  private static Terms terms(CborReader fields) throws VaultException {
    VerifyKey key = new VerifyKey(fields.octets(VerifyKey.BYTES));
    int serial = fields.smallUint(Integer.MAX_VALUE);
    SignerRole role = SignerRole.ofCode(fields.smallUint(Integer.MAX_VALUE));
    String name = fields.line(Line.NAME_CHARS);
    int count = fields.array(MAX_FRONT_PAGES);
    List<Octets> good = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      good.add(fields.octets(DIGEST_BYTES));
    }
    return new Terms(key, serial, role, name, good);
  }

  /**
   * Checks that the key may sign what a desk signs.
   *
   * @return the key
   * @throws VaultException.Tampered if it may sign licenses only
   */
  public VerifyKey deskKey() throws VaultException.Tampered {
    if (terms.role() != SignerRole.DESK) {
      throw new VaultException.Tampered("the key may sign licenses only, and this is none");
    }
    return terms.key();
  }

  /** Returns the key that may sign licenses, whatever its role. */
  public VerifyKey licenseKey() {
    return terms.key();
  }

  /** Returns the root that signed, which is the key to pin. */
  public VerifyKey root() {
    return root;
  }

  /** Returns what the root says. */
  public Terms terms() {
    return terms;
  }

  /** Returns five words of the root key's hash, for reading aloud at the first meeting. */
  public List<String> words() {
    return PlainWords.of(Octets.of(Sha256.of(root.octets().toBytes())), WORDS);
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "Statement[" + terms.name() + ", serial " + terms.serial() + "]";
  }
}
