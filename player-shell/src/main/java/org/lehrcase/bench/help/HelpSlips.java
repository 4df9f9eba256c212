package org.lehrcase.bench.help;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.LicenseState;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.DiskSpace;
import org.lehrcase.core.device.TraitReport;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.FolderReport;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.License;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.OpeningStep;

/** Writes the help slip of a bench. */
public final class HelpSlips {
  private static final int MEBIBYTE = 1 << 20;
  private static final int KIBIBYTE = 1 << 10;

  /** What is told, the most telling first, when several licenses stand at different steps. */
  private static final Map<LicenseState, OpeningStep> STEPS = steps();

  private final Bench bench;
  private final String version;

  /**
   * Looks at a bench.
   *
   * @param bench the bench
   * @param version the program's version
   */
  public HelpSlips(Bench bench, String version) {
    this.bench = bench;
    this.version = version;
  }

  /**
   * Writes the slip of now.
   *
   * @param day today
   * @param fault the code of the error that was shown, if one was
   * @return the slip
   * @throws IOException if the student's database cannot be read
   * @throws VaultException if a kept license does not verify any more
   */
  public HelpSlip write(LocalDate day, Optional<String> fault) throws IOException, VaultException {
    List<KnownEdition> newest = newest();
    List<HelpSlip.Copy> copies = new ArrayList<>();
    OptionalLong pace = OptionalLong.empty();
    for (KnownEdition known : newest) {
      Optional<OpenedEdition> opened = open(known);
      copies.add(copy(known, opened));
      if (pace.isEmpty() && opened.isPresent()) {
        pace = MediumSpeed.bytesPerSecond(opened.get().folder());
      }
    }
    return new HelpSlip(
        day, program(), step(!newest.isEmpty()), fault, room(pace), copies, traits());
  }

  private static Map<LicenseState, OpeningStep> steps() {
    Map<LicenseState, OpeningStep> steps = new LinkedHashMap<>();
    steps.put(LicenseState.SHUT, OpeningStep.SHUT);
    steps.put(LicenseState.ACTIVE, OpeningStep.OPEN);
    steps.put(LicenseState.ASKED, OpeningStep.CARD_MADE);
    steps.put(LicenseState.NO_CARD, OpeningStep.NO_CARD);
    steps.put(LicenseState.PASSED, OpeningStep.PASSED);
    return steps;
  }

  private HelpSlip.Program program() {
    return new HelpSlip.Program(
        version,
        String.valueOf(System.getProperty("java.version")),
        System.getProperty("os.name") + " " + System.getProperty("os.version"));
  }

  private List<KnownEdition> newest() throws IOException {
    return bench.courses().known().stream()
        .sorted(
            Comparator.comparing(KnownEdition::restores)
                .thenComparing(KnownEdition::number)
                .reversed())
        .limit(HelpSlip.MAX_COPIES)
        .toList();
  }

  private OpeningStep step(boolean knowsEditions) throws IOException, VaultException {
    Set<LicenseState> states = EnumSet.noneOf(LicenseState.class);
    for (License license : bench.opening().licenses()) {
      states.add(bench.opening().state(license.id()));
    }
    OpeningStep without = knowsEditions ? OpeningStep.NO_LICENSE : OpeningStep.NO_EDITION;
    return STEPS.entrySet().stream()
        .filter(step -> states.contains(step.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(without);
  }

  /** A copy that cannot be opened at all counts as if nothing of it were here. */
  private Optional<OpenedEdition> open(KnownEdition known) throws IOException {
    try {
      return Optional.of(bench.courses().open(known.id()));
    } catch (Trouble | VaultException e) {
      return Optional.empty();
    }
  }

  private HelpSlip.Copy copy(KnownEdition known, Optional<OpenedEdition> opened)
      throws IOException {
    byte[] id = Arrays.copyOf(known.id().toBytes(), HelpSlip.Copy.EDITION_BYTES);
    int parts = 0;
    int missing = 0;
    int damaged = 0;
    if (opened.isPresent()) {
      for (FolderReport report : EditionCheck.glance(opened.get().folder()).folders()) {
        parts += report.parts().size();
        missing += (int) report.count(PartState.NOT_HERE);
        damaged += (int) report.count(PartState.DAMAGED);
      }
      damaged += met(opened.get());
    }
    return new HelpSlip.Copy(Octets.of(id), parts, missing, damaged);
  }

  private int met(OpenedEdition edition) {
    return (int)
        edition.lessons().stream()
            .flatMap(lesson -> lesson.assets().stream())
            .filter(asset -> !bench.courses().damage().of(asset.id()).isEmpty())
            .count();
  }

  private HelpSlip.Room room(OptionalLong bytesPerSecond) {
    long free = DiskSpace.freeAt(bench.home());
    return new HelpSlip.Room(
        free == DiskSpace.UNKNOWN ? OptionalLong.empty() : OptionalLong.of(free / MEBIBYTE),
        bytesPerSecond.isPresent()
            ? OptionalLong.of(bytesPerSecond.getAsLong() / KIBIBYTE)
            : OptionalLong.empty());
  }

  private HelpSlip.TraitCounts traits() throws IOException, VaultException {
    Optional<TraitReport> report = bench.laptop().report();
    return new HelpSlip.TraitCounts(
        report.map(r -> r.same().size()).orElse(0),
        report.map(r -> r.changed().size()).orElse(0),
        report.map(r -> r.absent().size()).orElse(0));
  }
}
