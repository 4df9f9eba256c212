package org.lehrcase.bench.web;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.courses.StudyLesson;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.printing.PaperSheets;
import org.lehrcase.bench.printing.PicturePage;
import org.lehrcase.bench.printing.Stamp;
import org.lehrcase.bench.printing.SvgStamp;
import org.lehrcase.bench.printing.TemplatePages;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.OpenedEdition;

/**
 * Save for printing. Every paper carries the buyer's name: PDFs and drawings keep their size,
 * texts, tables and pictures become pages. What is saved is plain by the student's wish, and only
 * if the teacher allows it.
 */
final class PrintDownloads implements Downloads {
  private static final int BUFFER_BYTES = 1 << 15;

  /** Largest paper other than a PDF that is laid out in memory. */
  private static final int MAX_PAPER_BYTES = 32 << 20;

  private final Bench bench;

  PrintDownloads(Bench bench) {
    this.bench = bench;
  }

  @Override
  public void answer(String editionAndAsset, Response response, Callback callback)
      throws Trouble, VaultException, IOException {
    MediaHandler.Name name = MediaHandler.Name.of(editionAndAsset);
    OpenedEdition edition = bench.courses().open(name.edition());
    CourseFile file = bench.courses().file(name.edition(), name.asset());
    Asset asset =
        edition
            .asset(name.asset())
            .filter(found -> StudyLesson.mayPrint(edition, found))
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_ALLOWED,
                        "The teacher does not allow saving this kind of paper.",
                        "Read it on the screen."));
    response.getHeaders().put("Content-Security-Policy", SecurityHeaders.COURSE_POLICY);
    String words = new BuyerWords(bench).of(edition);
    if (file.mediaType().equals("application/pdf")) {
      head(response, asset.name(), "application/pdf");
      stamped(file, words, response);
    } else {
      Saved saved = saved(edition, asset, words);
      head(response, saved.name(), saved.mediaType());
      response.getHeaders().put(HttpHeader.CONTENT_LENGTH, saved.bytes().length);
      try (OutputStream out = Content.Sink.asOutputStream(response)) {
        out.write(saved.bytes());
      }
    }
    callback.succeeded();
  }

  private static void head(Response response, String name, String mediaType) {
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, mediaType);
    response.getHeaders().put("Content-Disposition", disposition(name));
  }

  /** A paper as it is saved. */
  private record Saved(String name, String mediaType, byte[] bytes) {
    static Saved pages(Asset asset, byte[] pdf) {
      String bare = asset.name().replaceAll("\\.[A-Za-z0-9]{1,8}$", "");
      return new Saved(bare + ".pdf", "application/pdf", pdf);
    }
  }

  private static Saved saved(OpenedEdition edition, Asset asset, String words)
      throws VaultException, IOException {
    byte[] bytes = edition.read(asset, MAX_PAPER_BYTES);
    String title =
        asset.name().replaceAll("(\\.(firing|materials|fault|template))?\\.[A-Za-z0-9]{1,8}$", "");
    return switch (asset.mediaType()) {
      case "image/svg+xml" -> new Saved(asset.name(), asset.mediaType(), SvgStamp.of(bytes, words));
      case "image/png" -> Saved.pages(asset, pixels(asset, title, bytes, words));
      case "image/jpeg" -> Saved.pages(asset, PicturePage.of(title, bytes, words));
      case "text/markdown" -> Saved.pages(asset, PaperSheets.prose(title, bytes, words));
      default -> Saved.pages(asset, table(asset, title, bytes, words));
    };
  }

  /** A template keeps its true size; any other picture is as large as the paper. */
  private static byte[] pixels(Asset asset, String title, byte[] png, String words)
      throws IOException {
    return asset.role() == AssetRole.TEMPLATE
        ? TemplatePages.of(title, png, words)
        : PicturePage.of(title, png, words);
  }

  private static byte[] table(Asset asset, String title, byte[] bytes, String words)
      throws IOException {
    return switch (asset.role()) {
      case FIRING_SCHEDULE -> PaperSheets.firing(title, bytes, words);
      case MATERIALS_LIST -> PaperSheets.materials(title, bytes, words);
      default -> PaperSheets.text(title, bytes, words);
    };
  }

  private static String disposition(String name) {
    String encoded = URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    return "attachment; filename*=UTF-8''" + encoded;
  }

  private static void stamped(CourseFile file, String words, Response response) throws IOException {
    try (Stamp stamp = Stamp.of(file.clear(), words);
        OutputStream out =
            new BufferedOutputStream(Content.Sink.asOutputStream(response), BUFFER_BYTES)) {
      stamp.writeTo(out);
    }
  }
}
