package org.lehrcase.desk.sticks;

import java.util.List;

/** The page in a stick's top folder, for any browser, without a script. */
final class StartPage {
  static final String PLACE = "READ ME FIRST.html";

  /** By this a page of ours is known, so that nobody else's is written over. */
  static final String MARK = "<meta name=\"generator\" content=\"lehrcase-desk stick\">";

  private static final String STYLE =
      "body{font:1.1rem/1.5 system-ui,sans-serif;max-width:42rem;margin:2rem auto;padding:0 1rem;"
          + "color:#16302d;background:#f5f8f6}h1{font-size:1.6rem}h2{font-size:1.2rem;margin-top:1.6rem}"
          + "aside{border-left:.3rem solid #2b6f68;padding-left:1rem}";

  private StartPage() {}

  static StickFile of(Welcome welcome) {
    StringBuilder page = new StringBuilder(4096);
    page.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width\">\n")
        .append(MARK)
        .append("\n<title>Read me first</title>\n<style>")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n");
    page.append("<h1>").append(clean(heading(welcome))).append("</h1>\n<ul>\n");
    welcome
        .courses()
        .forEach(course -> page.append("<li>").append(clean(course)).append("</li>\n"));
    page.append("</ul>\n");
    int number = 1;
    for (Welcome.Paragraph step : welcome.steps()) {
      paragraph(page, number++ + ". " + step.heading(), step.text());
    }
    page.append("<aside>\n<h2>What your system may say</h2>\n");
    warnings(page);
    page.append("</aside>\n");
    paragraph(page, "Help", welcome.help());
    page.append("<h2>Take care</h2>\n<ul>\n");
    welcome.cautions().forEach(one -> page.append("<li>").append(clean(one)).append("</li>\n"));
    page.append("</ul>\n<p>").append(clean(welcome.shop())).append("</p>\n</body>\n</html>\n");
    return StickFile.text(PLACE, page.toString());
  }

  private static String heading(Welcome welcome) {
    return welcome.buyer().map(name -> "For " + name).orElse("Read me first");
  }

  private static void warnings(StringBuilder page) {
    List<Welcome.Paragraph> all = Welcome.warnings();
    for (Welcome.Paragraph one : all) {
      page.append("<p><b>")
          .append(clean(one.heading()))
          .append(".</b> ")
          .append(clean(one.text()))
          .append("</p>\n");
    }
  }

  private static void paragraph(StringBuilder page, String heading, String text) {
    page.append("<h2>").append(clean(heading)).append("</h2>\n<p>");
    page.append(clean(text)).append("</p>\n");
  }

  /** Names of people and courses are words, never markup. */
  private static String clean(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
