/** The arithmetic of pictures of a film: which one stands at a second, and where it begins. */

/** Used until the film has said how long one of its pictures stands. */
export const USUAL_FRAME_SECONDS = 1 / 25;

/** A seek goes a little way into a picture, so that rounding never shows the one before. */
const INSIDE = 0.25;
const ROUNDING = 0.02;

/** Number of the picture that stands at a second, from 0. */
export const frameAt = (seconds, frameSeconds) => Math.max(0, Math.floor(seconds / frameSeconds + ROUNDING));

/** The second at which the picture at `seconds` begins. */
export const frameStart = (seconds, frameSeconds) => frameAt(seconds, frameSeconds) * frameSeconds;

/** The second to seek to for the picture that begins at `seconds`. */
export const insideFrame = (seconds, frameSeconds) => frameStart(seconds, frameSeconds) + INSIDE * frameSeconds;

/** The nearest edge between two pictures, for times that were kept in whole milliseconds. */
export const nearestEdge = (seconds, frameSeconds) => Math.round(seconds / frameSeconds) * frameSeconds;
