package org.lehrcase.bench.find;

import java.util.List;
import org.lehrcase.core.edition.OpenedEdition;

/**
 * The answer to a question over all courses.
 *
 * @param finds the best first
 * @param scopes what was searched
 * @param away titles of courses whose stick is not here, which were not searched
 */
public record Found(List<Find> finds, List<Scope> scopes, List<String> away) {
  /** Copies the lists. */
  public Found {
    finds = List.copyOf(finds);
    scopes = List.copyOf(scopes);
    away = List.copyOf(away);
  }

  /**
   * A passage and its edition.
   *
   * @param edition the edition
   * @param hit the passage
   */
  public record Find(OpenedEdition edition, Hit hit) {}

  /**
   * An edition that was searched.
   *
   * @param edition the edition
   * @param whole whether all of it was searched; otherwise names only
   */
  public record Scope(OpenedEdition edition, boolean whole) {}
}
