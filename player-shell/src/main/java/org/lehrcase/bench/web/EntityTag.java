package org.lehrcase.bench.web;

import java.util.List;

/**
 * A strong entity tag (RFC 9110 section 8.8.3) and the comparisons of the conditional fields.
 *
 * @param opaque hexadecimal digits only
 */
record EntityTag(String opaque) {
  EntityTag {
    if (opaque.isEmpty() || !isHex(opaque)) {
      throw new IllegalArgumentException("an entity tag of ours is hexadecimal");
    }
  }

  /** Whether there are hexadecimal digits only; asked for every range, so without a pattern. */
  static boolean isHex(String text) {
    return text.chars().allMatch(c -> (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'));
  }

  String field() {
    return "\"" + opaque + "\"";
  }

  /** Weak comparison, for If-None-Match. */
  boolean matchesWeakly(List<String> fields) {
    return anyOf(fields, true);
  }

  /** Strong comparison, for If-Match. */
  boolean matchesStrongly(List<String> fields) {
    return anyOf(fields, false);
  }

  /** If-Range takes exactly one strong tag; a date never matches, as we send none. */
  boolean allowsRange(List<String> ifRange) {
    return ifRange.isEmpty() || (ifRange.size() == 1 && ifRange.get(0).trim().equals(field()));
  }

  /** The asterisk stands alone (RFC 9110, 13.1.1); inside a tag it is a sign like others. */
  private boolean anyOf(List<String> fields, boolean weakToo) {
    if (fields.size() == 1 && fields.get(0).trim().equals("*")) {
      return true;
    }
    for (String field : fields) {
      for (String item : field.split(",")) {
        String tag = item.trim();
        if (tag.equals(field()) || (weakToo && tag.equals("W/" + field()))) {
          return true;
        }
      }
    }
    return false;
  }
}
