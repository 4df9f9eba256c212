package org.lehrcase.bench.web;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;

/** Finds a file of an edition that this laptop may open. */
interface MediaFinder {
  /**
   * Opens the file, or returns it if it is open.
   *
   * @throws Trouble if it is unknown, locked, or its stick is away
   */
  CourseFile find(EditionId edition, AssetId asset) throws Trouble, VaultException, IOException;

  /** Returns the file if it is open already; never waits for a medium. */
  Optional<CourseFile> ifOpen(EditionId edition, AssetId asset);
}
