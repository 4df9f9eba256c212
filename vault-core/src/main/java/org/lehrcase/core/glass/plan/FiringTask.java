package org.lehrcase.core.glass.plan;

/** What a firing is to do. */
public enum FiringTask {
  /** Loose sheets become one block. */
  FUSE("fuse"),
  /** A block goes to its top temperature once more. */
  REFIRE("refire"),
  /** A block is only annealed again. */
  ANNEAL("anneal"),
  /** Enamel is fired on, sheet by sheet, before stacking. */
  ENAMEL("enamel");

  private final String id;

  FiringTask(String id) {
    this.id = id;
  }

  /** Returns the name in JSON. */
  public String id() {
    return id;
  }

  /** Returns what is usually done with a block in this state. */
  public static FiringTask usual(Block block) {
    return block.fused() ? REFIRE : FUSE;
  }
}
