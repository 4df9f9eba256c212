package org.lehrcase.core.glass.say;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.glass.TemperatureUnit;

class PhraseTest {
  private static final Units AMERICAN = new Units(TemperatureUnit.FAHRENHEIT, true);

  @ParameterizedTest(name = "{1} {0}")
  @CsvSource({
    // 1100, 1500 and 900 °F, and 27 °F/h, which is no more than 15 °C/h: by the definition
    "TEMPERATURE, 593.3, 593 °C, 1100 °F",
    "TEMPERATURE, 815.6, 816 °C, 1500 °F",
    "TEMPERATURE, -17.8, -18 °C, 0 °F",
    "DIFFERENCE, 15, 15 K, 27 °F",
    "RATE, 15, 15 °C/h, 27 °F/h",
    "LENGTH, 25.4, 25.4 mm, 1.00 in",
    "LENGTH, 18, 18 mm, 0.71 in",
    "NUMBER, 2.4, 2, 2"
  })
  void aFigureKnowsWhatItIs(Quantity quantity, double value, String metric, String american) {
    var figure = new Figure(value, quantity, quantity == Quantity.LENGTH ? 1 : 0);
    assertThat(figure.in(Units.METRIC)).isEqualTo(metric);
    assertThat(figure.in(AMERICAN)).isEqualTo(american);
  }

  @Test
  void figuresStandWhereTheSentenceHasAPlace() {
    var phrase = Phrase.of("{} h between {} and {}.", hours(1.25), Figure.celsius(700), at760());
    assertThat(phrase.text()).isEqualTo("1.3 h between 700 °C and 760 °C.");
    assertThat(phrase.in(AMERICAN)).isEqualTo("1.3 h between 1292 °F and 1400 °F.");
  }

  private static Figure at760() {
    return Figure.celsius(760);
  }

  /** A quantity without a unit of its own keeps its words in the sentence. */
  private static Figure hours(double hours) {
    return Figure.number(hours, 1);
  }

  @Test
  void wordsThatSomebodyTypedAreNoPlaces() {
    assertThat(Phrase.plain("the line \"{}\" at 500 °C").in(AMERICAN))
        .isEqualTo("the line \"{ }\" at 500 °C");
    assertThatThrownBy(() -> Phrase.of("{} and {}", Figure.celsius(1)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void numbersReadTheSameInEveryCountryAndAreRoundedOnce() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      var random = new SplittableRandom(20_261_130);
      for (int i = 0; i < 500; i++) {
        double value = random.nextDouble(-2000, 2000);
        int digits = random.nextInt(4);
        String shown = Figure.number(value, digits).in(Units.METRIC);
        assertThat(shown).matches(digits == 0 ? "-?\\d+" : "-?\\d+\\.\\d{" + digits + "}");
        assertThat(Double.parseDouble(shown))
            .isCloseTo(value, within(0.5 * Math.pow(10, -digits) + 1e-9));
      }
      assertThat(Figure.number(-0.004, 2).in(Units.METRIC)).isEqualTo("0.00");
      assertThat(Figure.number(0.05, 2).in(Units.METRIC)).isEqualTo("0.05");
      assertThat(Figure.number(Double.NaN, 2).in(Units.METRIC)).isEqualTo("NaN");
    } finally {
      Locale.setDefault(before);
    }
  }
}
