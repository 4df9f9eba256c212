package org.lehrcase.desk.sticks;

import java.util.List;
import java.util.stream.Collectors;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.id.EditionId;

/** What all sticks of one run have in common: the program and the editions, measured and summed. */
public final class StickLoad {
  private final List<Carried> editions;
  private final List<StickFile> files;
  private final boolean withProgram;

  StickLoad(List<Carried> editions, List<StickFile> files, boolean withProgram) {
    this.editions = List.copyOf(editions);
    this.files = List.copyOf(files);
    this.withProgram = withProgram;
  }

  /**
   * An edition that goes along.
   *
   * @param folder its folder on the stick
   * @param title what it is called
   */
  public record Carried(String folder, EditionTitle title) {
    EditionId id() {
      return title.edition();
    }
  }

  /**
   * Returns the editions.
   *
   * @return in the order in which they were named
   */
  public List<Carried> editions() {
    return editions;
  }

  /**
   * Says whether the program goes along.
   *
   * @return whether a portable folder was given
   */
  public boolean withProgram() {
    return withProgram;
  }

  List<StickFile> files() {
    return files;
  }

  /** Names the editions for the sales book, such as {@code brush 1, kiln 2}. */
  String words() {
    return editions.stream()
        .map(one -> one.title().series() + " " + one.title().number())
        .collect(Collectors.joining(", "));
  }
}
