/**
 * What a film file says about itself, read without any native program.
 *
 * <p>Here live the readers of MP4/QuickTime boxes and of WebM/Matroska elements, the verdict
 * whether a browser plays what they found, and the view of an MP4 whose index stands in front.
 * Nothing here decodes, encodes or writes; nothing here knows lessons or editions. Every length in
 * a file is a claim of a stranger: it is checked against the bytes that are there before anything
 * is allocated.
 */
@NullMarked
package org.lehrcase.desk.media;

import org.jspecify.annotations.NullMarked;
