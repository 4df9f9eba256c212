package org.lehrcase.desk.home;

import java.nio.file.Path;
import java.time.Clock;

/** A second program that holds a desk home until it is ended. */
final class HoldDesk {
  private HoldDesk() {}

  public static void main(String[] args) throws Exception {
    try (DeskHome home = DeskHome.open(Path.of(args[0]), Clock.systemUTC())) {
      System.out.println("holding " + home.statement().terms().name());
      System.out.flush();
      Thread.sleep(60_000);
    }
  }
}
