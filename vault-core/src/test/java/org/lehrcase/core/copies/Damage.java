package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** What happens to files on sticks. */
enum Damage {
  FLIPPED_BIT {
    @Override
    void strike(List<Path> files, Path file, Random random) throws IOException {
      byte[] bytes = CopyShop.read(file);
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
      Files.write(file, bytes);
    }
  },
  ZEROS {
    @Override
    void strike(List<Path> files, Path file, Random random) throws IOException {
      byte[] bytes = CopyShop.read(file);
      int from = random.nextInt(bytes.length);
      byte[] before = bytes.clone();
      Arrays.fill(bytes, from, Math.min(bytes.length, from + 1 + random.nextInt(70_000)), (byte) 0);
      if (Arrays.mismatch(before, bytes) < 0) {
        bytes[from] ^= 1; // there were zeros already
      }
      Files.write(file, bytes);
    }
  },
  CUT_OFF {
    @Override
    void strike(List<Path> files, Path file, Random random) throws IOException {
      byte[] bytes = CopyShop.read(file);
      Files.write(file, Arrays.copyOf(bytes, random.nextInt(bytes.length)));
    }
  },
  EXTENDED {
    @Override
    void strike(List<Path> files, Path file, Random random) throws IOException {
      byte[] bytes = CopyShop.read(file);
      Files.write(file, Arrays.copyOf(bytes, bytes.length + 1 + random.nextInt(70_000)));
    }
  },
  SWAPPED {
    @Override
    void strike(List<Path> files, Path file, Random random) throws IOException {
      List<Path> others = new ArrayList<>(files);
      others.remove(file);
      Path other = others.get(random.nextInt(others.size()));
      byte[] one = CopyShop.read(file);
      Files.write(file, CopyShop.read(other));
      Files.write(other, one);
    }
  },
  MISSING {
    @Override
    void strike(List<Path> files, Path file, Random random) throws IOException {
      Files.delete(file);
    }
  };

  /** Damages a file, or two. */
  abstract void strike(List<Path> files, Path file, Random random) throws IOException;
}
