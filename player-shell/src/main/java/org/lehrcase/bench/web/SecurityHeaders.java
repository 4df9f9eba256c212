package org.lehrcase.bench.web;

import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;

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

  private SecurityHeaders() {}

  static void addTo(HttpFields.Mutable headers) {
    headers.put("Content-Security-Policy", PAGE_POLICY);
    headers.put("Cross-Origin-Resource-Policy", "same-origin");
    headers.put("Cross-Origin-Opener-Policy", "same-origin");
    headers.put("Referrer-Policy", "no-referrer");
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("X-Frame-Options", "DENY");
    headers.put("Permissions-Policy", "geolocation=(), microphone=(), camera=()");
    headers.put(HttpHeader.CACHE_CONTROL, "no-store");
  }
}
