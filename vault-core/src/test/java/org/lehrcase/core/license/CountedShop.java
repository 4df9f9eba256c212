package org.lehrcase.core.license;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;

/** A whole shop made from one number: its keys are obviously no secrets. */
final class CountedShop {
  final SecureRandom random;
  final SigningKey root;
  final MasterKey master;
  final SigningKey desk;
  final Statement statement;
  final DeskSigner signer;
  final LicenseId license;
  final PlaceId place;
  final EditionId edition;

  CountedShop(long number) throws VaultException {
    this.random = new Counted(number);
    RootSecret secret = RootSecret.random(random);
    this.root = secret.signingKey();
    this.master = secret.masterKey(0);
    this.desk = SigningKey.fromSeed(SecretBytes.random(random, 32));
    this.statement = statement(desk, SignerRole.DESK, 1);
    this.signer = new DeskSigner(statement, desk);
    this.license = LicenseId.random(random);
    this.place = PlaceId.random(random);
    this.edition = EditionId.random(random);
  }

  Statement statement(SigningKey key, SignerRole role, int serial) throws VaultException {
    return Statement.issue(
        new Statement.Terms(key.publicKey(), serial, role, "Glasslight Studio", List.of()), root);
  }

  TrustedRoots roots() {
    return TrustedRoots.pinned(root.publicKey());
  }

  PlaceKeys keys(int generation) {
    return keys(place, generation);
  }

  PlaceKeys keys(PlaceId of, int generation) {
    return new PlaceKeys(master.licenseKey(license, generation), master.placeSecret(license, of));
  }

  EditionKey editionKey() {
    return master.editionKey(edition);
  }

  LicenseTerms terms() {
    return new LicenseTerms(
        license,
        new LicenseTerms.Issue(0, 1, LocalDate.of(2026, 3, 14)),
        "Ada Example",
        List.of("brush", "depth"),
        new LicenseTerms.Allowance(2, 3));
  }

  License license(List<RowEntry> rows) throws VaultException {
    return License.issue(terms(), rows, signer);
  }

  /** SHA-256 of a counter: repeatable, and never the same twice. */
  private static final class Counted extends SecureRandom {
    private static final long serialVersionUID = 1L;

    private final long number;
    private long count;

    Counted(long number) {
      this.number = number;
    }

    @Override
    public void nextBytes(byte[] bytes) {
      for (int at = 0; at < bytes.length; at += 32) {
        byte[] block = Sha256.of(ByteBuffer.allocate(16).putLong(number).putLong(count++).array());
        System.arraycopy(block, 0, bytes, at, Math.min(32, bytes.length - at));
      }
    }
  }
}
