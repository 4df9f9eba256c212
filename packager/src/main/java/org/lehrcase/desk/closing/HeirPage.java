package org.lehrcase.desk.closing;

import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import org.lehrcase.desk.envelopes.PrintedPage;

/** One page for whoever looks after the course one day. It holds no key. */
public final class HeirPage {
  private HeirPage() {}

  /**
   * Draws the page.
   *
   * @param shop the name of the shop
   * @param words the five words by which benches show it
   * @param day today
   * @return a PDF of one A4 sheet
   * @throws IOException if drawing fails
   */
  public static byte[] draw(String shop, List<String> words, LocalDate day) throws IOException {
    return PrintedPage.draw(
        "For the person who looks after this course one day",
        shop + ", " + day + ", known by: " + String.join(" ", words),
        List.of(
            "The people who bought these courses own them. Nothing runs out when the shop",
            "ends: what opens on their laptops stays open, with no internet, for ever.",
            "Only new laptops need somebody who answers. You can do one of two things.",
            "",
            "A.  Go on answering",
            "     1. Install Lehrcase on any computer, and find the desk's folder or a backup",
            "         and its passphrase; or two of the three spare-key envelopes and any copy",
            "         of an edition.",
            "     2. lehrcase-desk open --home FOLDER     (or: restore, or: recover)",
            "     3. Drop what buyers send under \"Laptops\", and send back what appears.",
            "",
            "B.  Close the shop: every copy opens for everybody, for ever",
            "     1. Get the desk to work as in A, steps 1 and 2.",
            "     2. Rehearse; this publishes nothing:",
            "         lehrcase-desk close --home FOLDER --rehearse EDITION",
            "     3. Write the key:",
            "         lehrcase-desk close --home FOLDER --out closing-key.txt \\",
            "             --sure \"" + shop + "\"",
            "     4. Send the file to every buyer, and lay it beside the editions wherever they",
            "         can be fetched. Whoever drops it on the start page of Lehrcase opens",
            "         every copy of these courses, without a license.",
            "",
            "What was published cannot be taken back. It opens the courses and nothing else:",
            "nobody can sign, sell or change anything in the name of the shop with it.",
            "",
            "Where the envelopes are:  ____________________   ____________________   ____________________",
            "",
            "Where the editions are:   ______________________________________________________________",
            "",
            "Who can help:                  ______________________________________________________________"));
  }
}
