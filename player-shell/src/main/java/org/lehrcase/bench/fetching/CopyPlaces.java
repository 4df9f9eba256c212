package org.lehrcase.bench.fetching;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.bench.courses.SearchRoots;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.copies.CopySource;
import org.lehrcase.core.copies.FolderSource;
import org.lehrcase.core.edition.EditionLayout;

/** Turns what a person typed into places to fetch from. */
public final class CopyPlaces {
  private CopyPlaces() {}

  /**
   * Finds the places that a text means.
   *
   * @param text a folder, the folder of a stick, or an address with {@code http:} or {@code https:}
   * @return places, at least one
   * @throws Trouble if it is neither a folder that is here nor a plain address
   */
  public static List<CopySource> at(String text) throws Trouble {
    String trimmed = text.strip();
    String lower = trimmed.toLowerCase(Locale.ROOT);
    if (lower.startsWith("http:") || lower.startsWith("https:")) {
      return List.of(new WebSource(address(trimmed), WebSource.Limits.USUAL));
    }
    return at(folder(trimmed, lower.startsWith("file:")));
  }

  /**
   * Finds the places in a folder: the editions in it, and the folder itself, as files that were
   * downloaded one by one lie loose in it.
   *
   * @param folder the folder
   * @return places, at least one
   */
  public static List<CopySource> at(Path folder) {
    List<CopySource> places = new ArrayList<>();
    SearchRoots.below(folder).forEach(edition -> places.add(new FolderSource(edition)));
    if (places.stream().noneMatch(place -> place.label().equals(folder.toString()))) {
      places.add(new FolderSource(folder));
    }
    return places;
  }

  private static Path folder(String text, boolean isAddress) throws Trouble {
    try {
      Path folder = isAddress ? Path.of(new URI(text)) : Path.of(text);
      if (Files.isDirectory(folder)) {
        return folder.toAbsolutePath().normalize();
      }
    } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
      throw noPlace(text);
    }
    throw noPlace(text);
  }

  /** The front page's own address is taken for that of its folder. */
  static URI address(String text) throws Trouble {
    try {
      URI given = new URI(text);
      boolean plain =
          given.getHost() != null
              && given.getRawUserInfo() == null
              && given.getRawQuery() == null
              && given.getRawFragment() == null;
      if (!plain) {
        throw noPlace(text);
      }
      String path = String.valueOf(given.getRawPath());
      if (path.endsWith("/" + EditionLayout.FRONT_PAGE)) {
        return given.resolve(".");
      }
      return path.endsWith("/") ? given : new URI(text + "/");
    } catch (URISyntaxException e) {
      throw noPlace(text);
    }
  }

  private static Trouble noPlace(String text) {
    return new Trouble(
        TroubleCode.NOT_FOUND,
        text + " is neither a folder that is here nor a plain web address.",
        "Name the folder or stick of another copy, or an address that begins with https://.");
  }
}
