package org.lehrcase.bench.web;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which bytes of a representation to answer with (RFC 9110 sections 14.1.2 and 14.2). A header that
 * is not a single well-formed byte range is ignored, as the standard allows: the whole is sent.
 */
sealed interface RangeChoice {
  /** The whole representation, status 200. */
  record Whole() implements RangeChoice {}

  /**
   * One range, status 206.
   *
   * @param from first byte, counted from 0
   * @param to one past the last byte
   */
  record Span(long from, long to) implements RangeChoice {
    String contentRange(long size) {
      return "bytes " + from + "-" + (to - 1) + "/" + size;
    }
  }

  /** No byte of the representation is in the range, status 416. */
  record Unsatisfiable() implements RangeChoice {}

  /** First position and last position, either of them possibly empty. */
  Pattern SINGLE = Pattern.compile("(?i:bytes)=[ \\t]*(\\d*)-(\\d*)[ \\t]*");

  /**
   * Chooses for the Range fields of a request.
   *
   * @param fields every Range field as received
   * @param size length of the representation in bytes
   * @return what to send
   */
  static RangeChoice of(List<String> fields, long size) {
    if (fields.size() != 1) {
      return new Whole();
    }
    Matcher range = SINGLE.matcher(fields.get(0));
    if (!range.matches() || (range.group(1).isEmpty() && range.group(2).isEmpty())) {
      return new Whole();
    }
    if (range.group(1).isEmpty()) {
      long suffix = Math.min(number(range.group(2)), size);
      return suffix == 0 ? new Unsatisfiable() : new Span(size - suffix, size);
    }
    long first = number(range.group(1));
    long last = range.group(2).isEmpty() ? Long.MAX_VALUE : number(range.group(2));
    if (!range.group(2).isEmpty() && isLess(range.group(2), range.group(1))) {
      return new Whole();
    }
    return first >= size ? new Unsatisfiable() : new Span(first, Math.min(last, size - 1) + 1);
  }

  private static String significant(String digits) {
    return digits.replaceFirst("^0+(?=\\d)", "");
  }

  /** Compares numbers of any length. */
  private static boolean isLess(String digits, String than) {
    String left = significant(digits);
    String right = significant(than);
    return left.length() == right.length()
        ? left.compareTo(right) < 0
        : left.length() < right.length();
  }

  /** Reads digits; more than a long can hold is as good as its largest value. */
  private static long number(String digits) {
    String significant = significant(digits);
    return significant.length() > 18 ? Long.MAX_VALUE : Long.parseLong(significant);
  }
}
