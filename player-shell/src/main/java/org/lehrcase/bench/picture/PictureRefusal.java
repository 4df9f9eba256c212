package org.lehrcase.bench.picture;

/** A picture that cannot be taken, in words for the person who brought it. */
public final class PictureRefusal extends Exception {
  private static final long serialVersionUID = 1L;

  private final String next;

  /**
   * Creates it.
   *
   * @param happened one sentence
   * @param next what to do
   */
  public PictureRefusal(String happened, String next) {
    super(happened);
    this.next = next;
  }

  /** Returns what to do. */
  public String next() {
    return next;
  }
}
