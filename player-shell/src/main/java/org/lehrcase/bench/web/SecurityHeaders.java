package org.lehrcase.bench.web;

import java.util.List;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.PreEncodedHttpField;

/** The headers that every answer carries. */
final class SecurityHeaders {
  /**
   * Nothing from outside, nothing inline, no text turned into script. {@code wasm-unsafe-eval} lets
   * the PDF viewer's image decoders run; it opens no way to run script.
   */
  static final String PAGE_POLICY =
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self';"
          + " img-src 'self' blob: data:; media-src 'self' blob:; connect-src 'self';"
          + " worker-src 'self'; font-src 'self' data:; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'; require-trusted-types-for 'script'";

  /** For files of a course, also when a person opens one as a page of its own. */
  static final String COURSE_POLICY =
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; media-src 'self';"
          + " frame-ancestors 'none'; sandbox";

  /** Encoded once, as they go into every answer. */
  private static final List<HttpField> EVERY =
      List.of(
          field("Content-Security-Policy", PAGE_POLICY),
          field("Cross-Origin-Resource-Policy", "same-origin"),
          field("Cross-Origin-Opener-Policy", "same-origin"),
          field("Referrer-Policy", "no-referrer"),
          field("X-Content-Type-Options", "nosniff"),
          field("X-Frame-Options", "DENY"),
          field("Permissions-Policy", "geolocation=(), microphone=(), camera=(self)"),
          new PreEncodedHttpField(HttpHeader.CACHE_CONTROL, "no-store"));

  private SecurityHeaders() {}

  private static HttpField field(String name, String value) {
    return new PreEncodedHttpField(name, value);
  }

  static void addTo(HttpFields.Mutable headers) {
    EVERY.forEach(headers::put);
  }
}
