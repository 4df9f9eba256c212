package org.lehrcase.core.copies;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.FailingMedium;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.seal.Progress;

/**
 * A thousand random damages: the check finds each, a fetch mends each, cut at random and resumed.
 */
class DamageProperties {
  private static final int CASES = 1000;

  @TempDir Path work;
  private CopyShop shop;
  private FrontPage front;
  private Path good;
  private Map<String, Octets> whole;

  @BeforeEach
  void pack() throws Exception {
    shop = new CopyShop();
    good = work.resolve("good");
    front = shop.pack(good, 1, 1500, 1, 2, 3); // two chunks of keys
    whole = CopyShop.files(good);
    assertThat(whole.keySet()).anyMatch(name -> name.startsWith("keys/0001"));
  }

  @Test
  void everyDamageIsFoundAndMended() throws Exception {
    long seed = Long.getLong("lehrcase.seed", System.nanoTime());
    Random random = new Random(seed);
    Path copy = work.resolve("copy");
    CopyShop.copyTree(good, copy);
    int[] cuts = {0};
    for (int i = 0; i < CASES; i++) {
      String told = "seed " + seed + ", case " + i;
      damage(copy, random);
      assertThat(isSeenAsWhole(copy)).as(told).isFalse();
      mendWithCuts(copy, random, cuts);
      assertThat(CopyShop.files(copy)).as(told).isEqualTo(whole);
      assertThat(isSeenAsWhole(copy)).as(told).isTrue();
    }
    assertThat(cuts[0]).as("seed " + seed).isGreaterThan(CASES / 3);
  }

  private void damage(Path copy, Random random) throws IOException {
    List<Path> files;
    try (var walk = Files.walk(copy)) {
      files = walk.filter(Files::isRegularFile).sorted().collect(Collectors.toList());
    }
    Damage[] ways = Damage.values();
    ways[random.nextInt(ways.length)].strike(
        files, files.get(random.nextInt(files.size())), random);
  }

  private boolean isSeenAsWhole(Path copy) throws IOException {
    try {
      EditionFolder folder = shop.open(copy);
      EditionCheck check = EditionCheck.everyByte(folder, Progress.NONE);
      return check.isWhole() && check.keys() == PartState.HERE;
    } catch (VaultException e) {
      return false;
    }
  }

  /** Most attempts are cut: by the person, by the disk, by the power, or by the place. */
  private void mendWithCuts(Path copy, Random random, int[] cuts) throws Exception {
    FetchWish wish = FetchWish.all(front, copy);
    for (int attempt = 0; attempt < 3; attempt++) {
      var way = FailingMedium.Way.values()[random.nextInt(2)];
      var medium = new FailingMedium(way, 1 + random.nextInt(16));
      int[] calls = {random.nextInt(6)};
      try {
        EditionFetch.run(
            wish,
            List.of(new CutSource(new FolderSource(good), random)),
            new WholeFiles(medium),
            bytes -> calls[0]-- > 0);
      } catch (IOException | VaultException | CancellationException | FailingMedium.PowerGone e) {
        cuts[0]++;
      }
    }
    EditionFetch.run(wish, List.of(new FolderSource(good)), WholeFiles.ON_SYSTEM, Progress.NONE);
  }

  /** A place that breaks off after some bytes. */
  private record CutSource(CopySource place, Random random) implements CopySource {
    @Override
    public String label() {
      return place.label();
    }

    @Override
    public List<Candidate> find(String path, OptionalLong exactBytes) throws IOException {
      return place.find(path, exactBytes).stream().map(this::cut).toList();
    }

    private Candidate cut(Candidate candidate) {
      return new Candidate() {
        @Override
        public InputStream from(long position) throws IOException {
          return new CutStream(candidate.from(position), random.nextInt(300_000));
        }

        @Override
        public boolean isNear() {
          return false;
        }
      };
    }
  }

  private static final class CutStream extends FilterInputStream {
    private int left;

    CutStream(InputStream in, int left) {
      super(in);
      this.left = left;
    }

    @Override
    public int read(byte[] target, int from, int size) throws IOException {
      if (left <= 0) {
        throw new IOException("the connection broke off");
      }
      int read = super.read(target, from, Math.min(size, left));
      left -= Math.max(0, read);
      return read;
    }
  }
}
