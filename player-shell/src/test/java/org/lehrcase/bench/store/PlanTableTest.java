package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.OwnPictureTable.Picture;
import org.lehrcase.bench.store.PlanTable.Plan;
import org.lehrcase.bench.store.PlanTable.Version;

class PlanTableTest {
  private static final long DAY_MILLIS = 24L * 60 * 60 * 1000;

  @TempDir Path home;
  private final Ticking clock = new Ticking();
  private StudyStore store;
  private PlanTable plans;

  /** A clock that is set by hand. */
  private static final class Ticking extends Clock {
    private long millis = 1_000_000;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return Instant.ofEpochMilli(millis);
    }
  }

  @BeforeEach
  void open() throws Exception {
    store = StudyStore.open(home, clock);
    plans = store.plans();
  }

  @AfterEach
  void close() throws Exception {
    store.close();
  }

  private Plan begun() throws Exception {
    return plans.find(plans.begin("Pond", "{\"a\":0}").orElseThrow()).orElseThrow();
  }

  private Plan keep(Plan standing, String body) throws Exception {
    return plans
        .keep(new Plan(standing.id(), standing.name(), body, standing.revision(), 0))
        .orElseThrow();
  }

  @Test
  void changesOfOneSittingMakeNoVersion() throws Exception {
    Plan plan = begun();
    plan = keep(plan, "{\"a\":1}");
    clock.millis += PlanTable.SITTING_MILLIS - 1;
    plan = keep(plan, "{\"a\":2}");

    assertThat(plan.body()).isEqualTo("{\"a\":2}");
    assertThat(plans.versions(plan.id())).isEmpty();
  }

  @Test
  void theStateBeforeASittingIsPutAside() throws Exception {
    Plan plan = keep(begun(), "{\"a\":1}");
    clock.millis += PlanTable.SITTING_MILLIS;
    keep(plan, "{\"a\":2}");

    assertThat(plans.versions(plan.id())).extracting(Version::body).containsExactly("{\"a\":1}");
  }

  @Test
  void aChangeOfAnOldStateChangesNothing() throws Exception {
    Plan old = begun();
    keep(old, "{\"a\":1}");

    assertThat(plans.keep(new Plan(old.id(), "Pond", "{\"a\":9}", old.revision(), 0))).isEmpty();
    assertThat(plans.find(old.id()).orElseThrow().body()).isEqualTo("{\"a\":1}");
  }

  @Test
  void theOldestVersionsGoFirst() throws Exception {
    Plan plan = begun();
    for (int i = 1; i <= PlanTable.MOST_VERSIONS + 3; i++) {
      plan = keep(plan, "{\"a\":" + i + "}");
      plans.putAside(plan);
    }

    assertThat(plans.versions(plan.id()))
        .hasSize(PlanTable.MOST_VERSIONS)
        .first()
        .extracting(Version::number)
        .isEqualTo(PlanTable.MOST_VERSIONS + 3);
  }

  @Test
  void aForgottenPlanTakesItsVersionsAlong() throws Exception {
    Plan plan = begun();
    plans.putAside(plan);
    plans.forget(plan.id());

    assertThat(plans.find(plan.id())).isEmpty();
    assertThat(plans.versions(plan.id())).isEmpty();
  }

  @Test
  void aPictureStaysWhileAPlanOrAVersionNamesIt() throws Exception {
    String used = add();
    String aside = add();
    String unused = add();
    plans.begin("Pond", "{\"id\":\"" + used + "\"}");
    Plan other =
        plans.find(plans.begin("Old", "{\"id\":\"" + aside + "\"}").orElseThrow()).orElseThrow();
    plans.putAside(other);
    keep(other, "{}");
    clock.millis += DAY_MILLIS + 1;
    add();

    assertThat(store.ownPictures().jpeg(used)).isPresent();
    assertThat(store.ownPictures().jpeg(aside)).isPresent();
    assertThat(store.ownPictures().jpeg(unused)).isEmpty();
  }

  private String add() throws Exception {
    var sizes = new Picture("", 4, 3, 4, 3);
    return store.ownPictures().add(sizes, new byte[] {1}).orElseThrow().id();
  }
}
