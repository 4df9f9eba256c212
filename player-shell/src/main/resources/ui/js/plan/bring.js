import { dropFile } from '../api.js';
import { el } from '../dom.js';

/** A picture from the student's disk: JPEG and PNG as they are, anything else if this browser can open it. */

const MOST_BYTES = 64 * 1024 * 1024;
const LONGEST = 4000;
const NO_PICTURE = { safe: 'Nothing was changed.', next: 'Choose a JPEG or PNG picture.' };

async function startsLike(file, octets) {
  const start = new Uint8Array(await file.slice(0, octets.length).arrayBuffer());
  return octets.every((one, at) => start[at] === one);
}

/** HEIC, WebP and the like: decoded here, handed on as JPEG. Null if this browser cannot. */
async function redrawn(file) {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
    const canvas = el('canvas', { width: Math.round(picture.width * scale), height: Math.round(picture.height * scale) });
    canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return await new Promise((done) => canvas.toBlob(done, 'image/jpeg', 0.95));
  } catch (cannot) {
    return null;
  }
}

/** Hands a picture to the bench; resolves to its id and sizes. */
export async function bringPicture(file) {
  if (file.size > MOST_BYTES) {
    throw { happened: 'This picture is larger than 64 MiB.', safe: NO_PICTURE.safe, next: 'Save it as JPEG, 3,000 pixels along the longer side are plenty.' }; // eslint-disable-line no-throw-literal
  }
  const known = await startsLike(file, [0xff, 0xd8, 0xff]) || await startsLike(file, [0x89, 0x50, 0x4e, 0x47]);
  const blob = known ? file : (await redrawn(file)) || file;
  return dropFile(blob, file.name, 'api/pictures');
}

export const isPlanFile = (name) => /\.(json|yaml|yml)$/i.test(name);

export const nameOf = (file) => file.name.replace(/\.[^.]*$/, '').slice(0, 60) || 'My piece';
