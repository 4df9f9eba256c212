package org.lehrcase.core.glass.plan;

import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;

/**
 * Something that a careful kiln-former would want to know.
 *
 * @param topic what it is about
 * @param says one or two sentences with figures
 */
public record FiringWarning(Topic topic, Phrase says) {
  /** What a warning is about. */
  public enum Topic {
    /** What the controller cannot be told. */
    CONTROLLER,
    /** Fields of the question that were passed over. */
    QUESTION,
    /** Every result. */
    ESTIMATE,
    /** Figures of the glass that nobody has confirmed. */
    GLASS_FIGURES,
    /** The soak against the strain point. */
    SOAK,
    /** Tension of the moment. */
    TENSION,
    /** Tension that stays. */
    RESIDUE,
    /** A core that is behind. */
    CORE,
    /** Time where the surface clouds. */
    CLOUDING,
    /** The lid. */
    LID,
    /** What the kiln can do. */
    KILN,
    /** Nobody can watch so long. */
    UNATTENDED,
    /** Faces and shelf. */
    FACES,
    /** The maker's table. */
    MAKERS_TABLE,
    /** Loose sheets that did not grow together. */
    NOT_FUSED
  }

  /** Makes a warning. */
  public static FiringWarning of(Topic topic, String words, Figure... figures) {
    return new FiringWarning(topic, Phrase.of(words, figures));
  }

  /** Returns the sentences in °C and mm. */
  public String text() {
    return says.text();
  }

  /** Says whether the schedule itself should be looked at again, not only read with care. */
  public boolean asksForChange() {
    return switch (topic) {
      case SOAK, TENSION, RESIDUE, CORE, CLOUDING, NOT_FUSED -> true;
      default -> false;
    };
  }
}
