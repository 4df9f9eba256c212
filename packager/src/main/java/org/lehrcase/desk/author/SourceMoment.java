package org.lehrcase.desk.author;

import java.util.Optional;
import java.util.function.Function;
import org.lehrcase.core.course.Moment;
import org.lehrcase.core.course.MomentTarget;
import org.lehrcase.core.id.AssetId;

/**
 * Something hung on a time of the lesson's video, before files have ids.
 *
 * @param atMillis milliseconds from the start of the video
 * @param text what stands on the work strip
 * @param target what opens beside the picture
 * @param asset the file that opens; present exactly if there is a target
 * @param page page of the file, counted from 1; 0 if none is meant
 */
public record SourceMoment(
    long atMillis, String text, MomentTarget target, Optional<SourceAsset> asset, int page) {

  /** Returns the moment with the id that the packer gave to its file. */
  public Moment toMoment(Function<SourceAsset, AssetId> ids) {
    return new Moment(atMillis, text, target, asset.map(ids), page);
  }
}
