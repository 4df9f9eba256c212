package org.lehrcase.bench.web;

/** The pages outside the secret path: the way in, and what to do when there is none. */
final class DoorPages {
  static final String MOVE_SCRIPT = "location.replace(document.body.dataset.to);\n";

  private static final String HEAD =
      "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
          + "<meta name=\"viewport\" content=\"width=device-width\"><title>Lehrcase</title>";

  private DoorPages() {}

  /**
   * The one-time page: a redirect would lose the cookie, so the page's own script moves on.
   *
   * @param to the secret path
   * @param house whose words are used
   */
  static String enter(String to, House house) {
    return HEAD
        + "<script src=\"/enter/move.js\" defer></script></head><body data-to=\""
        + to
        + "\"><p>"
        + house.opening()
        + " …</p><noscript><p>Lehrcase needs JavaScript, which is"
        + " switched off in this browser.</p></noscript></body></html>\n";
  }

  /** For an address of an earlier start, a used token, or no address at all. */
  static String startFromIcon(House house) {
    return HEAD
        + "</head><body><h1>This address is no longer open</h1><p>Lehrcase makes a new address at"
        + " every start. "
        + house.safe()
        + "</p><p>"
        + house.back()
        + "</p></body></html>\n";
  }
}
