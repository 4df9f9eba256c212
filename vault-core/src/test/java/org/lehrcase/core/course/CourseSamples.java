package org.lehrcase.core.course;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;

/** Makes contents from a seed. The keys are plain pseudo-random bytes and open nothing. */
public final class CourseSamples {

  private static final String[] WORDS = {"wash", "Kelp", "far water", "Grün", "ガラス", "A3", "5 < 6"};

  private final Random random;

  /** Starts a sequence that a seed determines. */
  public CourseSamples(long seed) {
    random = new Random(seed);
  }

  /** Returns contents with up to five lessons. */
  public Contents contents() {
    List<Lesson> lessons = new ArrayList<>();
    int count = random.nextInt(6);
    for (int i = 1; i <= count; i++) {
      lessons.add(lesson(i));
    }
    Set<AssetRole> printable = EnumSet.noneOf(AssetRole.class);
    for (AssetRole role : AssetRole.values()) {
      if (random.nextBoolean()) {
        printable.add(role);
      }
    }
    LocalDate day = LocalDate.of(2020 + random.nextInt(30), 1 + random.nextInt(12), 1);
    return new Contents(EditionId.of(bytes(16)), "brush", words(), day, printable, lessons);
  }

  /** Returns a lesson with a few files and moments. */
  public Lesson lesson(int number) {
    List<Asset> assets = new ArrayList<>();
    for (AssetRole role : AssetRole.values()) {
      if (random.nextInt(3) > 0) {
        assets.add(asset(role));
      }
    }
    List<Moment> moments = new ArrayList<>();
    for (Asset asset : assets) {
      moments.add(moment(asset));
    }
    Optional<String> block = random.nextBoolean() ? Optional.of(words()) : Optional.empty();
    return new Lesson(
        LessonId.of(bytes(16)),
        number,
        number,
        words(),
        random.nextBoolean() ? "" : words() + "\n" + words(),
        random.nextBoolean(),
        assets,
        moments,
        block);
  }

  private Moment moment(Asset asset) {
    MomentTarget target = MomentTarget.values()[random.nextInt(MomentTarget.values().length)];
    long at = random.nextInt(1 << 24);
    if (target == MomentTarget.NONE) {
      return Moment.named(at, words());
    }
    int page = target == MomentTarget.PAGE ? 1 + random.nextInt(200) : 0;
    return new Moment(at, words(), target, Optional.of(asset.id()), page);
  }

  private Asset asset(AssetRole role) {
    List<PartRef> parts = new ArrayList<>();
    int count = 1 + random.nextInt(3);
    for (int i = 0; i < count; i++) {
      parts.add(new PartRef(PartAddress.of(bytes(32)), PartKey.ofBytes(bytes(32))));
    }
    return new Asset(
        AssetId.of(bytes(16)),
        role,
        Rendition.values()[random.nextInt(3)],
        words() + ".bin",
        "video/mp4",
        role == AssetRole.CAPTIONS ? "en-GB" : "",
        random.nextLong() >>> 24,
        parts);
  }

  private String words() {
    return WORDS[random.nextInt(WORDS.length)] + " " + random.nextInt(100);
  }

  private byte[] bytes(int size) {
    byte[] bytes = new byte[size];
    random.nextBytes(bytes);
    return bytes;
  }
}
