package org.lehrcase.core.slip;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;

/**
 * What a bench says about itself when something does not open. Small enough for one QR code, and
 * readable by anybody: see {@link HelpSlipText}.
 *
 * @param day the day by the laptop's clock, which may be wrong
 * @param program what runs
 * @param step how far the opening has come
 * @param fault the code of the error that was shown, such as {@code stick-gone}
 * @param room free space and the speed of the stick
 * @param copies the editions that are known here, the newest {@value #MAX_COPIES}
 * @param traits how the laptop is recognised, as counts
 */
public record HelpSlip(
    LocalDate day,
    Program program,
    OpeningStep step,
    Optional<String> fault,
    Room room,
    List<Copy> copies,
    TraitCounts traits) {
  /** The most copies that a slip names. */
  public static final int MAX_COPIES = 6;

  /** The longest slip, in bytes: one QR code. */
  public static final int MAX_BYTES = 256;

  private static final int FORMAT = 1;
  private static final int FIELDS = 13;
  private static final int MAX_WORD = 24;
  private static final int MAX_DAY = 10;
  private static final int MAX_COUNT = 9_999_999;

  /** Copies the list. */
  public HelpSlip {
    fault = fault.map(HelpSlip::cut);
    copies = List.copyOf(copies);
    if (copies.size() > MAX_COPIES) {
      throw new IllegalArgumentException("at most " + MAX_COPIES + " copies, not " + copies.size());
    }
  }

  /**
   * The program and what it runs on. Longer words are cut to 24 characters.
   *
   * @param version of Lehrcase
   * @param java of the Java runtime
   * @param system name and version of the operating system
   */
  public record Program(String version, String java, String system) {
    /** Cuts what is too long. */
    public Program {
      version = cut(version);
      java = cut(java);
      system = cut(system);
    }
  }

  /**
   * Room and pace.
   *
   * @param freeMebibytes free on the disk of the data folder, if it says it
   * @param stickKibibytesPerSecond how fast the medium was read lately; empty if nothing was
   */
  public record Room(OptionalLong freeMebibytes, OptionalLong stickKibibytesPerSecond) {}

  /**
   * The state of one copy, in numbers of files.
   *
   * @param edition the first four octets of the edition's public id
   * @param parts how many parts the edition has
   * @param missing how many of them are not here
   * @param damaged how many of them did not check out since the program started
   */
  public record Copy(Octets edition, int parts, int missing, int damaged) {
    /** Length of the short edition id, in bytes. */
    public static final int EDITION_BYTES = 4;
  }

  /**
   * How the laptop's traits compare with those it was opened with.
   *
   * @param same as they were
   * @param changed read differently
   * @param absent cannot be read
   */
  public record TraitCounts(int same, int changed, int absent) {}

  /**
   * Encodes the slip.
   *
   * @return at most {@value #MAX_BYTES} bytes
   */
  public byte[] encode() {
    CborWriter out = new CborWriter().array(FIELDS).uint(FORMAT).text(day.toString());
    out.text(program.version()).text(program.java()).text(program.system());
    out.uint(step.ordinal());
    out.text(fault.orElse(""));
    count(out, room.freeMebibytes());
    count(out, room.stickKibibytesPerSecond());
    out.array(copies.size());
    for (Copy copy : copies) {
      out.array(4).bytes(copy.edition());
      out.uint(copy.parts()).uint(copy.missing()).uint(copy.damaged());
    }
    out.uint(traits.same()).uint(traits.changed()).uint(traits.absent());
    return out.toBytes();
  }

  /**
   * Reads a slip. It proves nothing: anybody can write one.
   *
   * @param bytes what {@link #encode} wrote
   * @return the slip
   * @throws VaultException if it is no slip, or one of a later format
   */
  public static HelpSlip decode(byte[] bytes) throws VaultException {
    CborReader in = CborReader.of(bytes);
    in.arrayOf(FIELDS);
    int format = in.smallUint(MAX_COUNT);
    if (format != FORMAT) {
      throw new VaultException.UnsupportedVersion("a help slip of format " + format);
    }
    LocalDate day = day(in.line(MAX_DAY));
    Program program = new Program(in.line(MAX_WORD), in.line(MAX_WORD), in.line(MAX_WORD));
    OpeningStep step = OpeningStep.values()[in.smallUint(OpeningStep.values().length - 1)];
    Optional<String> fault = Optional.of(in.text(MAX_WORD)).filter(code -> !code.isEmpty());
    Room room = room(in);
    List<Copy> copies = copies(in);
    TraitCounts traits = new TraitCounts(count(in), count(in), count(in));
    in.end();
    return new HelpSlip(day, program, step, fault, room, copies, traits);
  }

  private static int count(CborReader in) throws VaultException {
    return in.smallUint(MAX_COUNT);
  }

  private static OptionalLong countOrNull(CborReader in) throws VaultException {
    return in.skipNull() ? OptionalLong.empty() : OptionalLong.of(count(in));
  }

  private static void count(CborWriter out, OptionalLong count) {
    if (count.isPresent()) {
      out.uint(Math.min(count.getAsLong(), MAX_COUNT));
    } else {
      out.nil();
    }
  }

  private static Room room(CborReader in) throws VaultException {
    return new Room(countOrNull(in), countOrNull(in));
  }

  private static List<Copy> copies(CborReader in) throws VaultException {
    Copy[] copies = new Copy[in.array(MAX_COPIES)];
    for (int i = 0; i < copies.length; i++) {
      in.arrayOf(4);
      copies[i] = new Copy(in.octets(Copy.EDITION_BYTES), count(in), count(in), count(in));
    }
    return List.of(copies);
  }

  private static LocalDate day(String text) throws VaultException {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      throw new VaultException.Malformed("a help slip without a day");
    }
  }

  private static String cut(String words) {
    String clean = words.replaceAll("[^\\x20-\\x7e]", "?").strip();
    return clean.substring(0, Math.min(MAX_WORD, clean.length())).strip();
  }
}
