package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.HelpSlipText;
import org.lehrcase.core.slip.OpeningStep;

class HelpWireTest {
  @TempDir Path folder;

  @Test
  void thePageGetsTheSlipAsTextLinesAndCode() throws Exception {
    try (Bench bench = TinyBench.open(folder.resolve("home"), OtherMachine.named("mine"));
        BenchRooms rooms =
            BenchRooms.open(
                bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom())) {
      EnteredClient page = EnteredClient.enter(rooms.server());
      RawClient.Answer answer = page.send("POST", "api/help-slip", "{\"code\":\"damaged\"}");
      JsonObject json = JsonParser.parseString(answer.text()).getAsJsonObject();
      HelpSlip slip = HelpSlipText.find(json.get("text").getAsString()).orElseThrow();
      assertThat(slip.fault()).contains("damaged");
      assertThat(slip.step()).isEqualTo(OpeningStep.NO_EDITION);
      assertThat(json.getAsJsonArray("lines")).hasSize(HelpSlipText.lines(slip).size());
      int side = json.getAsJsonArray("code").size();
      assertThat(json.getAsJsonArray("code").get(0).getAsString()).hasSize(side);
      assertThat(json.get("fileName").getAsString()).matches("lehrcase-help-slip-[0-9-]+\\.txt");
      assertThat(page.get("api/help-slip").status()).isEqualTo(405);
      JsonObject trial =
          JsonParser.parseString(page.send("POST", "api/trial", "{}").text()).getAsJsonObject();
      assertThat(trial.get("freeBytes").getAsLong()).isPositive();
      assertThat(trial.has("stickBytesPerSecond")).isFalse();
      RawClient.Answer clip = page.get("ui/clips/full.mp4");
      assertThat(clip.status()).isEqualTo(200);
      assertThat(clip.header("Content-Type")).contains("video/mp4");
      JsonObject dropped =
          JsonParser.parseString(page.drop(slip.encode(), "HELP SLIP").text()).getAsJsonObject();
      assertThat(dropped.get("outcome").getAsString()).isEqualTo("refused");
      assertThat(dropped.get("message").getAsString()).contains("goes to your teacher");
    }
  }
}
