package org.lehrcase.core.edition;

/** What a look at a part found. */
public enum PartState {
  /** It is here, and as whole as the look could tell. */
  HERE,
  /** It, or its digest list, is in no folder; that is no fault of the copy. */
  NOT_HERE,
  /** It is here and not what was sealed. */
  DAMAGED
}
