import { address } from '../../api.js';
import { byId, el } from '../../dom.js';

const LONGEST = 2000;
const QUALITY = 0.85;

/**
 * A photo made upright and small by the browser, as a JPEG of nothing but pixels: place and camera stay
 * behind. What the browser cannot open (HEIC in most) is refused with what to do.
 */
async function plainJpeg(file) {
  let image;
  try {
    image = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch (unknown) {
    throw new Error('This browser cannot open that picture. On the phone, share it as JPEG (“most compatible”), or take a screenshot of it.');
  }
  const scale = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const canvas = el('canvas', { width: Math.max(1, Math.round(image.width * scale)), height: Math.max(1, Math.round(image.height * scale)) });
  canvas.getContext('2d').drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('This picture could not be made smaller.'))), 'image/jpeg', QUALITY);
  });
}

async function send(state, file, caption) {
  const body = await plainJpeg(file);
  const response = await fetch(address(`api/pieces/${state.piece.id}/photo`), {
    method: 'POST', credentials: 'same-origin', body,
    headers: { 'Content-Type': 'application/octet-stream', 'X-Lehrcase': '1', 'X-File-Name': encodeURIComponent(caption) },
  });
  const answer = await response.json();
  if (!response.ok) {
    throw new Error(`${answer.error.happened} ${answer.error.next || ''}`);
  }
  return answer;
}

export function showPhotos(state) {
  const { photos } = state.follow;
  const said = el('p', { role: 'status' });
  const caption = el('input', { type: 'text', id: 'photo-caption', maxlength: 100 });
  const file = el('input', { type: 'file', id: 'piece-photo', accept: 'image/*' });
  file.addEventListener('change', async () => {
    if (!file.files[0]) {
      return;
    }
    said.textContent = 'Keeping the picture …';
    try {
      state.follow = await send(state, file.files[0], caption.value.trim() || `Picture ${photos.length + 1}`);
      showPhotos(state);
      byId('piece-photo').focus();
    } catch (error) {
      said.replaceChildren(el('span', { class: 'field-trouble' }, `${error.message} Nothing was changed.`));
      file.value = '';
    }
  });
  byId('photos').replaceChildren(
    el('div', { class: 'piece-photos' }, photos.map((photo) => el('figure', {},
      el('a', { href: address(photo.address), target: '_blank' }, el('img', { src: address(photo.address), alt: photo.caption, loading: 'lazy' })),
      el('figcaption', {}, photo.caption, ' ', el('small', {}, new Date(photo.atMillis).toLocaleDateString()))))),
    el('div', { class: 'field' }, el('label', { for: 'photo-caption' }, 'What it shows'), caption),
    el('div', { class: 'field' }, el('label', { for: 'piece-photo' }, 'Add a picture; it is kept small, without place and camera'), file),
    said);
}
