package org.lehrcase.core.license;

import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PlaceKeys;

/**
 * What a key row gave: the edition's key, and the place's keys as they stand now. Holds secrets;
 * {@link #close} zeroes them.
 */
public final class OpenedRow implements AutoCloseable {
  private final EditionKey editionKey;
  private final PlaceKeys placeKeys;
  private final boolean rekeyed;

  OpenedRow(EditionKey editionKey, PlaceKeys placeKeys, boolean rekeyed) {
    this.editionKey = editionKey;
    this.placeKeys = placeKeys;
    this.rekeyed = rekeyed;
  }

  /** Returns the edition's key, owned by this object. */
  public EditionKey editionKey() {
    return editionKey;
  }

  /** Returns the place's newest keys, to keep from now on; owned by this object. */
  public PlaceKeys placeKeys() {
    return placeKeys;
  }

  /**
   * Says whether the keys are of a newer generation than those that were asked with, so that they
   * must be stored.
   *
   * @return whether a rekey row was used
   */
  public boolean rekeyed() {
    return rekeyed;
  }

  @Override
  public void close() {
    editionKey.close();
    placeKeys.close();
  }

  @Override
  public String toString() {
    return "OpenedRow[redacted]";
  }
}
