package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.lehrcase.bench.store.EditionTable;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.EditionKey;

/**
 * The editions that are open, each with the folders in which it was found. As long as the stick of
 * an edition of which some lessons are kept is away, it is looked for again at every question.
 */
final class OpenEditions {
  private final EditionTable table;
  private final EditionFinder finder;
  private final EditionKeys keys;
  private final OpenFiles files;
  private final Map<EditionId, Held> opened = new ConcurrentHashMap<>();

  /** An opened edition and where it was found. */
  private record Held(OpenedEdition edition, Located place) {
    boolean hasContents() {
      return edition.contents().isPresent();
    }
  }

  OpenEditions(EditionTable table, EditionFinder finder, EditionKeys keys, OpenFiles files) {
    this.table = table;
    this.finder = finder;
    this.keys = keys;
    this.files = files;
  }

  OpenedEdition open(EditionId id) throws Trouble, VaultException, IOException {
    KnownEdition known =
        table
            .find(id)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND,
                        "This edition is not among your courses.",
                        "Bring it in from its stick."));
    Optional<Held> held = Optional.ofNullable(opened.get(id));
    Optional<Held> whole = held.filter(Held::hasContents);
    boolean there = held.filter(h -> h.place().isStillThere()).isPresent();
    if (there && whole.isPresent() && whole.get().place().stickIsIn()) {
      return whole.get().edition();
    }
    if (!there) {
      files.forget(id); // what was open is away, or lies elsewhere now
    }
    Located place = finder.locate(known).orElseThrow(() -> Trouble.stickGone(known.title()));
    boolean asBefore = held.filter(h -> h.place().own().equals(place.own())).isPresent();
    if (asBefore && whole.isPresent()) {
      return whole.get().edition(); // the stick is still away
    }
    EditionFolder folder = place.folder();
    OpenedEdition fresh =
        whole.isPresent() ? whole.get().edition().in(folder) : openWithKey(folder);
    opened.put(id, new Held(fresh, place));
    return fresh;
  }

  List<Path> folders(EditionId id) throws Trouble, VaultException, IOException {
    open(id);
    return Optional.ofNullable(opened.get(id)).map(h -> h.place().own()).orElse(List.of());
  }

  private OpenedEdition openWithKey(EditionFolder folder) throws VaultException, IOException {
    Optional<EditionKey> key = keys.keyOf(folder);
    if (key.isEmpty()) {
      return OpenedEdition.openLessonsOnly(folder);
    }
    try (EditionKey owned = key.get()) {
      return OpenedEdition.open(folder, owned);
    }
  }

  void forgetAll() {
    opened.keySet().forEach(this::forget);
  }

  void forget(EditionId edition) {
    opened.remove(edition);
    files.forget(edition);
  }
}
