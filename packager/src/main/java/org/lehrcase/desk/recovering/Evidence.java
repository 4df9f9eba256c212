package org.lehrcase.desk.recovering;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.desk.home.OwnerFiles;

/**
 * What is left of a desk outside it: editions, licenses and key letters, each verified to be of the
 * shop whose envelopes were opened.
 */
public final class Evidence {
  private final TrustedRoots shop;
  private final Map<EditionId, EditionFolder> editions = new HashMap<>();
  private final Map<LicenseId, License> licenses = new HashMap<>();
  private final Set<Octets> letterBytes = new LinkedHashSet<>();

  /**
   * Begins with nothing.
   *
   * @param root the public key of the shop's root, from the envelopes
   */
  public Evidence(VerifyKey root) {
    this.shop = TrustedRoots.pinned(root);
  }

  /**
   * Adds a copy of an edition.
   *
   * @param folder its folder
   * @throws VaultException if it is no edition of this shop
   * @throws IOException if it cannot be read
   */
  public void addEdition(Path folder) throws VaultException, IOException {
    EditionFolder edition = EditionFolder.open(folder, shop);
    editions.put(edition.frontPage().edition(), edition);
  }

  /**
   * Adds what buyers' files hold: licenses and key letters, in their text form. Of each license the
   * newest issue counts.
   *
   * @param file a text or a saved mail
   * @throws VaultException if a license in it is not of this shop
   * @throws IOException if it cannot be read
   */
  public void addFile(Path file) throws VaultException, IOException {
    byte[] bytes = OwnerFiles.read(file, Armor.MAX_TEXT_CHARS);
    for (Armor.Block block : Armor.find(new String(bytes, StandardCharsets.UTF_8))) {
      if (block.kind() == ArmorKind.LICENSE) {
        License license = License.verify(block.bytes(), shop);
        licenses.merge(license.id(), license, Evidence::newer);
      } else if (block.kind() == ArmorKind.KEY_LETTER) {
        letterBytes.add(block.content());
      }
    }
  }

  private static License newer(License one, License other) {
    return one.terms().issue().number() >= other.terms().issue().number() ? one : other;
  }

  /** Returns every statement that was met, newest serial first. */
  List<Statement> statements() {
    List<Statement> met = new ArrayList<>();
    editions.values().forEach(edition -> met.add(edition.frontPage().statement()));
    licenses.values().forEach(license -> met.add(license.statement()));
    met.sort((a, b) -> Integer.compare(b.terms().serial(), a.terms().serial()));
    return met;
  }

  /** Returns the editions, oldest first. */
  List<EditionFolder> editions() {
    List<EditionFolder> sorted = new ArrayList<>(editions.values());
    sorted.sort(
        (a, b) -> {
          var x = a.frontPage().title();
          var y = b.frontPage().title();
          int restores = Integer.compare(x.restores(), y.restores());
          return restores != 0 ? restores : Integer.compare(x.number(), y.number());
        });
    return sorted;
  }

  /** Returns the licenses. */
  List<License> licenses() {
    return List.copyOf(licenses.values());
  }

  /**
   * Returns the letters that a known desk key of this shop signed, newest generation first. A
   * letter of an earlier desk of which no edition or license tells, or of a stranger, is passed
   * over.
   */
  List<KeyLetter> letters() throws VaultException {
    List<KeyLetter> letters = new ArrayList<>();
    for (Octets bytes : letterBytes) {
      try {
        letters.add(KeyLetter.verifyAny(bytes.toBytes(), desks()));
      } catch (VaultException.Tampered e) {
        continue; // counted among those passed over
      }
    }
    letters.sort((a, b) -> Integer.compare(b.grant().generation(), a.grant().generation()));
    return letters;
  }

  /** Returns how many letters no known key signed. */
  int lettersPassedOver() throws VaultException {
    return letterBytes.size() - letters().size();
  }

  private List<VerifyKey> desks() {
    return statements().stream()
        .map(Statement::terms)
        .filter(terms -> terms.role() == SignerRole.DESK)
        .map(Statement.Terms::key)
        .distinct()
        .toList();
  }
}
