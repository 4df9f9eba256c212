package org.lehrcase.bench.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.OpenedEdition;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One edition that is being searched: its image, or its names alone where it has none that can be
 * used, and what came since.
 */
final class Searched implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Searched.class);

  private final SearchImage image;
  private final boolean whole;
  private OpenedEdition edition;
  private List<Passage> later = List.of();
  private Optional<SearchImage> laterImage = Optional.empty();

  private Searched(OpenedEdition edition, SearchImage image, boolean whole) {
    this.edition = edition;
    this.image = image;
    this.whole = whole;
  }

  /** Opens what can be searched of an edition. */
  static Searched open(OpenedEdition edition) throws VaultException, IOException {
    try {
      Optional<byte[]> bytes = edition.searchImage();
      if (bytes.isPresent()) {
        return new Searched(edition, SearchImage.open(bytes.get()), true);
      }
    } catch (VaultException e) {
      LOG.info("searches names only edition={} reason={}", edition, e.getMessage());
    }
    return new Searched(edition, SearchImage.open(ImageWriter.write(names(edition))), false);
  }

  private static List<Passage> names(OpenedEdition edition) {
    List<Passage> names = new ArrayList<>();
    String title = edition.frontPage().title().title();
    names.add(new Passage(PassageKind.SERIES, Spot.SERIES, title));
    edition.lessons().forEach(lesson -> names.addAll(LessonPassages.of(lesson)));
    return names;
  }

  /** Says whether it still is what an edition, opened again, allows to be searched. */
  boolean serves(OpenedEdition fresh) {
    boolean same = fresh.contents().isPresent() == edition.contents().isPresent();
    return fresh == edition || (same && whole);
  }

  /** Goes on with the edition as it was opened now, and takes in what came since. */
  void renew(OpenedEdition fresh, List<FindSource> sources) throws VaultException, IOException {
    edition = fresh;
    List<Passage> now = new ArrayList<>();
    for (FindSource source : sources) {
      now.addAll(source.passages(fresh));
    }
    if (!now.equals(later)) {
      laterImage.ifPresent(SearchImage::close);
      laterImage = Optional.empty();
      laterImage = Optional.of(SearchImage.open(ImageWriter.write(now)));
      later = now;
    }
  }

  OpenedEdition edition() {
    return edition;
  }

  /** Says whether all of it is searched, not only names. */
  boolean isWhole() {
    return whole;
  }

  List<Hit> ask(Question question) throws VaultException {
    List<Hit> hits = new ArrayList<>(image.ask(question));
    if (laterImage.isPresent()) {
      hits.addAll(laterImage.get().ask(question));
    }
    return hits;
  }

  @Override
  public void close() {
    image.close();
    laterImage.ifPresent(SearchImage::close);
  }
}
