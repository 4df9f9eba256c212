import { get, post, put } from '../api.js';

/** The student's pieces: one place for what the start page and a lesson ask of the bench. */
export const fetchPieces = async () => (await get('api/pieces')).pieces;
export const beginPiece = (name, place) => post('api/pieces', { name, nextStep: '', ...place });
export const stepDone = (piece, done) => post(`api/pieces/${piece.id}/step`, { done, nextStep: '' });
export const finishPiece = (piece) => post(`api/pieces/${piece.id}/finish`);
export const takeUpPiece = (piece) => post(`api/pieces/${piece.id}/take-up`);

const SETTLE_MILLIS = 400;

/**
 * A line of text that keeps itself: shortly after the last key, on leaving it, and when the page
 * goes away. `save(value, leaving)` returns a promise; what it says of a failure is shown by `fail`.
 */
export function keepsItself(input, save, fail) {
  let kept = input.value;
  let wait = 0;
  const keep = (leaving) => {
    window.clearTimeout(wait);
    const value = input.value.trim();
    if (value === kept || (input.required && !value)) {
      return;
    }
    const before = kept;
    kept = value;
    save(value, leaving).catch((error) => {
      kept = before;
      fail(error);
    });
  };
  input.addEventListener('input', () => {
    window.clearTimeout(wait);
    wait = window.setTimeout(keep, SETTLE_MILLIS, false);
  });
  input.addEventListener('change', () => keep(false));
  input.addEventListener('keydown', (event) => event.key === 'Enter' && input.blur());
  window.addEventListener('pagehide', () => keep(true));
  return { forget: () => { window.clearTimeout(wait); kept = input.value.trim(); } };
}

/** Keeps one field ("name", "nextStep") of a piece. */
export const savePiece = (piece, field) => (value, leaving) => put(`api/pieces/${piece.id}`, { [field]: value }, leaving);
