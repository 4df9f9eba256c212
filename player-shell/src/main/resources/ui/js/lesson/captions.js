import { address } from '../api.js';
import { byId, el, icon } from '../dom.js';

function textOf(cue) {
  return cue.getCueAsHTML ? cue.getCueAsHTML().textContent : cue.text;
}

function showCues(track, band) {
  const cues = track.activeCues ? Array.from(track.activeCues) : [];
  band.textContent = cues.map(textOf).join('\n');
}

/** The chosen language, else the browser's, else English, else the first. */
function pick(tracks, chosen) {
  const wanted = [chosen, (navigator.language || '').slice(0, 2), 'en'];
  const found = wanted.map((language) => tracks.findIndex((track) => language && track.language.startsWith(language)));
  return Math.max(0, ...found.filter((index) => index >= 0).slice(0, 1));
}

function addTrack(video, captions, first) {
  const node = el('track', {
    kind: 'captions', srclang: captions.language, label: captions.label || captions.language, src: address(captions.url), default: first,
  });
  video.append(node);
  node.track.mode = 'hidden';
  return node.track;
}

/** Captions on a plain band below the picture; the track stays hidden so nothing lies on the hands. */
export function connectCaptions(store) {
  const { lesson, settings } = store.getState();
  const video = byId('video');
  const band = byId('captions');
  const control = byId('captions-button');
  const tracks = (lesson.captions || []).map((captions, i) => addTrack(video, captions, i === 0));
  control.hidden = tracks.length === 0;
  if (!tracks.length) {
    band.hidden = true;
    return;
  }
  let current = pick(tracks, settings.captionLanguage);
  tracks.forEach((track, i) => track.addEventListener('cuechange', () => i === current && showCues(track, band)));
  store.watch((state) => state.settings.captionLanguage, (language) => {
    current = pick(tracks, language);
    tracks.forEach((track, i) => { track.mode = i === current ? 'hidden' : 'disabled'; });
    showCues(tracks[current], band);
  });
  store.watch((state) => state.settings.captionSize, (size) => { band.dataset.size = size; });
  store.watch((state) => state.settings.captionsOn, (on) => {
    band.hidden = !on;
    control.setAttribute('aria-label', on ? 'Captions are shown: hide them' : 'Captions are hidden: show them');
    control.title = control.getAttribute('aria-label');
    control.setAttribute('aria-pressed', String(Boolean(on)));
  });
  control.addEventListener('click', () => store.dispatch('settings', { captionsOn: !store.getState().settings.captionsOn }));
  control.replaceChildren(icon('captions'));
}
