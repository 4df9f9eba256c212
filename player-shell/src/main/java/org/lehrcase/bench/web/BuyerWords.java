package org.lehrcase.bench.web;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.license.License;

/** The words in the margin of every print: whose license it is. */
final class BuyerWords {
  private final Bench bench;

  BuyerWords(Bench bench) {
    this.bench = bench;
  }

  /** Returns the buyer of an edition; "open lesson" if none of the licenses is for it. */
  String of(OpenedEdition edition) throws VaultException, IOException {
    String series = edition.frontPage().title().series();
    for (License license : bench.opening().licenses()) {
      if (license.terms().series().contains(series)) {
        return words(license);
      }
    }
    return "open lesson";
  }

  /** Returns whoever has a license on this laptop, for papers of the student's own. */
  String owner() throws VaultException, IOException {
    Optional<License> first = bench.opening().licenses().stream().findFirst();
    return first.map(BuyerWords::words).orElse("");
  }

  private static String words(License license) {
    return license.terms().name() + " · license " + license.id().hex().substring(0, 8);
  }
}
