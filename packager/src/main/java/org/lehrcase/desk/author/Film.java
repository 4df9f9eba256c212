package org.lehrcase.desk.author;

import org.lehrcase.desk.media.MediaInfo;

/**
 * A film of the course that could be read.
 *
 * @param asset the file
 * @param info what it says about itself
 */
record Film(SourceAsset asset, MediaInfo info) {}
