package org.lehrcase.desk.helping;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.OpeningStep;

/**
 * A help slip explained.
 *
 * @param happened what most likely is the matter, for the teacher, the weightiest first
 * @param reply a text to send back, a paragraph each
 */
public record HelpAnswer(List<String> happened, List<String> reply) {
  private static final long SLOW_KIBIBYTES = 3 * 1024L;
  private static final long LITTLE_ROOM_MEBIBYTES = 500;
  private static final int FIRST_SANE_YEAR = 2024;

  /** Copies the lists. */
  public HelpAnswer {
    happened = List.copyOf(happened);
    reply = List.copyOf(reply);
  }

  /** What an error code asks for. */
  private static final Map<String, Advice> BY_CODE =
      Map.of(
          "stick-gone",
              new Advice(
                  "The stick was away while a lesson was read.",
                  "Please put the course stick back in, straight into the laptop and not into a"
                      + " hub; the lesson goes on at the same second."),
          "store",
              new Advice(
                  "The laptop could not read or write its data folder.",
                  "Please look whether the laptop's disk is full, make some room, and start"
                      + " Lehrcase again. Nothing that was kept is lost."),
          "already-running",
              new Advice(
                  "A copy of Lehrcase was running already.",
                  "Please use Quit on the page of Lehrcase, or restart the laptop, and start it"
                      + " from its icon."),
          "too-new",
              new Advice(
                  "The laptop has an older Lehrcase than the file needs.",
                  "Please start the newer Lehrcase from the course stick; your notes stay."),
          "unknown-file",
              new Advice(
                  "A file was dropped that is no message of Lehrcase.",
                  "Please drop the file that came with my mail, exactly as it came, or paste the"
                      + " whole text down to its last line."),
          "not-allowed",
              new Advice(
                  "Printing was asked for where you have not allowed it.",
                  "That kind of paper is not meant to be saved; tell me what you need it for."));

  /** What a step asks for when nothing else is the matter. */
  private static final Map<OpeningStep, Advice> BY_STEP =
      Map.of(
          OpeningStep.NO_EDITION,
              new Advice(
                  "No course was brought in.",
                  "Please put the course stick in; the start page shows it under \"Course sticks"
                      + " and folders\". Press \"Bring in\" beside it."),
          OpeningStep.NO_LICENSE,
              new Advice(
                  "There is no license on the laptop.",
                  "Please drop the license file from my mail, or from the stick, on the start"
                      + " page."),
          OpeningStep.NO_CARD,
              new Advice(
                  "No laptop card was made.",
                  "Please press \"Send this laptop card\" on the start page and send me the file."),
          OpeningStep.CARD_MADE,
              new Advice(
                  "A laptop card was made; the key letter has not arrived, or was not dropped.",
                  "Please drop my key letter on the start page. If you do not find it, send me the"
                      + " laptop card once more: the same card gets the same letter."),
          OpeningStep.SHUT,
              new Advice(
                  "The machine is not recognised: a part or the system was changed.",
                  "Your notes are kept. Please press \"Send this laptop card\" and send me the"
                      + " file; my letter opens everything again."),
          OpeningStep.PASSED,
              new Advice(
                  "The place was passed on to another laptop.",
                  "This laptop gave its place to another one. Please use that one, or write to me"
                      + " if it is lost."));

  private record Advice(String happened, String reply) {}

  /**
   * Explains a slip.
   *
   * @param slip the slip, whose word is taken as it is
   * @return what to know and what to send
   */
  public static HelpAnswer to(HelpSlip slip) {
    List<Advice> found = new ArrayList<>();
    slip.fault().map(BY_CODE::get).ifPresent(found::add);
    copies(slip, found);
    surroundings(slip, found);
    if (BY_STEP.containsKey(slip.step())) {
      found.add(BY_STEP.get(slip.step()));
    }
    if (found.isEmpty()) {
      found.add(
          new Advice(
              "Nothing in this slip tells what is wrong.",
              "From here all looks well. Please press \"Check this copy\" on the start page and"
                  + " tell me what it says, and which lesson and second it is about."));
    }
    return new HelpAnswer(
        found.stream().map(Advice::happened).toList(), found.stream().map(Advice::reply).toList());
  }

  /** A copy of which no part is told was not found at all, or did not open. */
  private static boolean isAway(HelpSlip slip) {
    return slip.step() == OpeningStep.OPEN
        && slip.fault().filter(BY_CODE::containsKey).isEmpty()
        && !slip.copies().isEmpty()
        && slip.copies().stream().allMatch(copy -> copy.parts() == 0);
  }

  private static void copies(HelpSlip slip, List<Advice> found) {
    if (isAway(slip)) {
      found.add(
          new Advice(
              "No course was found when the slip was written; its stick was away.",
              "Please put the course stick in and open the lesson again. If it still does not open,"
                  + " write me another help slip while the stick is in."));
    }
    int damaged = slip.copies().stream().mapToInt(HelpSlip.Copy::damaged).sum();
    int missing = slip.copies().stream().mapToInt(HelpSlip.Copy::missing).sum();
    if (damaged > 0) {
      found.add(
          new Advice(
              damaged + " file(s) of the course are damaged on that copy.",
              "Part of your copy is damaged. The other lessons play. Please press \"Check this"
                  + " copy\"; I will send you a new stick, or copy the course again from where it"
                  + " came."));
    }
    if (missing > 0) {
      found.add(
          new Advice(
              missing + " file(s) of the course are not in that copy; that is no damage.",
              "Some lessons are not in your copy. Please bring in the stick that has all of them,"
                  + " or copy its folders beside those that you have."));
    }
  }

  private static void surroundings(HelpSlip slip, List<Advice> found) {
    if (slip.room().freeMebibytes().orElse(LITTLE_ROOM_MEBIBYTES) < LITTLE_ROOM_MEBIBYTES) {
      found.add(
          new Advice(
              "The laptop's disk is nearly full.",
              "Please make room on the laptop's disk: one gigabyte is plenty."));
    }
    slip.room()
        .stickKibibytesPerSecond()
        .ifPresent(
            pace -> {
              if (pace < SLOW_KIBIBYTES) {
                found.add(
                    new Advice(
                        "The stick is read slowly; films may stop.",
                        "Your stick is slow in that socket. Please try the other sockets of the"
                            + " laptop, or copy the course folder to its disk and bring it in from"
                            + " there."));
              }
            });
    if (slip.day().getYear() < FIRST_SANE_YEAR) {
      found.add(
          new Advice(
              "The laptop's clock is wrong (" + slip.day() + "); Lehrcase does not mind.",
              "The clock of your laptop is wrong. Lehrcase works all the same."));
    }
  }
}
