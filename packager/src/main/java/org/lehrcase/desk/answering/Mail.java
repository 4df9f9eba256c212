package org.lehrcase.desk.answering;

import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.desk.sales.LicenseEntry;

/**
 * A message as it goes into the teacher's own mail program, in four pieces to copy.
 *
 * @param to the address in the sales book, and no other
 * @param subject one line
 * @param text what to say
 * @param fileName the name of the file that goes with it
 * @param file what stands in the file
 */
public record Mail(String to, String subject, String text, String fileName, String file) {
  private static final int MARK_DIGITS = 6;

  /**
   * Words the mail with a key letter.
   *
   * @param owner whose laptop it is
   * @param letter the letter, byte for byte
   * @param shop the name of the shop
   * @return the mail
   */
  public static Mail letter(LicenseEntry owner, Octets letter, String shop) {
    String text =
        hello(owner)
            + "here is the key letter for your laptop. Bring the file to that laptop and drop it on"
            + " the start page of Lehrcase; no internet is needed there.\n\n"
            + "It opens nothing on any other machine. Keep it with your license.\n\n"
            + shop
            + "\n";
    return new Mail(
        owner.person().email(),
        "The key letter for your laptop",
        text,
        "key letter " + mark(owner) + ".txt",
        MessageText.ofKeptLetter(letter.toBytes()));
  }

  /**
   * Words the mail with a license.
   *
   * @param owner who bought
   * @param license the license as it was issued last
   * @param shop the name of the shop
   * @return the mail
   */
  public static Mail license(LicenseEntry owner, License license, String shop) {
    String text =
        hello(owner)
            + "here is your license for "
            + String.join(", ", license.terms().series())
            + ". Put the course stick in, start Lehrcase, and drop the file on its start page. Then"
            + " press \"Send this laptop card\" and send me the card that appears; the key letter"
            + " that I send back opens the course on that laptop.\n\n"
            + "The license does not expire. Keep the file.\n\n"
            + shop
            + "\n";
    return new Mail(
        owner.person().email(),
        "Your license",
        text,
        "license " + mark(owner) + ".txt",
        MessageText.of(license));
  }

  private static String hello(LicenseEntry owner) {
    return "Hello " + owner.person().name() + ",\n\n";
  }

  private static String mark(LicenseEntry owner) {
    return owner.id().hex().substring(0, MARK_DIGITS);
  }
}
