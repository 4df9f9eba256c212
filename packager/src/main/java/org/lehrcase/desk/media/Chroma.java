package org.lehrcase.desk.media;

/** How finely a picture stores colour beside brightness. */
public enum Chroma {
  /** The file does not say. */
  UNKNOWN("unknown"),
  /** Brightness only. */
  MONOCHROME("4:0:0"),
  /** Half the colour resolution both ways: what browsers decode. */
  HALF("4:2:0"),
  /** Half the colour resolution across only: what editing programs like. */
  HALF_ACROSS("4:2:2"),
  /** Full colour resolution. */
  FULL("4:4:4");

  private final String ratio;

  Chroma(String ratio) {
    this.ratio = ratio;
  }

  /** Returns the usual ratio, such as {@code 4:2:0}. */
  public String ratio() {
    return ratio;
  }

  /** Returns the value for {@code chroma_format_idc} of H.264 and HEVC (0 to 3). */
  static Chroma ofIdc(int idc) {
    return switch (idc) {
      case 0 -> MONOCHROME;
      case 1 -> HALF;
      case 2 -> HALF_ACROSS;
      case 3 -> FULL;
      default -> UNKNOWN;
    };
  }
}
