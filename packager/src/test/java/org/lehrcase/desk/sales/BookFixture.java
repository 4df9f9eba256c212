package org.lehrcase.desk.sales;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.primitive.Sha256;

/** Invented entries for tests of the book. */
final class BookFixture {
  static final Clock NOON = Clock.fixed(Instant.parse("2027-03-04T12:00:00Z"), ZoneOffset.UTC);
  static final LocalDate DAY = LocalDate.of(2027, 3, 4);
  static final Person IDA = new Person("00000000000000a1", "Ida Brandt", "ida@studio.example", DAY);

  private BookFixture() {}

  static LicenseId license(int number) {
    return LicenseId.of(java.util.Arrays.copyOf(digest("license " + number).toBytes(), 16));
  }

  static PlaceId place(int number) {
    return PlaceId.of(java.util.Arrays.copyOf(digest("place " + number).toBytes(), 8));
  }

  static Octets digest(String what) {
    return Octets.of(Sha256.of16(what.getBytes(StandardCharsets.UTF_8)));
  }

  static LicenseEntry entry(int number, int places, String... series) {
    return new LicenseEntry(
        license(number),
        IDA,
        0,
        1,
        new LicenseEntry.Terms(List.of(series), places, 2),
        0,
        LicenseState.OPEN,
        DAY);
  }

  static Place living(int license, int place) {
    return new Place(
        license(license),
        place(place),
        PlaceState.LIVE,
        0,
        digest("card " + place),
        Octets.of(new byte[100]),
        DAY);
  }
}
