package org.lehrcase.bench.kilns;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Papers that were made for saving and wait in memory until the browser fetches them. */
public final class MadePapers {
  private static final int MOST = 16;

  private final Map<String, Made> papers = new LinkedHashMap<>();

  /** A file for a person; its bytes are not copied. */
  public static final class Made {
    private final String name;
    private final String mediaType;
    private final byte[] bytes;

    /**
     * Makes a file.
     *
     * @param name its name
     * @param mediaType its type
     * @param bytes what is in it
     */
    public Made(String name, String mediaType, byte[] bytes) {
      this.name = name;
      this.mediaType = mediaType;
      this.bytes = bytes;
    }

    /** Returns its name. */
    public String name() {
      return name;
    }

    /** Returns its type. */
    public String mediaType() {
      return mediaType;
    }

    /** Returns what is in it. */
    public byte[] bytes() {
      return bytes;
    }
  }

  /**
   * Keeps a paper until sixteen others have come.
   *
   * @param made the paper
   * @return its id
   */
  public synchronized String keep(Made made) {
    String id = UUID.randomUUID().toString().replace("-", "");
    papers.put(id, made);
    if (papers.size() > MOST) {
      papers.remove(papers.keySet().iterator().next());
    }
    return id;
  }

  /**
   * Returns a paper.
   *
   * @param id its id
   * @return the paper, empty if it is not there any more
   */
  public synchronized Optional<Made> find(String id) {
    return Optional.ofNullable(papers.get(id));
  }
}
