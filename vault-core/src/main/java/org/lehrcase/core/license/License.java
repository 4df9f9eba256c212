package org.lehrcase.core.license;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyRow;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * What a buyer owns: {@code [1, statement, license, epoch, issue, name, [series…], places, moves,
 * day, [[edition, salt, row]…]]}, signed by the statement's key. A verified value; immutable. It
 * holds no secret: its rows open nothing without the keys of a letter.
 */
public final class License {
  /** Most series that one license names. */
  public static final int MAX_SERIES = 100;

  /** Most key rows that one license carries. */
  public static final int MAX_ROWS = 600;

  /** Longest series id in characters. */
  public static final int SERIES_CHARS = 40;

  private static final int FIELDS = 11;

  private final Octets message;
  private final Octets digest;
  private final Statement statement;
  private final LicenseTerms terms;
  private final List<RowEntry> rows;

  private License(
      byte[] message,
      Verified verified,
      Statement statement,
      LicenseTerms terms,
      List<RowEntry> rows) {
    this.message = Octets.of(message);
    this.digest = verified.digest16();
    this.statement = statement;
    this.terms = terms;
    this.rows = List.copyOf(rows);
  }

  /**
   * Signs a license.
   *
   * @param terms what the buyer owns
   * @param rows a key row for every edition that is covered at this moment
   * @param signer a desk or issue key with the root's word for it
   * @return the license
   * @throws VaultException if the terms break a rule of the format
   */
  public static License issue(LicenseTerms terms, List<RowEntry> rows, DeskSigner signer)
      throws VaultException {
    Statement statement = signer.statement();
    CborWriter payload = new CborWriter().array(FIELDS).uint(1).bytes(statement.toBytes());
    terms.write(payload);
    payload.array(rows.size());
    for (RowEntry row : rows) {
      payload.array(3).bytes(row.edition().octets()).bytes(row.salt()).bytes(row.row());
    }
    byte[] message = SignedMessage.sign(MessageType.LICENSE, payload.toBytes(), signer.key());
    return verify(message, TrustedRoots.pinned(statement.root()));
  }

  /**
   * Verifies a license.
   *
   * @param message the signed message
   * @param roots which shops are accepted
   * @return the license
   * @throws VaultException.Tampered if a signature fails or the shop is not accepted
   * @throws VaultException if the form is not exact
   */
  public static License verify(byte[] message, TrustedRoots roots) throws VaultException {
    Verified verified =
        SignedMessage.verifySelf(MessageType.LICENSE, message, payload -> signer(payload, roots));
    CborReader fields = verified.fields(FIELDS);
    Statement statement = statement(fields, roots);
    LicenseTerms terms = LicenseTerms.read(fields);
    List<RowEntry> rows = rows(fields);
    fields.end();
    return new License(message, verified, statement, terms, rows);
  }

  private static VerifyKey signer(byte[] payload, TrustedRoots roots) throws VaultException {
    return statement(Verified.fields(payload, FIELDS), roots).licenseKey();
  }

  private static Statement statement(CborReader fields, TrustedRoots roots) throws VaultException {
    return Statement.verify(fields.bytes(MessageType.STATEMENT.maxBytes()), roots);
  }

  private static List<RowEntry> rows(CborReader fields) throws VaultException {
    int count = fields.array(MAX_ROWS);
    List<RowEntry> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      fields.arrayOf(3);
      EditionId edition = new EditionId(fields.octets(EditionId.BYTES));
      Octets salt = fields.octets(RowEntry.SALT_BYTES);
      rows.add(new RowEntry(edition, salt, fields.octets(KeyRow.BYTES)));
    }
    return rows;
  }

  /**
   * Opens an edition with a key row of this license.
   *
   * @param edition the edition
   * @param keys the keys of a place of this license
   * @return the edition's key and the keys to keep; empty if no row fits
   * @throws VaultException.Tampered if a row has the right tag and does not open
   */
  public Optional<OpenedRow> open(EditionId edition, PlaceKeys keys) throws VaultException {
    for (RowEntry entry : rows) {
      if (entry.edition().equals(edition)) {
        Optional<OpenedRow> opened = openWithSalt(edition, entry.salt(), keys);
        if (opened.isPresent()) {
          return opened;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<OpenedRow> openWithSalt(EditionId edition, Octets salt, PlaceKeys keys)
      throws VaultException {
    Map<Octets, Octets> byTag = new HashMap<>();
    for (RowEntry entry : rows) {
      if (entry.edition().equals(edition) && entry.salt().equals(salt)) {
        byTag.put(entry.row().slice(0, KeyRow.TAG_BYTES), entry.row());
      }
    }
    try {
      return new RowSearch(edition, salt, tag -> Optional.ofNullable(byTag.get(tag))).find(keys);
    } catch (IOException e) {
      throw new UncheckedIOException("rows in memory cannot fail to be read", e);
    }
  }

  /** Returns what the buyer owns. */
  public LicenseTerms terms() {
    return terms;
  }

  /** Returns the license's id. */
  public LicenseId id() {
    return terms.license();
  }

  /** Returns the root's word for the signer. */
  public Statement statement() {
    return statement;
  }

  /** Returns the key rows. */
  public List<RowEntry> rows() {
    return rows;
  }

  /** Returns the digest of the signed bytes (16 bytes). */
  public Octets digest() {
    return digest;
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "License[" + terms.license() + ", issue " + terms.issue().number() + "]";
  }
}
