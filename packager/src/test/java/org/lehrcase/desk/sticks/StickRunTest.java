package org.lehrcase.desk.sticks;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.sticks.StickException.Reason;

class StickRunTest {
  @TempDir Path folder;
  private Path stick;
  private StickOrder order;

  @BeforeEach
  void make() throws Exception {
    stick = Files.createDirectory(folder.resolve("STICK"));
    order = StickFixture.order(stick, StickFixture.files(folder.resolve("source")));
  }

  @Test
  void everythingIsOnTheStickAndNothingElse() throws Exception {
    StickResult result = StickFixture.make(new MountedDisk(), order);
    assertThat(result.failure()).isEmpty();
    assertThat(result.written()).isEqualTo(order.bytes()).isEqualTo(result.bytes());
    assertThat(StickFixture.names(stick))
        .containsExactlyInAnyOrderElementsOf(order.files().stream().map(StickFile::place).toList());
    assertThat(StickFixture.broken(order)).isEmpty();
  }

  @Test
  void aSecondRunReadsAndWritesNothing() throws Exception {
    StickFixture.make(TestStick.whole(), order);
    Path part = stick.resolve("brush-1/003/part-3");
    Files.setLastModifiedTime(part, FileTime.fromMillis(1_000_000));
    StickResult again = StickFixture.make(TestStick.whole(), order);
    assertThat(again.made()).isTrue();
    assertThat(again.written()).isZero();
    assertThat(again.pastTheCache()).isTrue();
    assertThat(Files.getLastModifiedTime(part).toMillis()).isEqualTo(1_000_000);
  }

  @Test
  void onlyWhatDiffersIsWrittenAgain() throws Exception {
    StickFixture.make(TestStick.whole(), order);
    byte[] rotten = Files.readAllBytes(stick.resolve("brush-1/004/part-4"));
    rotten[77] ^= 4;
    Files.write(stick.resolve("brush-1/004/part-4"), rotten);
    Files.delete(stick.resolve("brush-1/002/part-2"));
    StickResult again = StickFixture.make(TestStick.whole(), order);
    assertThat(again.written()).isEqualTo(65_536 + 4096);
    assertThat(StickFixture.broken(order)).isEmpty();
  }

  @Test
  void pulledAtAnyMomentNoNameHoldsAHalfFileAndTheNextRunCompletes() throws Exception {
    int uses = 0;
    for (boolean failed = true; failed; uses++) {
      Path one = Files.createDirectory(folder.resolve("S" + uses));
      StickOrder mine = new StickOrder(one, order.recipient(), order.load(), order.papers());
      TestStick pulled = TestStick.pulledAfter(uses);
      StickResult result = StickFixture.make(pulled, mine);
      failed = pulled.wasPulled();
      assertThat(result.made()).as("after %d uses", uses).isEqualTo(!failed);
      assertThat(StickFixture.broken(mine)).as("after %d uses", uses).isEmpty();
      StickResult next = StickFixture.make(TestStick.whole(), mine);
      assertThat(next.failure()).as("after %d uses", uses).isEmpty();
      assertThat(StickFixture.names(one)).hasSize(mine.files().size());
      assertThat(StickFixture.broken(mine)).isEmpty();
    }
    assertThat(uses).isGreaterThan(40);
  }

  @Test
  void pulledWhileOldFilesAreReplacedKeepsTheOldOrHasTheNew() throws Exception {
    for (int uses = 0; uses < 40; uses += 3) {
      Path one = Files.createDirectory(folder.resolve("S" + uses));
      StickOrder before = new StickOrder(one, order.recipient(), order.load(), order.papers());
      StickFixture.make(TestStick.whole(), before);
      List<StickFile> papers =
          List.of(StickFile.text("license.txt", "BEGIN LEHRCASE LICENSE, a newer one"));
      StickOrder after = new StickOrder(one, order.recipient(), order.load(), papers);
      StickFixture.make(TestStick.pulledAfter(uses), after);
      assertThat(Files.readString(one.resolve("license.txt")))
          .as("after %d uses", uses)
          .isIn("-----BEGIN LEHRCASE LICENSE-----\nAda", "BEGIN LEHRCASE LICENSE, a newer one");
    }
  }

  @Test
  void whatAStoppedRunWroteIsNotWrittenAgain() throws Exception {
    StickFixture.make(TestStick.pulledAfter(30), order);
    List<String> left = StickFixture.names(stick);
    assertThat(left).isNotEmpty().allMatch(name -> name.endsWith(".part"));
    List<String> said = new ArrayList<>();
    new StickMaker(TestStick.whole(), one -> sayingTo(said)).make(List.of(order));
    assertThat(said.get(0)).doesNotContain("of which 2.6 MB are to be written");
    assertThat(StickFixture.names(stick)).noneMatch(name -> name.endsWith(".part"));
  }

  @Test
  void aStickThatIsSmallerThanItSaysIsFoundAndNamed() throws Exception {
    StickResult result = StickFixture.make(TestStick.fake(1_000_000), order);
    assertThat(result.made()).isFalse();
    StickException why = result.failure().orElseThrow();
    assertThat(why.reason()).isEqualTo(Reason.FAKE);
    assertThat(why).hasMessageContaining("smaller than it says").hasMessageContaining("part-0");
    assertThat(StickFixture.names(stick)).allMatch(name -> name.endsWith(".part"));
  }

  @Test
  void whatWasWholeAndIsLostToLaterBytesLosesItsName() throws Exception {
    TestStick fake = TestStick.fake(3_000_000);
    assertThat(StickFixture.make(fake, order).made()).isTrue();
    List<StickFile> more = new ArrayList<>(order.load().files());
    Path big = Files.write(folder.resolve("big"), new byte[2_900_000]);
    more.add(StickFile.of("brush-1/big", big, new Sums()));
    StickOrder next = StickFixture.order(stick, more);
    StickResult result = StickFixture.make(fake, next);
    assertThat(result.failure().orElseThrow().reason()).isEqualTo(Reason.FAKE);
    assertThat(StickFixture.names(stick)).doesNotContain("brush-1/000/part-0");
  }

  @Test
  void aFullStickIsSaidBeforeAnythingIsWritten() throws Exception {
    StickResult result = StickFixture.make(TestStick.withRoomFor(2_000_000), order);
    assertThat(result.failure().orElseThrow())
        .hasMessageContaining("room for 2.0 MB")
        .extracting(StickException::reason)
        .isEqualTo(Reason.FULL);
    assertThat(StickFixture.names(stick)).isEmpty();
  }

  @Test
  void aDiskThatFillsUpMeanwhileAndAReadOnlyOneAreNamed() throws Exception {
    StickResult full = StickFixture.make(TestStick.failing(12, "No space left on device"), order);
    assertThat(full.failure().orElseThrow().reason()).isEqualTo(Reason.FULL);
    StickResult locked = StickFixture.make(TestStick.failing(1, "Read-only file system"), order);
    assertThat(locked.failure().orElseThrow().reason()).isEqualTo(Reason.READ_ONLY);
    StickResult gone = StickFixture.make(TestStick.pulledAfter(12), order);
    assertThat(gone.failure().orElseThrow())
        .hasMessageContaining("only what is missing is written")
        .extracting(StickException::reason)
        .isEqualTo(Reason.GONE);
    assertThat(StickFixture.broken(order)).isEmpty();
  }

  @Test
  void aSourceThatChangesMeanwhileIsNotGivenAName() throws Exception {
    Files.write(folder.resolve("source/part-2"), new byte[4096]);
    StickResult result = StickFixture.make(TestStick.whole(), order);
    assertThat(result.failure().orElseThrow().reason()).isEqualTo(Reason.SOURCE);
    assertThat(StickFixture.names(stick)).allMatch(name -> name.endsWith(".part"));
  }

  @Test
  void readingFromMemoryOnlyIsSaid() throws Exception {
    StickResult result = StickFixture.make(TestStick.withoutDirect(), order);
    assertThat(result.made()).isTrue();
    assertThat(result.pastTheCache()).isFalse();
  }

  @Test
  void oneBadStickOfThreeDoesNotHoldUpTheOthers() throws Exception {
    List<StickOrder> orders = new ArrayList<>();
    for (String name : List.of("A", "gone", "C")) {
      Path one = folder.resolve(name);
      if (!name.equals("gone")) {
        Files.createDirectory(one);
      }
      orders.add(new StickOrder(one, order.recipient(), order.load(), order.papers()));
    }
    List<StickResult> results =
        new StickMaker(new MountedDisk(), one -> PackListener.NONE).make(orders);
    assertThat(results).extracting(StickResult::made).containsExactly(true, false, true);
    assertThat(results.get(1).failure().orElseThrow()).hasMessageContaining("was pulled");
  }

  private static PackListener sayingTo(List<String> said) {
    return new PackListener() {
      @Override
      public void say(String sentence) {
        said.add(sentence);
      }

      @Override
      public void progress(long doneBytes, long totalBytes) {
        assertThat(doneBytes).isLessThanOrEqualTo(totalBytes);
      }
    };
  }
}
