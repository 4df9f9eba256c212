package org.lehrcase.desk.sticks;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class StartPageTest {
  @Test
  void saysThreeStepsWhomToWriteToAndCautions() throws Exception {
    String page = page(StickFixture.welcome());
    assertThat(page)
        .contains("For Ada Example", "<h2>1. Start</h2>", "<h2>3. Open the other lessons</h2>")
        .contains("atelier@example.org", "amber kiln reef salt wave", "away from the kiln")
        .contains(StartPage.MARK)
        .doesNotContain("<script", "http:", "https:");
  }

  @Test
  void namesAreWordsAndNeverMarkup() throws Exception {
    Welcome hostile =
        new Welcome(
            Optional.of("<b>Bo</b>"),
            "A & B",
            List.of("amber"),
            "<img src=x>",
            List.of("\"Brush\" <script>"),
            new Welcome.Has(true, true));
    assertThat(page(hostile))
        .contains("&lt;b&gt;Bo", "A &amp; B", "&lt;img", "&quot;Brush&quot; &lt;script&gt;")
        .doesNotContain("<b>Bo", "<img", "<script");
  }

  private static String page(Welcome welcome) throws Exception {
    StickFile file = StartPage.of(welcome);
    assertThat(file.place()).isEqualTo("READ ME FIRST.html");
    byte[] bytes = Channels.newInputStream(file.origin().open()).readAllBytes();
    assertThat(bytes).hasSize((int) file.bytes());
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
