import { post } from '../api.js';
import { byId, el, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { ruler } from '../template/ruler.js';
import { findings, verdict } from './verdict.js';

const LONGEST_MS = 20000;
const KINDS = {
  'H.264': 'video/mp4; codecs="avc1.640028, mp4a.40.2"',
  VP9: 'video/webm; codecs="vp9, opus"',
  AV1: 'video/mp4; codecs="av01.0.08M.08"',
};

const clip = byId('clip');

function counted() {
  const quality = clip.getVideoPlaybackQuality ? clip.getVideoPlaybackQuality() : null;
  return quality
    ? { frames: quality.totalVideoFrames, dropped: quality.droppedVideoFrames }
    : { frames: clip.webkitDecodedFrameCount || 0, dropped: clip.webkitDroppedFrameCount || 0 };
}

/** Plays one clip to its end and counts the pictures that came too late. */
function play(name) {
  return new Promise((resolve) => {
    const done = (failed) => {
      clearTimeout(timer);
      clip.onended = null;
      clip.onerror = null;
      resolve({ ...counted(), failed });
    };
    const timer = setTimeout(() => done(false), LONGEST_MS);
    clip.onended = () => done(false);
    clip.onerror = () => done(true);
    clip.src = new URL(`../../clips/${name}.mp4`, import.meta.url).href;
    clip.play().catch(() => done(true));
  });
}

function show(found) {
  const said = verdict(found);
  byId('verdict').hidden = false;
  byId('verdict').className = said.good ? 'notice' : 'notice bad';
  byId('verdict').replaceChildren(el('p', {}, el('strong', {}, said.text)));
  byId('rows').replaceChildren(...findings(found).map((row) => el('tr', { class: row.bad ? 'bad' : null },
    el('th', { scope: 'row' }, row.what), el('td', {}, row.found), el('td', {}, row.means))));
  byId('findings').hidden = false;
  byId('ears').hidden = false;
}

async function tryAll() {
  byId('go').disabled = true;
  try {
    const laptop = await post('api/trial', {});
    const full = await play('full');
    const light = await play('light');
    const codecs = Object.keys(KINDS).filter((kind) => clip.canPlayType(KINDS[kind]) === 'probably');
    show({ ...laptop, full, light, codecs });
  } catch (error) {
    byId('verdict').hidden = false;
    byId('verdict').replaceChildren(errorNotice(error));
  }
  byId('go').disabled = false;
}

async function tryCamera() {
  const said = byId('camera-said');
  const eye = byId('eye');
  try {
    const stream = await navigator.mediaDevices.getUserMedia({ video: true });
    eye.hidden = false;
    eye.srcObject = stream;
    await eye.play();
    said.textContent = `It works: ${eye.videoWidth} by ${eye.videoHeight}. It is off again in a few seconds.`;
    setTimeout(() => {
      stream.getTracks().forEach((track) => track.stop());
      eye.hidden = true;
    }, 5000);
  } catch (none) {
    said.textContent = 'No camera can be used here. Files and typed text do the same.';
  }
}

const hear = (text) => () => {
  byId('ears').replaceChildren(el('span', { role: 'status' }, text));
};

wakeIcons();
document.documentElement.dataset.ready = '';
byId('ruler-place').append(ruler());
byId('go').addEventListener('click', tryAll);
byId('camera').addEventListener('click', tryCamera);
byId('print').addEventListener('click', () => window.print());
byId('heard').addEventListener('click', hear('Sound works.'));
byId('silent').addEventListener('click', hear('Turn up the sound of the laptop and of the browser’s tab, then try again. All films have captions if their teacher wrote them.'));
