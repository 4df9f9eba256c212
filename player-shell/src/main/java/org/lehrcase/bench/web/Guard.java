package org.lehrcase.bench.web;

import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.trouble.TroubleCode;

/**
 * Decides who may ask. Other programs on this machine, and pages of other sites that a browser on
 * this machine shows, can all reach a loopback port; only the page that this start opened gets an
 * answer. Safe for many threads.
 *
 * <p>Does not protect from a program that runs as the same user and reads its memory or files.
 */
final class Guard {
  static final String ENTER = "/enter/";
  static final String MOVE_SCRIPT = "/enter/move.js";
  static final String KNOCK = "/knock";
  private static final Pattern PLAIN_PATH = Pattern.compile("(/[A-Za-z0-9_-][A-Za-z0-9._-]*+)*+/?");
  private static final Set<String> OWN_SITES = Set.of("same-origin", "none");
  private static final Set<String> READING = Set.of("GET", "HEAD");
  private static final Set<String> WRITING = Set.of("POST", "PUT");

  private final String own;
  private final Session session;

  /** Why a request is turned away. */
  record Refusal(int status, TroubleCode code, String reason) {}

  Guard(int port, Session session) {
    this.own = "127.0.0.1:" + port;
    this.session = session;
  }

  /** Returns why the request is refused, or nothing if it may pass. */
  Optional<Refusal> refusal(Request request) {
    HttpFields headers = request.getHeaders();
    String path = String.valueOf(request.getHttpURI().getPath());
    if (!isOurHost(request, headers)) {
      return refuse(421, TroubleCode.STRANGER, "the Host is not this bench");
    }
    @Nullable String origin = headers.get(HttpHeader.ORIGIN);
    if (origin != null && !origin.equals("http://" + own)) {
      return refuse(403, TroubleCode.STRANGER, "the Origin is another page");
    }
    if (!comesFromOwnSite(headers) && !isEntry(request, path)) {
      return refuse(403, TroubleCode.STRANGER, "another site asked");
    }
    if (!PLAIN_PATH.matcher(path).matches()) {
      return refuse(404, TroubleCode.NOT_FOUND, "the path is not plain");
    }
    if (path.startsWith(ENTER) || path.equals(KNOCK)) {
      return Optional.empty();
    }
    return refusalInside(request, headers, path);
  }

  private Optional<Refusal> refusalInside(Request request, HttpFields headers, String path) {
    int slash = path.indexOf('/', 1);
    if (slash < 0 || !session.isSecret(path.substring(1, slash))) {
      return refuse(404, TroubleCode.OLD_ADDRESS, "not an address of this start");
    }
    if (!hasCookie(request)) {
      return refuse(403, TroubleCode.OLD_ADDRESS, "the cookie is missing");
    }
    if (READING.contains(request.getMethod())) {
      return Optional.empty();
    }
    if (!WRITING.contains(request.getMethod())) {
      return refuse(405, TroubleCode.METHOD, "the method is not offered");
    }
    if (!"1".equals(headers.get("X-Lehrcase"))) {
      return refuse(403, TroubleCode.STRANGER, "the header X-Lehrcase is missing");
    }
    return Optional.empty();
  }

  private boolean isOurHost(Request request, HttpFields headers) {
    long hosts = headers.stream().filter(f -> f.getHeader() == HttpHeader.HOST).count();
    return hosts == 1
        && own.equals(headers.get(HttpHeader.HOST))
        && own.equals(request.getHttpURI().getAuthority());
  }

  private static boolean comesFromOwnSite(HttpFields headers) {
    for (HttpField site : headers.getFields("Sec-Fetch-Site")) {
      if (!OWN_SITES.contains(site.getValue())) {
        return false;
      }
    }
    return true;
  }

  /** Only the one-time entry may be reached from elsewhere, and only as a page of its own. */
  private static boolean isEntry(Request request, String path) {
    HttpFields headers = request.getHeaders();
    return path.startsWith(ENTER)
        && !path.equals(MOVE_SCRIPT)
        && request.getMethod().equals("GET")
        && isAbsentOr(headers, "Sec-Fetch-Mode", "navigate")
        && isAbsentOr(headers, "Sec-Fetch-Dest", "document");
  }

  private static boolean isAbsentOr(HttpFields headers, String name, String value) {
    @Nullable String found = headers.get(name);
    return found == null || found.equals(value);
  }

  private boolean hasCookie(Request request) {
    for (HttpCookie cookie : Request.getCookies(request)) {
      if (cookie.getName().equals(Session.COOKIE) && session.isCookie(cookie.getValue())) {
        return true;
      }
    }
    return false;
  }

  private static Optional<Refusal> refuse(int status, TroubleCode code, String reason) {
    return Optional.of(new Refusal(status, code, reason));
  }
}
