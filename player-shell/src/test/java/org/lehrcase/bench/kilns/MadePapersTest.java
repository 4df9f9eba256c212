package org.lehrcase.bench.kilns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MadePapersTest {
  private static MadePapers.Made paper(String name) {
    return new MadePapers.Made(name, "text/plain", new byte[] {1});
  }

  @Test
  void aPaperWaitsUntilItIsFetched() {
    MadePapers papers = new MadePapers();
    String id = papers.keep(paper("a"));
    assertThat(papers.find(id)).get().extracting(MadePapers.Made::name).isEqualTo("a");
    assertThat(papers.find("none")).isEmpty();
  }

  @Test
  void onlyTheNewestSixteenWait() {
    MadePapers papers = new MadePapers();
    List<String> ids = new ArrayList<>();
    for (int i = 0; i < 17; i++) {
      ids.add(papers.keep(paper("p" + i)));
    }
    assertThat(papers.find(ids.get(0))).isEmpty();
    assertThat(papers.find(ids.get(1))).isPresent();
    assertThat(papers.find(ids.get(16))).isPresent();
  }
}
