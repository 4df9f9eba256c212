import { button, el } from '../dom.js';
import { closePanel, openPanel } from '../panel.js';
import { decodeQR } from '../../vendor/qr/decode.js';

const LOOK_EVERY_MS = 100;
const WIDTH = 1280;
const SEVERAL = /^LEHRCASE-([A-Z]+)-1\/(\d+)\/(\d+)\/([0-9A-F]{8}):/;
const OURS = /^LEHRCASE-[A-Z]+-1[/:]/;

const NO_CAMERA = {
  NotAllowedError: 'The browser does not let this page use the camera. Allow it beside the address, or bring the message as a file, or type its lines under “Paste a text”.',
  NotFoundError: 'This laptop has no camera. Bring the message as a file, or type its lines under “Paste a text”.',
  NotReadableError: 'Another program uses the camera. Close it and try once more.',
};

const noCamera = (error) => (error && NO_CAMERA[error.name])
  || 'The camera cannot be used here. Bring the message as a file, or type its lines under “Paste a text”.';

/** Gathers codes in any order; gives the text of the whole once its last code is there. */
export class CodeGathering {
  constructor() {
    this.sets = new Map();
  }

  /** Takes the text of one code: `{done}`, or `{have, of}`, or null for a code that is not ours. */
  take(text) {
    if (!OURS.test(text)) {
      return null;
    }
    const part = SEVERAL.exec(text);
    if (!part) {
      return { done: text };
    }
    const [, word, number, of, check] = part;
    const key = `${word}/${of}/${check}`;
    const set = this.sets.get(key) || new Map();
    this.sets.set(key, set.set(number, text));
    return set.size === Number(of) ? { done: Array.from(set.values()).join('\n') } : { have: set.size, of: Number(of) };
  }
}

function readFrame(video, canvas) {
  const scale = Math.min(1, WIDTH / video.videoWidth);
  canvas.width = Math.round(video.videoWidth * scale);
  canvas.height = Math.round(video.videoHeight * scale);
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  pen.drawImage(video, 0, 0, canvas.width, canvas.height);
  try {
    return decodeQR(pen.getImageData(0, 0, canvas.width, canvas.height));
  } catch (nothingThere) {
    return '';
  }
}

function words(taken) {
  return taken ? `${taken.have} of ${taken.of} codes are read. Show the others.` : 'This is a code, but none of Lehrcase.';
}

/** Looks until the whole is read or the panel is gone; the camera goes out with it. */
async function look(stream, video, said, handOver) {
  const canvas = document.createElement('canvas');
  const gathering = new CodeGathering();
  while (video.isConnected) {
    const text = video.videoWidth ? readFrame(video, canvas) : '';
    const taken = text ? gathering.take(text) : null;
    if (taken && taken.done) {
      closePanel();
      handOver(taken.done);
    } else if (text && said.textContent !== words(taken)) {
      said.textContent = words(taken);
    }
    await new Promise((resolve) => { setTimeout(resolve, LOOK_EVERY_MS); });
  }
  stream.getTracks().forEach((track) => track.stop());
}

async function readByCamera(handOver) {
  const said = el('p', { role: 'status' }, 'The camera is being switched on …');
  const video = el('video', { class: 'camera', muted: true, playsinline: true, 'aria-label': 'What the camera sees' });
  openPanel('Read a code', el('p', {}, 'Hold the code of a license, a key letter, an ask or a move before the camera, as large as the picture. The picture stays in this page.'), video, said);
  try {
    const stream = await navigator.mediaDevices.getUserMedia({ video: { width: { ideal: WIDTH }, height: { ideal: 720 } } });
    video.srcObject = stream;
    video.muted = true;
    await video.play();
    said.textContent = 'Looking for a code …';
    await look(stream, video, said, handOver);
  } catch (error) {
    video.hidden = true;
    said.textContent = noCamera(error);
  }
}

/** The button of the drop place; `handOver` gets the text of the codes. */
export const cameraButton = (handOver) => button({ text: 'Read a code with the camera', onClick: () => readByCamera(handOver) });
