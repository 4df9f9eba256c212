package org.lehrcase.core.glass.care;

import java.util.List;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;

/** Something that can hurt people or pieces, in words for the person at the kiln. */
public enum Caution {
  /** Hot things look cold. */
  BURNS(
      Place.EVERY_FIRING,
      "Kiln, lid, shelf and glass stay hot for hours and look the same as cold ones. Wear"
          + " heat-proof gloves and never test with a hand."),
  /** What can burn near a kiln. */
  FIRE(
      Place.EVERY_FIRING,
      "Keep the free space around the kiln that its manual asks for, nothing that burns near or"
          + " above it, an extinguisher and a smoke alarm at hand."),
  /** The laptop with this sheet. */
  LAPTOP(
      Place.EVERY_FIRING,
      "Keep this laptop away from the kiln's heat and out of powder and fibre dust; the printed"
          + " sheet is for the kiln."),
  /** Figures have a spread. */
  ESTIMATE(
      Place.EVERY_FIRING,
      "All of this is an estimate, thirty per cent either way, and kilns are uneven inside. Test"
          + " small, slow down first. The maker's instructions come before this sheet."),
  /** Nobody watches for days. */
  UNATTENDED(
      Place.LONG_FIRING,
      "No firing of days is watched throughout: be there at the top and at each change of stage,"
          + " and have a cut-off that works without the controller. A relay can weld shut."),
  /** Smoke of media and papers. */
  FUMES(
      Place.BURN_OFF,
      "Media, glue and fibre papers smoke while they burn off. Air the room, keep people and birds"
          + " out, and close the vent afterwards: a draught cracks glass."),
  /** Infrared. */
  EYES(
      Place.LOOKING_IN,
      "A glowing kiln gives off infrared that harms eyes over the years. Use a filter made for it;"
          + " sunglasses are none."),
  /** Opening early. */
  THERMAL_SHOCK(
      Place.LID,
      "Do not lift the lid above the stated temperature, not even for a look: the surface is pulled"
          + " apart at once."),
  /** Cracked blocks throw chips. */
  CHIPS(
      Place.LID,
      "Wear clear safety glasses when you open a cold kiln: a cracked block can throw chips."),
  /** Ceramic fibre. */
  FIBRE(
      Place.DAMS_AND_SHELF,
      "Fibre paper, board and blanket can harm the lungs, fired more than new. Cut it damp, never"
          + " sweep or blow it, and wear the respirator that your local rules name."),
  /** Damp ceramics. */
  DAMP(
      Place.DAMS_AND_SHELF,
      "Damp or freshly washed dams and shelves crack when hurried: dry them below {} first.",
      Figure.celsius(120)),
  /** Dust of wash and powder. */
  DUST(
      Place.ENAMEL,
      "Dust of kiln wash, enamel powder and ground glass belongs in no lung: work wet, do not sand"
          + " dry, wear a respirator."),
  /** Lead and cadmium. */
  METALS(
      Place.ENAMEL,
      "Many enamels contain lead or cadmium. Read the safety sheet, do not eat at the bench or"
          + " point a brush with the lips, wash hands, and keep children and pregnant people out."),
  /** Mains. */
  ELECTRICITY(
      Place.KILN_SETTINGS,
      "A kiln needs its own circuit, sized and earthed by a licensed electrician to the local code;"
          + " no extension lead. Unplug it before you touch an element."),
  /** After a failure of the mains. */
  POWER_CUT(
      Place.POWER_CUT,
      "Leave the lid shut and let the kiln cool by itself. Note the lowest temperature. Then treat"
          + " the block as badly annealed: heat it at half the usual rate, and anneal it again."),
  /** Heavy glass. */
  WEIGHT(
      Place.BLOCK,
      "A block with dams and shelf is heavy: lift in pairs and know what shelf and kiln floor"
          + " bear."),
  /** Food. */
  FOOD(
      Place.FINISHED_PIECE,
      "A painted block is not for food or drink, unless a laboratory has tested that very glass,"
          + " enamel and firing by the rules of your country."),
  /** Late cracks. */
  LATE_CRACKS(
      Place.FINISHED_PIECE,
      "A badly annealed block may break hours or years later. Look at it between crossed polarisers"
          + " before grinding. Nothing here says what load a piece bears.");

  private final Place place;
  private final Phrase says;

  Caution(Place place, String words, Figure... figures) {
    this.place = place;
    this.says = Phrase.of(words, figures);
  }

  /** Returns where it is shown. */
  public Place place() {
    return place;
  }

  /** Returns what is shown. */
  public Phrase says() {
    return says;
  }

  /** Returns what is shown, in °C and mm. */
  public String words() {
    return says.text();
  }

  /** Returns the cautions of some places, in a fixed order. */
  public static List<Caution> at(List<Place> places) {
    return java.util.Arrays.stream(values()).filter(c -> places.contains(c.place)).toList();
  }
}
