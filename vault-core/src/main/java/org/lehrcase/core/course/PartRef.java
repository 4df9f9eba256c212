package org.lehrcase.core.course;

import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;

/**
 * Where one part of an asset lies and what opens it.
 *
 * <p>Two references are equal if they name the same address, which is the hash of the sealed bytes;
 * the key takes no part in the comparison and is never shown.
 *
 * @param address name of the sealed file
 * @param key random key of this part, used for nothing else
 */
public record PartRef(PartAddress address, PartKey key) {

  @Override
  public boolean equals(Object other) {
    return other instanceof PartRef ref && address.equals(ref.address);
  }

  @Override
  public int hashCode() {
    return address.hashCode();
  }

  @Override
  public String toString() {
    return "PartRef[" + address.hex() + "]";
  }
}
