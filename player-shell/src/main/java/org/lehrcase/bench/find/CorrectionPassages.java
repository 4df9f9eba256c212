package org.lehrcase.bench.find;

import java.io.IOException;
import java.util.List;
import org.lehrcase.bench.courses.Corrections;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.OpenedEdition;

/**
 * The teacher's corrections as passages.
 *
 * @param corrections what was corrected since the editions were packed
 */
public record CorrectionPassages(Corrections corrections) implements FindSource {
  @Override
  public List<Passage> passages(OpenedEdition edition) throws VaultException, IOException {
    return corrections.of(edition.folder()).stream()
        .filter(note -> edition.lesson(note.lesson()).isPresent())
        .map(note -> new Passage(PassageKind.CORRECTION, spot(note), note.text()))
        .toList();
  }

  private static Spot spot(CorrectionNote note) {
    return note.asset()
        .map(asset -> Spot.paper(note.lesson(), asset, note.position()))
        .orElseGet(() -> Spot.film(note.lesson(), note.position()));
  }
}
