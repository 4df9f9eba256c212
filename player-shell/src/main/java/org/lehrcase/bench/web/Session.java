package org.lehrcase.bench.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.Deque;
import org.lehrcase.core.id.Octets;

/**
 * The secrets of one start: the path under which everything lies, the cookie that goes with it, the
 * one-time tokens by which a browser gets in, and the word by which a second start asks for one.
 * Safe for many threads.
 */
final class Session {
  private static final int SECRET_BYTES = 16;
  private static final int MAX_TOKENS = 8;
  static final String COOKIE = "lehrcase";

  private final SecureRandom random;
  private final String secret;
  private final String cookie;
  private final String knock;
  private final Deque<String> tokens = new ArrayDeque<>();

  private Session(SecureRandom random) {
    this.random = random;
    this.secret = fresh();
    this.cookie = fresh();
    this.knock = fresh();
  }

  static Session start(SecureRandom random) {
    return new Session(random);
  }

  private String fresh() {
    return Octets.random(random, SECRET_BYTES).hex();
  }

  /** Returns the path that every page of this start lies under, with both slashes. */
  String path() {
    return "/" + secret + "/";
  }

  boolean isSecret(String segment) {
    return same(secret, segment);
  }

  boolean isCookie(String value) {
    return same(cookie, value);
  }

  String knock() {
    return knock;
  }

  boolean isKnock(String value) {
    return same(knock, value);
  }

  String setCookie() {
    return COOKIE + "=" + cookie + "; Path=" + path() + "; HttpOnly; SameSite=Strict";
  }

  /** Makes a token for one entry; only the newest few are kept. */
  synchronized String issueToken() {
    String token = fresh();
    tokens.addLast(token);
    if (tokens.size() > MAX_TOKENS) {
      tokens.removeFirst();
    }
    return token;
  }

  /** Uses a token up; true exactly once for a token that was issued. */
  synchronized boolean redeem(String offered) {
    return tokens.removeIf(token -> same(token, offered));
  }

  private static boolean same(String expected, String offered) {
    return MessageDigest.isEqual(
        expected.getBytes(StandardCharsets.ISO_8859_1),
        offered.getBytes(StandardCharsets.ISO_8859_1));
  }

  @Override
  public String toString() {
    return "Session[redacted]";
  }
}
