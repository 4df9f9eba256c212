package org.lehrcase.desk.author;

/** How much a finding matters. */
public enum Severity {
  /** The course cannot be packed until this is put right. */
  ERROR("wrong"),
  /** It can be packed, but a student will probably run into it. */
  DOUBT("doubtful"),
  /** Good to know. */
  NOTE("note");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** Returns the word that stands in reports. */
  public String word() {
    return word;
  }
}
