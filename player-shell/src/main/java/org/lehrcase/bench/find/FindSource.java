package org.lehrcase.bench.find;

import java.io.IOException;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.OpenedEdition;

/**
 * Something that is searched beside the image of an edition, because it came later: corrections,
 * the student's own notes.
 */
@FunctionalInterface
public interface FindSource {
  /**
   * Returns what can be found now; asked again every few seconds while somebody searches.
   *
   * @param edition an edition that is open
   * @return its passages in an order that stays the same while they do
   * @throws VaultException if the edition is damaged
   * @throws IOException if they cannot be read
   */
  List<Passage> passages(OpenedEdition edition) throws VaultException, IOException;
}
