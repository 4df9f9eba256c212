package org.lehrcase.core.copies;

import java.util.List;
import org.lehrcase.core.edition.PartEntry;

/**
 * What a fetch brought.
 *
 * @param brought parts that are whole now and were not
 * @param lacking parts that no place had, or none had right; what lay there before lies there still
 * @param trouble what went wrong last at the places, in a few words; empty if nothing did
 */
public record FetchResult(List<PartEntry> brought, List<PartEntry> lacking, String trouble) {

  /** Copies the lists. */
  public FetchResult {
    brought = List.copyOf(brought);
    lacking = List.copyOf(lacking);
  }

  /** Returns how many bytes of parts came. */
  public long broughtBytes() {
    return brought.stream().mapToLong(PartEntry::sealedBytes).sum();
  }
}
