import { el } from './dom.js';

const KEPT_MS = 10000;

/** Saves a text as a file through the browser's own download. */
export function saveText(text, fileName) {
  const url = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
  el('a', { href: url, download: fileName }).click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
