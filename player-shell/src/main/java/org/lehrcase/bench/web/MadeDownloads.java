package org.lehrcase.bench.web;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.kilns.MadePapers.Made;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;

/** What the student made: kiln sheets, calendars, logs, pictures; anything else is the course's. */
final class MadeDownloads implements Downloads {
  private static final String MADE = "made/";
  private static final String PHOTO = "photo/";
  private static final String PICTURE = "picture/";
  private static final String PIECE_PHOTO = "piece-photo/";
  private static final int ID_BYTES = 16;

  private final MadePapers papers;
  private final StudyStore store;
  private final Downloads others;

  MadeDownloads(MadePapers papers, StudyStore store, Downloads others) {
    this.papers = papers;
    this.store = store;
    this.others = others;
  }

  @Override
  public void answer(String name, Response response, Callback callback)
      throws Trouble, VaultException, IOException {
    if (name.startsWith(MADE)) {
      Made made = papers.find(name.substring(MADE.length())).orElseThrow(MadeDownloads::gone);
      String encoded = URLEncoder.encode(made.name(), StandardCharsets.UTF_8).replace("+", "%20");
      response.getHeaders().put("Content-Disposition", "attachment; filename*=UTF-8''" + encoded);
      send(response, callback, made);
    } else if (name.startsWith(PHOTO)) {
      String id = StudyQuestions.hex(name.substring(PHOTO.length()), ID_BYTES);
      picture(store.firingPhotos().picture(id), response, callback);
    } else if (name.startsWith(PICTURE)) {
      String id = StudyQuestions.hex(name.substring(PICTURE.length()), ID_BYTES);
      picture(store.ownPictures().jpeg(id), response, callback);
    } else if (name.startsWith(PIECE_PHOTO)) {
      String id = StudyQuestions.hex(name.substring(PIECE_PHOTO.length()), ID_BYTES);
      picture(store.following().picture(id), response, callback);
    } else {
      others.answer(name, response, callback);
    }
  }

  private static void picture(Optional<byte[]> found, Response response, Callback callback)
      throws Trouble {
    byte[] picture = found.orElseThrow(MadeDownloads::gone);
    send(response, callback, new Made("", PictureType.of(picture).orElse(""), picture));
  }

  private static void send(Response response, Callback callback, Made made) {
    response.getHeaders().put("Content-Security-Policy", SecurityHeaders.COURSE_POLICY);
    Replies.bytes(response, callback, made.mediaType(), made.bytes());
  }

  private static Trouble gone() {
    return new Trouble(TroubleCode.NOT_FOUND, "This paper is not here any more.", "Make it again.");
  }
}
