package org.lehrcase.bench.web;

import java.util.Optional;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;

/** Stands where a program has pages but plays no course. */
enum NoMedia implements MediaFinder {
  NONE;

  static final Downloads NO_PAPERS =
      (name, response, callback) -> {
        throw nothing();
      };

  @Override
  public CourseFile find(EditionId edition, AssetId asset) throws Trouble {
    throw nothing();
  }

  @Override
  public Optional<CourseFile> ifOpen(EditionId edition, AssetId asset) {
    return Optional.empty();
  }

  private static Trouble nothing() {
    return new Trouble(TroubleCode.NOT_FOUND, "There is no such file.", "Load the page again.");
  }
}
