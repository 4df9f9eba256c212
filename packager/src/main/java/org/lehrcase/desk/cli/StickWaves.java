package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.lehrcase.core.id.Octets;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.sticks.Recipient;
import org.lehrcase.desk.sticks.StickException;
import org.lehrcase.desk.sticks.StickMark;
import org.lehrcase.desk.sticks.StickPapers;
import org.lehrcase.desk.sticks.StickResult;
import org.lehrcase.desk.sticks.Sticks;
import org.lehrcase.desk.sticks.Sticks.Errand;

/**
 * Sticks one after the other in the same sockets: as many at once as there are places, then the
 * teacher is asked for the next ones. A stick that is still the one before is not written over.
 */
final class StickWaves {
  private static final String END = "end";

  private final Sticks run;
  private final Prompt prompt;
  private final PrintWriter err;
  private final boolean goesOn;
  private final Map<Path, Octets> made = new HashMap<>();

  /**
   * Prepares to make sticks.
   *
   * @param run makes those that are in
   * @param prompt asks for the next
   * @param err where notes go
   * @param goesOn whether to ask for the next at all
   */
  StickWaves(Sticks run, Prompt prompt, PrintWriter err, boolean goesOn) {
    this.run = run;
    this.prompt = prompt;
    this.err = err;
    this.goesOn = goesOn;
  }

  /**
   * Makes sticks until all have theirs or the teacher ends it.
   *
   * @param places where sticks show
   * @param recipients whose they will be
   * @param told is told each that was made or failed, at once
   * @return what came of each try
   */
  List<StickResult> make(
      List<Path> places,
      List<Recipient> recipients,
      Optional<StickPapers> papers,
      Consumer<StickResult> told)
      throws IOException, StickException, RefusedException, DeskHomeException {
    Deque<Recipient> waiting = new ArrayDeque<>(recipients);
    List<StickResult> all = new ArrayList<>();
    boolean first = true;
    while (!waiting.isEmpty()) {
      List<Errand> wave = wave(places, waiting);
      if (!first && ends(wave)) {
        return all;
      }
      if (!first && !areOthers(wave)) {
        continue;
      }
      for (StickResult result : tried(wave, papers, first)) {
        told.accept(result);
        all.add(result);
        if (result.made()) {
          waiting.remove(result.recipient());
          StickMark.of(result.stick()).ifPresent(mark -> made.put(result.stick(), mark));
        }
      }
      if (!goesOn) {
        return all;
      }
      first = false;
    }
    return all;
  }

  private static List<Errand> wave(List<Path> places, Deque<Recipient> waiting) {
    List<Errand> wave = new ArrayList<>();
    for (Recipient recipient : waiting) {
      if (wave.size() < places.size()) {
        wave.add(new Errand(places.get(wave.size()), recipient));
      }
    }
    return wave;
  }

  /** A missing stick is an error at first, and only a reason to ask again later. */
  private List<StickResult> tried(List<Errand> wave, Optional<StickPapers> papers, boolean first)
      throws IOException, StickException, RefusedException {
    try {
      return run.make(wave, papers);
    } catch (StickException e) {
      if (first) {
        throw e;
      }
      say(String.valueOf(e.getMessage()));
      return List.of();
    }
  }

  private boolean ends(List<Errand> wave) throws DeskHomeException {
    StringBuilder ask = new StringBuilder("Next stick. Put in, then press Enter:");
    for (Errand errand : wave) {
      ask.append("\n  ").append(errand.stick()).append(": ").append(errand.recipient().words());
    }
    ask.append("\nOr write ").append(END).append(" to stop here: ");
    return prompt.line(ask.toString()).strip().toLowerCase(Locale.ROOT).equals(END);
  }

  private boolean areOthers(List<Errand> wave) {
    boolean others = true;
    for (Errand errand : wave) {
      Optional<Octets> mark = StickMark.of(errand.stick());
      if (mark.isPresent() && mark.equals(Optional.ofNullable(made.get(errand.stick())))) {
        say(errand.stick() + " is still the stick that was just made. Take it out first.");
        others = false;
      }
    }
    return others;
  }

  private void say(String words) {
    err.println("note: " + words);
    err.flush();
  }
}
