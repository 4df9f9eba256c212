package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import org.lehrcase.bench.help.QrSquares;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.CodeText;

/** The messages of a text as QR codes, for a page to draw and another machine to photograph. */
final class Codes {
  private Codes() {}

  /** Returns the codes in order, each as rows of {@code 0} and {@code 1}. */
  static JsonArray of(String text) throws VaultException {
    JsonArray codes = new JsonArray();
    for (String code : CodeText.write(Armor.find(text))) {
      codes.add(Json.tree(QrSquares.rows(code)));
    }
    return codes;
  }
}
