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
import org.lehrcase.bench.printing.Stamp;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.license.License;

/**
 * Save for printing. PDFs carry the buyer's name; other papers go as they are. What is saved is
 * plain by the student's wish, and only if the teacher allows it.
 */
final class PrintDownloads implements Downloads {
  private static final int BUFFER_BYTES = 1 << 15;

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
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, file.mediaType());
    response.getHeaders().put("Content-Disposition", disposition(asset.name()));
    if (file.mediaType().equals("application/pdf")) {
      stamped(file, words(edition), response);
    } else {
      plain(file, response);
    }
    callback.succeeded();
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

  private static void plain(CourseFile file, Response response) throws VaultException, IOException {
    byte[] buffer = new byte[file.clear().bufferBytes()];
    long size = file.clear().sizeBytes();
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, size);
    try (OutputStream out = Content.Sink.asOutputStream(response)) {
      long position = 0;
      while (position < size) {
        var clear = file.clear().readSegment(position, buffer);
        position += clear.remaining();
        out.write(buffer, clear.position(), clear.remaining());
      }
    }
  }

  private String words(OpenedEdition edition) throws VaultException, IOException {
    String series = edition.frontPage().title().series();
    for (License license : bench.opening().licenses()) {
      if (license.terms().series().contains(series)) {
        String number = license.id().hex().substring(0, 8);
        return license.terms().name() + " · license " + number;
      }
    }
    return "open lesson";
  }
}
