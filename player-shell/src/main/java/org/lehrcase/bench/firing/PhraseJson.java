package org.lehrcase.bench.firing;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;

/** Sentences for a page, which puts their figures into the units of whoever reads. */
public final class PhraseJson {
  private PhraseJson() {}

  /** Returns {@code words} with a {@code {}} for each of the {@code figures}. */
  public static JsonObject of(Phrase phrase) {
    var item = new JsonObject();
    item.addProperty("words", phrase.words());
    var figures = new JsonArray();
    for (Figure figure : phrase.figures()) {
      var one = new JsonObject();
      one.addProperty("value", figure.value());
      one.addProperty("is", figure.quantity().id());
      one.addProperty("digits", figure.digits());
      figures.add(one);
    }
    item.add("figures", figures);
    return item;
  }
}
