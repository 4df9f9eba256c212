package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SizesTest {
  @ParameterizedTest
  @CsvSource({
    "0,0 bytes",
    "999,999 bytes",
    "1000,1.0 kB",
    "9949,9.9 kB",
    "123456,123 kB",
    "8600000,8.6 MB",
    "64000000000,64 GB",
    "3000000000000000,3000 TB"
  })
  void bytesAreSaidAsSticksAreSold(long bytes, String words) {
    assertThat(Sizes.words(bytes)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({"0,0 s", "59,59 s", "60,1 min 0 s", "250,4 min 10 s", "7260,2 h 1 min"})
  void timesAreSaidInTheTwoLargestUnits(long seconds, String words) {
    assertThat(Sizes.time(seconds)).isEqualTo(words);
  }
}
