package org.lehrcase.core.edition;

import java.util.Locale;
import java.util.regex.Pattern;
import org.lehrcase.core.id.PartAddress;

/**
 * The names inside an edition folder: {@code docs/format.md}, section "Edition folder". What has
 * any other name, such as the files that operating systems leave on sticks, does not exist for a
 * reader.
 */
public final class EditionLayout {

  /** File of the signed front page; a folder that holds it is an edition folder. */
  public static final String FRONT_PAGE = "lehrcase.front";

  /** File of the sealed contents. */
  public static final String CONTENTS = "contents.sealed";

  /** File of the signed index of the keys file. */
  public static final String KEYS_INDEX = "keys.index";

  /** Folder of the chunks of the keys file. */
  public static final String KEYS = "keys";

  /** Folder of a newer edition's own files while it is being merged into this folder. */
  public static final String NEXT = "next";

  /** Folder of the corrections. */
  public static final String CORRECTIONS = "corrections";

  /** Ending of a digest list, behind the name of its part. */
  public static final String DIGESTS_ENDING = ".digests";

  static final Pattern FOLDER_NAME = Pattern.compile("[0-9]{3}");

  /** Form of the name of a part. */
  public static final Pattern PART_NAME = Pattern.compile("[0-9a-f]{64}");

  static final Pattern KEYS_CHUNK_NAME = Pattern.compile("[0-9]{4}");

  private EditionLayout() {}

  /** Returns the three digits of a folder. */
  public static String folderName(int folder) {
    return String.format(Locale.ROOT, "%03d", folder);
  }

  /** Returns the name of a chunk of the keys file inside {@link #KEYS}. */
  public static String chunkName(int number) {
    return String.format(Locale.ROOT, "%04d", number);
  }

  /** Returns the name of a part inside its folder. */
  public static String partName(PartAddress address) {
    return address.hex();
  }

  /** Returns the name of a part's digest list, beside the part. */
  public static String digestsName(PartAddress address) {
    return address.hex() + DIGESTS_ENDING;
  }
}
