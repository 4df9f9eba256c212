import { el } from '../js/dom.js';

/** An error as the desk tells it: what happened, what is safe, what to do next. */
export function errorNotice(error) {
  return el('div', { class: 'notice bad', role: 'alert' },
    el('p', {}, el('strong', {}, error.happened || 'Something in this page went wrong.')),
    error.safe ? el('p', {}, error.safe) : null,
    error.next ? el('p', {}, error.next) : null);
}

/** News that need nothing to be done. */
export function goodNotice(...lines) {
  return el('div', { class: 'notice', role: 'status' }, lines.filter(Boolean).map((line) => el('p', {}, line)));
}

/** Runs an action; its error is shown in `place`, and the answer is undefined then. */
export async function guarded(place, action) {
  try {
    place.replaceChildren();
    return await action();
  } catch (error) {
    place.replaceChildren(errorNotice(error));
    return undefined;
  }
}
