package org.lehrcase.core.table;

import java.util.ArrayList;
import java.util.List;

/** Walks through separated text record by record (RFC 4180, with any one separator). */
final class FieldReader {

  private final String text;
  private int position;
  private int line = 1;
  private char separator = ',';
  private boolean insideQuotes;

  FieldReader(String text) {
    this.text = text;
  }

  boolean hasNext() {
    return position < text.length();
  }

  /** Line on which the next record starts, counted from 1. */
  int line() {
    return line;
  }

  boolean endedInsideQuotes() {
    return insideQuotes;
  }

  void separateBy(char character) {
    separator = character;
  }

  String peekLine() {
    int end = text.indexOf('\n', position);
    return text.substring(position, end < 0 ? text.length() : end);
  }

  /** Reads one record; it has at least one field. */
  List<String> next() {
    List<String> fields = new ArrayList<>();
    do {
      fields.add(field().strip());
    } while (take(separator));
    if (take('\n')) {
      line++;
    }
    return fields;
  }

  private boolean take(char wanted) {
    if (hasNext() && text.charAt(position) == wanted) {
      position++;
      return true;
    }
    return false;
  }

  private void skipSpaces() {
    while (hasNext() && text.charAt(position) == ' ') {
      position++;
    }
  }

  /** A field is quoted if the mark is its first character but spaces; doubled marks are one. */
  private String field() {
    var field = new StringBuilder();
    skipSpaces();
    insideQuotes = take('"');
    while (hasNext()) {
      char c = text.charAt(position);
      if (!insideQuotes && (c == separator || c == '\n')) {
        break;
      }
      position++;
      if (insideQuotes && c == '"') {
        insideQuotes = take('"');
        if (!insideQuotes) {
          continue;
        }
      }
      if (c == '\n') {
        line++;
      }
      field.append(c);
    }
    return field.toString();
  }
}
