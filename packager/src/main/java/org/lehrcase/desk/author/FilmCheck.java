package org.lehrcase.desk.author;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.desk.media.BrowserSupport;
import org.lehrcase.desk.media.Container;
import org.lehrcase.desk.media.FastStart;
import org.lehrcase.desk.media.IndexPlace;
import org.lehrcase.desk.media.MediaException;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.MediaProbe;
import org.lehrcase.desk.media.Track;

/** Checks whether a film will play in a student's browser, and start at once. */
final class FilmCheck {
  private static final String EXPORT =
      "export it again as MP4 with H.264 pictures (8 bit, 4:2:0) and AAC sound";

  private final SourceAsset asset;
  private final List<Finding> findings;

  FilmCheck(SourceAsset asset, List<Finding> findings) {
    this.asset = asset;
    this.findings = findings;
  }

  /** Returns the film; empty, with a finding, if it cannot be read at all. */
  Optional<Film> run() {
    try (var source = FileSource.open(asset.file())) {
      var info = MediaProbe.probe(source);
      checkContainer(info);
      checkTracks(info);
      checkIndex(info, source);
      return Optional.of(new Film(asset, info));
    } catch (MediaException e) {
      error(e.reason(), "export it again, or copy it again from the camera; " + EXPORT);
    } catch (IOException e) {
      findings.add(BoundedText.unreadable(asset.place(), e));
    }
    return Optional.empty();
  }

  private void checkContainer(MediaInfo info) {
    if (info.container() == Container.MATROSKA) {
      error("is a Matroska file, which browsers do not play", EXPORT);
    } else if (!info.container().mediaType().equals(asset.mediaType())) {
      error(
          "is a " + info.container().title() + " file, but its name says otherwise",
          "give it the ending " + (info.container() == Container.WEBM ? ".webm" : ".mp4"));
    }
    if (info.durationMillis() == 0) {
      doubt("does not say how long it is, so jumping may not work", EXPORT);
    }
  }

  private void checkTracks(MediaInfo info) {
    var picture = info.picture();
    if (picture.isEmpty()) {
      error("has no pictures", "add a picture, even a still one, and " + EXPORT);
    } else {
      judge(picture.get(), info);
      checkInterlacing(picture.get());
    }
    var sound = info.sound();
    if (sound.isEmpty()) {
      findings.add(Finding.note(asset.place(), "has no sound", "nothing to do if that is meant"));
    } else {
      judge(sound.get(), info);
    }
  }

  private void checkInterlacing(Track.Picture picture) {
    if (picture.format().interlaced()) {
      doubt(
          "is interlaced: moving hands show combs, since browsers do not put the half pictures"
              + " together",
          "export it again as progressive (\"deinterlaced\", 25p or 30p)");
    }
  }

  private void judge(Track track, MediaInfo info) {
    var support = BrowserSupport.of(track, info.container());
    switch (support.verdict()) {
      case NOWHERE ->
          error(
              "has " + support.reason() + " (" + track.codec() + "); browsers do not play that",
              EXPORT);
      case SOMEWHERE ->
          doubt(
              "has " + support.reason() + " (" + track.codec() + "); not every browser plays that",
              EXPORT);
      case EVERYWHERE -> {
        // nothing to say
      }
    }
  }

  private void checkIndex(MediaInfo info, FileSource source) throws IOException {
    if (info.index() == IndexPlace.FRAGMENTS) {
      doubt("is cut into fragments, which makes jumping slow", "export it as an ordinary MP4");
    } else if (info.index() == IndexPlace.MISSING) {
      doubt("has no index, so jumping is slow or impossible", "export it again with an index");
    } else if (info.index() == IndexPlace.END && info.container().hasBoxes()) {
      checkMovable(source);
    }
  }

  /** Building the view reads the index only; the view shares the source and needs no closing. */
  @SuppressWarnings("resource")
  private void checkMovable(FileSource source) throws IOException {
    try {
      FastStart.view(source);
      findings.add(
          Finding.note(
              asset.place(),
              "has its index at the end",
              "nothing to do: packing moves it to the front, without re-encoding"));
    } catch (MediaException e) {
      if (e.kind() == MediaException.Kind.UNSUPPORTED) {
        doubt("has its index at the end: " + e.reason(), "export it again for fast start");
      } else {
        error(e.reason(), EXPORT);
      }
    }
  }

  private void error(String what, String whatToDo) {
    findings.add(Finding.error(asset.place(), what, whatToDo));
  }

  private void doubt(String what, String whatToDo) {
    findings.add(Finding.doubt(asset.place(), what, whatToDo));
  }
}
