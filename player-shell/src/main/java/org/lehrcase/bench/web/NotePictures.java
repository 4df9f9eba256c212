package org.lehrcase.bench.web;

import java.io.IOException;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.store.NotePictureTable;
import org.lehrcase.bench.store.NotePictureTable.Picture;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;

/** The student's own photos by their id; anything else is for others. */
final class NotePictures implements Downloads {
  private static final String NOTE = "note/";
  private static final int ID_BYTES = 16;

  private final NotePictureTable pictures;
  private final Downloads others;

  NotePictures(NotePictureTable pictures, Downloads others) {
    this.pictures = pictures;
    this.others = others;
  }

  @Override
  public void answer(String name, Response response, Callback callback)
      throws Trouble, VaultException, IOException {
    if (!name.startsWith(NOTE)) {
      others.answer(name, response, callback);
      return;
    }
    Picture picture =
        pictures
            .find(StudyQuestions.hex(name.substring(NOTE.length()), ID_BYTES))
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND,
                        "This photo is not on this laptop.",
                        "Merge the notebook of the laptop where it was added."));
    response.getHeaders().put("Content-Security-Policy", SecurityHeaders.COURSE_POLICY);
    Replies.bytes(response, callback, picture.mediaType(), picture.bytes());
  }
}
