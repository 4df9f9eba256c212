package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;

/** Tests of the doors of a bench that has no course, through the real server, as its pages ask. */
abstract class FreshBenchTest {
  @TempDir Path folder;
  Bench bench;
  BenchRooms rooms;
  EnteredClient page;

  @BeforeEach
  void start() throws Exception {
    bench = TinyBench.open(folder.resolve("home"), OtherMachine.named("mine"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    page = EnteredClient.enter(rooms.server());
  }

  @AfterEach
  void stop() throws IOException {
    rooms.close();
    bench.close();
  }

  static JsonObject json(RawClient.Answer answer) {
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return JsonParser.parseString(answer.text()).getAsJsonObject();
  }
}
