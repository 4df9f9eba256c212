package org.lehrcase.desk.media;

/** The box a film comes in. */
public enum Container {
  /** ISO base media file format (ISO/IEC 14496-12), what {@code .mp4} and {@code .m4v} hold. */
  MP4("MP4", "video/mp4"),
  /**
   * Apple's older relative of MP4. Browsers read it with the MP4 reader, so it is served as MP4.
   */
  QUICKTIME("QuickTime", "video/mp4"),
  /** The subset of Matroska that browsers play. */
  WEBM("WebM", "video/webm"),
  /** Any other Matroska file; browsers do not promise to play it. */
  MATROSKA("Matroska", "video/x-matroska");

  private final String title;
  private final String mediaType;

  Container(String title, String mediaType) {
    this.title = title;
    this.mediaType = mediaType;
  }

  /** Returns the name to show. */
  public String title() {
    return title;
  }

  /** Returns the media type under which a browser is to receive the file. */
  public String mediaType() {
    return mediaType;
  }

  /** Tells whether the file consists of MP4 boxes. */
  public boolean hasBoxes() {
    return this == MP4 || this == QUICKTIME;
  }
}
