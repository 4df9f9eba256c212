package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProseTest {
  private static String html(String markdown) {
    return Prose.html(markdown.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void headingsListsAndTablesAreShown() {
    assertThat(html("# Wash\n\n- thin\n- dry\n\n| a | b |\n|---|---|\n| 1 | 2 |\n"))
        .contains("<h1>Wash</h1>")
        .contains("<li>thin</li>")
        .contains("<td>2</td>");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "a <img src=x onerror=alert(1)> b",
        "<iframe src=\"http://evil.example\"></iframe>",
        "[x](javascript:alert(1))",
        "[x](data:text/html;base64,AAAA)",
        "![words](http://evil.example/p.png \"title\")"
      })
  void nothingOfACourseIsFetchedOrRun(String hostile) {
    assertThat(html(hostile))
        .doesNotContain("<script")
        .doesNotContain("<img")
        .doesNotContain("<iframe")
        .doesNotContain("href=\"javascript")
        .doesNotContain("href=\"data")
        .doesNotContain("src=\"http");
  }

  @Test
  void aPictureBecomesItsWords() {
    assertThat(html("see ![the far arch](arch.png \"sheet 6\")!"))
        .isEqualTo("<p>see the far arch (sheet 6)!</p>\n");
  }
}
