package org.lehrcase.core.course;

import java.util.List;
import java.util.regex.Pattern;
import org.lehrcase.core.id.AssetId;

/**
 * One file of a lesson.
 *
 * @param id stays the same from edition to edition while it is the same file of the course
 * @param role what it is for
 * @param rendition in which copies it travels
 * @param name file name as the teacher gave it, shown to people and never used as a path
 * @param mediaType such as {@code video/mp4}, without parameters
 * @param language BCP 47 tag of captions, or empty
 * @param plainBytes length before sealing
 * @param parts at least one, in order
 */
public record Asset(
    AssetId id,
    AssetRole role,
    Rendition rendition,
    String name,
    String mediaType,
    String language,
    long plainBytes,
    List<PartRef> parts) {

  /** Most parts of one asset: at 1 GiB each, far more than any film needs. */
  public static final int MAX_PARTS = 256;

  private static final Pattern MEDIA_TYPE =
      Pattern.compile("[a-z0-9][a-z0-9.+-]{0,40}/[a-z0-9][a-z0-9.+-]{0,80}");
  private static final Pattern LANGUAGE = Pattern.compile("|[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8}){0,4}");

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if a text breaks its rule, the length is negative, or there
   *     are no parts or more than {@value #MAX_PARTS}
   */
  public Asset {
    CourseText.name(name);
    if (!MEDIA_TYPE.matcher(mediaType).matches()) {
      throw new IllegalArgumentException("not a media type: " + name);
    }
    if (!LANGUAGE.matcher(language).matches()) {
      throw new IllegalArgumentException("not a language tag: " + name);
    }
    if (plainBytes < 0) {
      throw new IllegalArgumentException("a length below 0: " + name);
    }
    if (parts.isEmpty() || parts.size() > MAX_PARTS) {
      throw new IllegalArgumentException("no part, or more than " + MAX_PARTS + ": " + name);
    }
    parts = List.copyOf(parts);
  }
}
