/**
 * Turns back at the end of a loop so that the picture after it is never shown. The browser says
 * which picture stands now; as soon as the last one stands the film is sent back. Where the browser
 * does not say, or the page is hidden, the film's own clock has to do.
 */

/** How far into the last picture the film is sent back: it stands on while the first one is fetched. */
const INTO_LAST = 0.4;
const SOON_MILLIS = 150;

const loops = (loop) => loop.from !== null && loop.to !== null;

export function followFrames(video, store, turn) {
  let waiting = 0;
  const turnNow = () => {
    const { loop } = store.getState();
    if (loops(loop) && !video.paused && !video.seeking) {
      turn();
    }
  };
  const past = () => {
    const { loop } = store.getState();
    if (loops(loop) && (video.currentTime >= loop.to || video.ended) && !video.seeking) {
      turnNow();
    }
  };
  const look = (mediaTime, lateMillis) => {
    clearTimeout(waiting);
    const { loop, frame } = store.getState();
    const leftMillis = ((loop.to - mediaTime - (1 - INTO_LAST) * frame) / video.playbackRate) * 1000 - lateMillis;
    if (mediaTime > loop.to - 1.5 * frame || leftMillis <= 0) {
      turnNow();
    } else if (leftMillis < SOON_MILLIS / Math.min(1, video.playbackRate)) {
      waiting = setTimeout(turnNow, leftMillis);
    }
  };
  video.addEventListener('timeupdate', past);
  video.addEventListener('ended', () => loops(store.getState().loop) && turn());
  if (!video.requestVideoFrameCallback) {
    const eachRepaint = () => {
      past();
      requestAnimationFrame(eachRepaint);
    };
    requestAnimationFrame(eachRepaint);
    return;
  }
  const onFrame = (now, shown) => {
    video.requestVideoFrameCallback(onFrame);
    if (loops(store.getState().loop) && !video.paused) {
      look(shown.mediaTime, Math.max(0, now - shown.expectedDisplayTime));
    }
  };
  video.requestVideoFrameCallback(onFrame);
}
