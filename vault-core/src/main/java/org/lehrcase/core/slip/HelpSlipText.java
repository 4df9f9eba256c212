package org.lehrcase.core.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CodeText;

/** A help slip as people send it: sentences above the block that the desk reads, or a QR code. */
public final class HelpSlipText {
  private static final long KIBIBYTES = 1024;

  private HelpSlipText() {}

  /**
   * Writes a slip as text.
   *
   * @param slip the slip
   * @return readable lines above an armored block
   */
  public static String of(HelpSlip slip) {
    List<String> text = new ArrayList<>();
    text.add("This is a help slip of Lehrcase.");
    text.add("What to do: send it to the teacher from whom you bought the course.");
    text.add("It holds no key, nothing of the course, and no names of your files.");
    text.add("");
    text.addAll(lines(slip));
    return Armor.write(ArmorKind.HELP_SLIP, String.join("\n", text), slip.encode());
  }

  /**
   * Says what a slip holds, a fact a line.
   *
   * @param slip the slip
   * @return lines without line breaks
   */
  public static List<String> lines(HelpSlip slip) {
    List<String> lines = new ArrayList<>();
    lines.add("Day: " + slip.day());
    HelpSlip.Program program = slip.program();
    lines.add(
        "Program: " + program.version() + ", Java " + program.java() + ", " + program.system());
    lines.add("So far: " + slip.step().words());
    slip.fault().ifPresent(code -> lines.add("Error shown: " + code));
    slip.room()
        .freeMebibytes()
        .ifPresent(free -> lines.add("Free on this laptop: " + size(free * KIBIBYTES)));
    slip.room()
        .stickKibibytesPerSecond()
        .ifPresent(pace -> lines.add("Reading the course: " + size(pace) + " a second"));
    slip.copies().forEach(copy -> lines.add(line(copy)));
    lines.add(line(slip.traits()));
    return lines;
  }

  private static String line(HelpSlip.Copy copy) {
    return "Course "
        + copy.edition().hex()
        + ": "
        + copy.parts()
        + " parts, "
        + copy.missing()
        + " not here, "
        + copy.damaged()
        + " damaged";
  }

  private static String line(HelpSlip.TraitCounts traits) {
    return "How this laptop is recognised: "
        + traits.same()
        + " traits as they were, "
        + traits.changed()
        + " changed, "
        + traits.absent()
        + " absent";
  }

  /**
   * Writes a slip as the text of one QR code in its alphanumeric mode.
   *
   * @param slip the slip
   * @return upper-case text
   */
  public static String code(HelpSlip slip) {
    return CodeText.write(ArmorKind.HELP_SLIP, slip.encode()).get(0);
  }

  /**
   * Finds a slip in a text or in the text of a QR code.
   *
   * @param text what arrived
   * @return the slip; empty if there is none
   * @throws VaultException if there is one and it is damaged
   */
  public static Optional<HelpSlip> find(String text) throws VaultException {
    for (Armor.Block block : Armor.find(text)) {
      if (block.kind() == ArmorKind.HELP_SLIP) {
        return Optional.of(HelpSlip.decode(block.bytes()));
      }
    }
    return Optional.empty();
  }

  private static String size(long kibibytes) {
    if (kibibytes < KIBIBYTES) {
      return kibibytes + " KiB";
    }
    double mebibytes = (double) kibibytes / KIBIBYTES;
    return mebibytes < KIBIBYTES
        ? String.format(Locale.ROOT, "%.1f MiB", mebibytes)
        : String.format(Locale.ROOT, "%.1f GiB", mebibytes / KIBIBYTES);
  }
}
