package org.lehrcase.desk.pack;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.desk.home.TestDesk;

/** A packing program of its own, for tests that end it without warning. */
final class PackChild {
  private PackChild() {}

  public static void main(String[] args) throws Exception {
    try (TestDesk desk = TestDesk.open(Path.of(args[0]))) {
      System.out.println("ready");
      System.out.flush();
      new Packer(desk.home(), desk.keys(), new SecureRandom(), PackListener.NONE)
          .pack(new PackWish(Path.of(args[1]), Path.of(args[2]), Optional.empty(), Set.of()));
    }
  }
}
