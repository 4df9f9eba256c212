package org.lehrcase.desk.author;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Rendition;

/**
 * Finds the light copies among the files of one lesson: {@code brush.light.mp4} is the light copy
 * of the film {@code brush.mp4} (or {@code .mov}, {@code .m4v}, {@code .webm}) beside it.
 */
public final class LightPairs {
  /** By role, and of films the light ones last, so that the first film is the large one. */
  private static final Comparator<SourceAsset> ORDER =
      Comparator.comparing(SourceAsset::role)
          .thenComparing(asset -> asset.rendition() == Rendition.LIGHT);

  private final List<SourceAsset> assets;
  private final List<Finding> findings;

  LightPairs(List<SourceAsset> assets, List<Finding> findings) {
    this.assets = assets;
    this.findings = findings;
  }

  /**
   * Brings files into the order in which a lesson holds them.
   *
   * @param assets files of a lesson; those of one role stay in their order
   * @return by role, light films behind the others
   */
  public static List<SourceAsset> ordered(List<SourceAsset> assets) {
    return assets.stream().sorted(ORDER).toList();
  }

  /**
   * Returns the name of the light copy of a film.
   *
   * @param film its name or path
   * @return the same with another ending
   */
  public static String lightName(String film) {
    return FileKind.stem(film) + FileKind.LIGHT_MP4;
  }

  /** Returns the files in order, each film that comes in two forms marked as one of them. */
  List<SourceAsset> paired() {
    Map<String, SourceAsset> lights = new HashMap<>();
    for (var asset : assets) {
      if (isLight(asset)) {
        lights.put(stem(asset), asset);
      }
    }
    List<SourceAsset> paired = new ArrayList<>();
    for (var asset : assets) {
      if (asset.role() != AssetRole.VIDEO) {
        paired.add(asset);
      } else if (!isLight(asset)) {
        addFilm(paired, asset, lights.remove(stem(asset)));
      }
    }
    lights.values().forEach(light -> paired.add(lonely(light)));
    return ordered(paired);
  }

  private static void addFilm(
      List<SourceAsset> paired, SourceAsset film, @Nullable SourceAsset light) {
    if (light == null) {
      paired.add(film);
    } else {
      paired.add(film.as(Rendition.FULL));
      paired.add(light.as(Rendition.LIGHT));
    }
  }

  private SourceAsset lonely(SourceAsset light) {
    findings.add(
        Finding.doubt(
            light.place(),
            "is named as the light copy of a film that is not beside it",
            "name both films alike, such as brush.mp4 and brush.light.mp4"));
    return light;
  }

  private static boolean isLight(SourceAsset asset) {
    return asset.role() == AssetRole.VIDEO
        && asset.place().toLowerCase(Locale.ROOT).endsWith(FileKind.LIGHT_MP4);
  }

  private static String stem(SourceAsset asset) {
    return FileNames.folded(FileKind.stem(asset.place()));
  }
}
