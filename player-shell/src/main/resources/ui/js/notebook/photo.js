import { address, dropFile } from '../api.js';

const LONGEST_PIXELS = 1600;
const MOST_FILE_BYTES = 40e6;
const QUALITY = 0.85;

export const photoAddress = (id) => address(`print/note/${id}`);

/** Draws the photo smaller; what the camera wrote beside it, such as the place, stays behind. */
async function smaller(file) {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_PIXELS / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
}

/** Keeps a photo and returns its id; the bench cleans it once more. */
export async function keepPhoto(file) {
  const trouble = { safe: 'The note is as it was.', next: 'Choose a picture as JPEG or PNG.' };
  if (file.size > MOST_FILE_BYTES) {
    throw { ...trouble, happened: 'This file is larger than a photo is.' };
  }
  const blob = await smaller(file).catch(() => null);
  if (!blob) {
    throw { ...trouble, happened: 'This browser cannot open that picture.' };
  }
  return (await dropFile(blob, 'photo.jpg', 'api/note-pictures')).id;
}
