package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.Trait;
import org.lehrcase.core.device.Traits;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;

/** Random lives of a laptop: messages in any order, repairs, thefts; against a small model. */
class OpeningProperties {
  private static final int STEPS = 30;
  private static final int LICENSES = 2;

  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private final License[] licenses = new License[LICENSES];
  private final Map<Octets, Answer> answers = new HashMap<>();
  private final OpeningModel model = new OpeningModel();
  private int[] traits = new int[5];
  private Bench bench;

  static LongStream seeds() {
    Long given = Long.getLong("lehrcase.seed");
    SplittableRandom random = new SplittableRandom();
    return given != null
        ? LongStream.of(given)
        : LongStream.generate(() -> random.nextLong(1L << 48)).limit(24);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theProgramAgreesWithTheModelAfterEachStep(long seed) throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    for (int i = 0; i < LICENSES; i++) {
      licenses[i] = shop.sell("Robin Invented");
    }
    start();
    bench.courses().bringIn(edition.folder());
    try {
      StringBuilder story = new StringBuilder();
      for (int step = 0; step < STEPS; step++) {
        story.append(step(random)).append("; ");
        assertAgrees(story.toString());
      }
    } finally {
      bench.close();
    }
  }

  private void start() throws Exception {
    bench = TinyBench.quick(folder.resolve("home"), machine(), folder.resolve("stick"));
    model.start(traits);
  }

  private Traits machine() {
    List<List<Trait>> values =
        java.util.stream.IntStream.of(traits)
            .mapToObj(value -> OtherMachine.named("value " + value).read())
            .toList();
    return () ->
        java.util.stream.IntStream.range(0, 5)
            .mapToObj(slot -> values.get(slot).get(slot))
            .toList();
  }

  private String step(SplittableRandom random) throws Exception {
    return switch (random.nextInt(8)) {
      case 0 -> license(random.nextInt(LICENSES));
      case 1, 2 -> card(random.nextInt(LICENSES + 1) - 1);
      case 3, 4 -> letter(random);
      case 5 -> repair(random);
      case 6 -> strangerLetter();
      default -> back();
    };
  }

  private String license(int index) throws Exception {
    Dropped dropped = bench.opening().acceptLicense(licenses[index].toBytes());
    assertThat(dropped.outcome())
        .isEqualTo(
            model.licenses.contains(index) ? Dropped.Outcome.KNOWN : Dropped.Outcome.ACCEPTED);
    model.accepted(index);
    return "license " + index;
  }

  private String card(int index) throws Exception {
    Optional<LicenseId> license = index < 0 ? Optional.empty() : Optional.of(licenses[index].id());
    Octets bytes = Octets.of(bench.opening().card(license).toBytes());
    Optional<OpeningModel.Card> waiting = model.waiting(index);
    if (waiting.isPresent()) {
      assertThat(bytes).as("the card that waits is shown again").isEqualTo(waiting.get().bytes);
    } else {
      assertThat(model.cards).noneMatch(card -> card.bytes.equals(bytes));
      model.made(bytes, index);
    }
    return "card for " + index;
  }

  private String letter(SplittableRandom random) throws Exception {
    if (model.cards.isEmpty()) {
      return "no letter";
    }
    OpeningModel.Card card = model.cards.get(random.nextInt(model.cards.size()));
    Answer answer = answer(card, random);
    int owner = answer.owner();
    byte[] letter = answer.letter().toBytes();
    if (model.canTake(card)) {
      assertThat(bench.opening().acceptLetter(letter).outcome())
          .isEqualTo(model.opens(card) ? Dropped.Outcome.KNOWN : Dropped.Outcome.ACCEPTED);
      model.answered(card, owner);
    } else {
      assertThatThrownBy(() -> bench.opening().acceptLetter(letter))
          .isInstanceOf(VaultException.WrongLaptop.class);
    }
    return "letter of " + owner;
  }

  /** What the teacher sent back for a card: once given, for the same license ever after. */
  private record Answer(int owner, KeyLetter letter) {}

  /** The same card always gets the same letter, also if an earlier one could not be taken. */
  private Answer answer(OpeningModel.Card card, SplittableRandom random) throws Exception {
    Answer answer = answers.get(card.bytes);
    if (answer == null) {
      int owner = card.license >= 0 ? card.license : random.nextInt(LICENSES);
      KeyLetter letter = shop.answer(LaptopCard.verify(card.bytes.toBytes()), licenses[owner].id());
      answer = new Answer(owner, letter);
      answers.put(card.bytes, answer);
    }
    return answer;
  }

  private String repair(SplittableRandom random) throws Exception {
    bench.close();
    int changes = 1 + random.nextInt(5);
    for (int i = 0; i < changes; i++) {
      traits[random.nextInt(5)] = random.nextInt(4);
    }
    start();
    return "repaired to " + java.util.Arrays.toString(traits);
  }

  private String back() throws Exception {
    bench.close();
    traits = new int[5];
    start();
    return "back";
  }

  private String strangerLetter() throws Exception {
    try (Bench other =
        TinyBench.quick(folder.resolve("other"), OtherMachine.named("somebody else"))) {
      LaptopCard card = other.opening().card(Optional.of(licenses[0].id()));
      byte[] letter = shop.answer(card, licenses[0].id()).toBytes();
      assertThatThrownBy(() -> bench.opening().acceptLetter(letter))
          .isInstanceOf(VaultException.WrongLaptop.class);
    }
    return "a stranger's letter";
  }

  private void assertAgrees(String story) throws Exception {
    bench.courses().forgetAll();
    assertThat(bench.courses().open(edition.id()).contents().isPresent())
        .as("course after %s", story)
        .isEqualTo(model.courseOpens());
    for (int i = 0; i < LICENSES; i++) {
      assertThat(bench.opening().state(licenses[i].id()))
          .as("license %d after %s", i, story)
          .isEqualTo(model.state(i));
    }
    assertThat(bench.store().places().all())
        .as("nothing is deleted: %s", story)
        .extracting(place -> place.card())
        .containsExactlyInAnyOrderElementsOf(model.cards.stream().map(card -> card.bytes).toList());
    assertThat(bench.opening().licenses()).hasSize(model.licenses.size());
  }
}
