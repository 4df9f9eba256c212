package org.lehrcase.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.light.FilmCoder;
import org.lehrcase.desk.light.LightFilms;
import org.lehrcase.desk.light.LightMaker;
import org.lehrcase.desk.light.LightShelf;
import org.lehrcase.desk.pack.CourseForms;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.pack.PackListener;
import picocli.CommandLine.Option;

/** Whether films get light copies, and with which encoder. */
final class LightOptions {
  @Option(
      names = "--light",
      description = {
        "Also packs a light copy of each film larger than 720p, made with ffmpeg.",
        "Finished copies are kept in the desk's home; see the command light-films."
      })
  private boolean light;

  @Option(
      names = "--light-only",
      paramLabel = "DIR",
      description =
          "Also makes, in this folder, a folder with the light films and without the large ones.")
  private @Nullable Path lightOnly;

  @Option(
      names = "--ffmpeg",
      paramLabel = "FILE",
      description = "The encoder; without this it is looked for on the PATH.")
  private @Nullable Path ffmpeg;

  /** Returns where the folder of light films appears. */
  Optional<Path> folder() {
    return Optional.ofNullable(lightOnly);
  }

  /** Returns what gives a course its light copies, or leaves it as it is. */
  CourseForms forms(DeskHome desk, PackListener listener) throws IOException, PackException {
    if (!light && lightOnly == null) {
      return CourseForms.AS_IT_IS;
    }
    LightShelf shelf = LightShelf.of(desk);
    Optional<LightMaker> maker =
        program().map(program -> new LightMaker(shelf, program, listener, System::nanoTime));
    return new LightFilms(shelf, maker);
  }

  private Optional<Path> program() throws PackException {
    Path named = ffmpeg;
    if (named == null) {
      return FilmCoder.onPath(Optional.ofNullable(System.getenv("PATH")).orElse(""));
    }
    if (!Files.isRegularFile(named) || !Files.isExecutable(named)) {
      throw new PackException(
          PackException.Reason.NO_LIGHT_FILM,
          named + " is no program that can be run. Nothing was packed; correct --ffmpeg.");
    }
    return Optional.of(named.toAbsolutePath());
  }
}
