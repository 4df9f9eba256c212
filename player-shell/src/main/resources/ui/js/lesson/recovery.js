import { probe } from '../api.js';
import { byId, el } from '../dom.js';
import { clock } from '../units.js';
import { load } from './player.js';
import { damagedRanges } from './damage.js';

const ASK_AGAIN_MILLIS = 1500;
const BEYOND_SECONDS = 5;

function say(...lines) {
  const place = byId('message');
  place.hidden = lines.length === 0;
  place.replaceChildren(...lines.filter(Boolean).map((line, i) => el('p', {}, i ? line : el('strong', {}, line))));
}

const currentRendition = (store) => {
  const { lesson } = store.getState();
  return lesson.video.find((one) => one.rendition === byId('video').dataset.rendition) || lesson.video[0];
};

/** The second behind the damage that stopped the picture. */
function beyondDamage(store, at) {
  const { lesson, duration } = store.getState();
  const hit = damagedRanges(lesson, duration).find((range) => at >= range.from - BEYOND_SECONDS && at <= range.to + 1);
  return Math.min(duration || at + BEYOND_SECONDS, hit ? Math.max(hit.to + 0.5, at + 1) : at + BEYOND_SECONDS);
}

/** When the picture stops: either the stick is out (wait, then the same second) or a place is damaged (go past it). */
export function connectRecovery(store, fetchLesson) {
  const video = byId('video');
  let waiting = false;
  let at = 0;
  let wasPlaying = false;
  video.addEventListener('timeupdate', () => { at = video.currentTime || at; });
  video.addEventListener('play', () => { wasPlaying = true; });
  video.addEventListener('pause', () => { wasPlaying = wasPlaying && video.error !== null; });

  const resume = (seconds) => {
    load(currentRendition(store), seconds);
    if (wasPlaying) {
      video.addEventListener('canplay', () => store.dispatch('go'), { once: true });
    }
  };

  const waitForStick = async (trouble) => {
    say(trouble.happened, trouble.safe, trouble.next);
    while (await probe(video.src)) {
      await new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MILLIS));
    }
    say();
    resume(at);
  };

  const passDamage = async () => {
    const lesson = await fetchLesson().catch(() => store.getState().lesson);
    store.commit({ lesson: { ...store.getState().lesson, damaged: lesson.damaged } });
    const next = beyondDamage(store, at);
    say(`This copy is damaged at ${clock(at)}.`, `The rest plays on, from ${clock(next)}. Check this copy on the page “My courses” and ask your teacher for the missing part.`);
    setTimeout(say, 12000);
    at = next;
    resume(next);
  };

  video.addEventListener('error', async () => {
    if (waiting || !video.getAttribute('src')) {
      return;
    }
    waiting = true;
    const trouble = await probe(video.src);
    await (trouble ? waitForStick(trouble) : passDamage());
    waiting = false;
  });
}
