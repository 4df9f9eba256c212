package org.lehrcase.desk.answering;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.PlaceSecret;
import org.lehrcase.core.license.KeysFileDraft;
import org.lehrcase.core.license.RowEntry;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.EditionEntry;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Place;
import org.lehrcase.desk.sales.SalesBook;

/**
 * Makes the rows that open editions: for a license file all editions of its series, for an edition
 * all licenses that cover it. Rows open nothing without the keys of a letter.
 */
public final class KeyRows {
  private final SalesBook book;
  private final DeskKeys keys;

  /**
   * Looks up with the book and derives with the keys.
   *
   * @param book the sales book
   * @param keys the open keys of the same desk
   */
  public KeyRows(SalesBook book, DeskKeys keys) {
    this.book = book;
    this.keys = keys;
  }

  /**
   * Makes the rows of a license file: one for each edition so far of the series it covers, and a
   * rekey row for each living place whose letter is older than the license's generation.
   *
   * @param license the license
   * @param random the source of the salt
   * @return the rows, under one salt
   * @throws IOException if the book cannot be read
   */
  public List<RowEntry> forLicense(LicenseEntry license, SecureRandom random) throws IOException {
    Octets salt = Octets.random(random, RowEntry.SALT_BYTES);
    List<RowEntry> rows = new ArrayList<>();
    for (String series : license.terms().series()) {
      for (EditionEntry edition : book.editions().of(series)) {
        try (EditionKey key = keys.master(edition.epoch()).editionKey(edition.id())) {
          for (Octets row : rows(license, edition, salt, key)) {
            rows.add(new RowEntry(edition.id(), salt, row));
          }
        }
      }
    }
    return List.copyOf(rows);
  }

  /**
   * Adds the rows of an edition's keys file to a draft: for each license that covers the series its
   * row, and the rekey rows of its places.
   *
   * @param edition the edition
   * @param draft a fresh draft for the same edition
   * @return how many licenses the edition opens for
   * @throws IOException if the book cannot be read
   */
  public int addTo(KeysFileDraft draft, EditionEntry edition) throws IOException {
    List<LicenseEntry> entitled = book.licenses().entitled(edition.series(), edition.epoch());
    try (EditionKey key = keys.master(edition.epoch()).editionKey(edition.id())) {
      for (LicenseEntry license : entitled) {
        try (LicenseKey newest = newest(license)) {
          draft.add(newest, key);
          for (Place place : behind(license)) {
            try (PlaceSecret secret = secret(license, place)) {
              draft.addRekey(secret, newest);
            }
          }
        }
      }
    }
    return entitled.size();
  }

  private List<Octets> rows(LicenseEntry license, EditionEntry edition, Octets salt, EditionKey key)
      throws IOException {
    List<Octets> rows = new ArrayList<>();
    try (LicenseKey newest = newest(license)) {
      rows.add(newest.keyRow(edition.id(), salt, key));
      for (Place place : behind(license)) {
        try (PlaceSecret secret = secret(license, place)) {
          rows.add(secret.rekeyRow(edition.id(), salt, newest));
        }
      }
    }
    return rows;
  }

  /** Living places whose letters hold a key of an earlier generation. */
  private List<Place> behind(LicenseEntry license) throws IOException {
    return book.places().of(license.id()).stream()
        .filter(place -> place.living() && place.generation() < license.generation())
        .toList();
  }

  private LicenseKey newest(LicenseEntry license) {
    return keys.master(license.epoch()).licenseKey(license.id(), license.generation());
  }

  private PlaceSecret secret(LicenseEntry license, Place place) {
    return keys.master(license.epoch()).placeSecret(license.id(), place.id());
  }
}
