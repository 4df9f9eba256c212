package org.lehrcase.desk.pack;

import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;

/**
 * A part that was sealed, and the bytes that it was sealed from.
 *
 * @param file the file of the course that it belongs to
 * @param part its number within that file, from 0
 * @param print the print of its clear bytes
 * @param ref its address and key
 * @param sealedBytes length of the sealed part
 */
record KnownPart(KnownFile file, int part, Octets print, PartRef ref, long sealedBytes) {
  /**
   * A file of the course as it was packed.
   *
   * @param lesson the lesson
   * @param asset its lasting id
   * @param role what it is for
   * @param name its name
   * @param plainBytes its length
   * @param parts how many parts it has
   */
  record KnownFile(
      LessonId lesson, AssetId asset, AssetRole role, String name, long plainBytes, int parts) {}
}
