import { helpSlipButton } from './help-slip.js';
import { el } from './dom.js';

/** An error as the bench tells it: what happened, what is safe, what to do next. */
export function errorNotice(error) {
  return el('div', { class: 'notice bad', role: 'alert' },
    el('p', {}, el('strong', {}, error.happened || 'Something in this page went wrong.')),
    error.safe ? el('p', {}, error.safe) : null,
    el('p', {}, error.next || 'Load this page again; if it stays, quit and start Lehrcase again.'),
    helpSlipButton(error));
}

/** Good or neutral news; polite, so that it does not cut in on a screen reader. */
export function goodNotice(...lines) {
  return el('div', { class: 'notice', role: 'status' }, lines.filter(Boolean).map((line) => el('p', {}, line)));
}

/** Runs an action and shows its error in `place` instead of losing it. */
export async function guarded(place, action) {
  try {
    return await action();
  } catch (error) {
    place.replaceChildren(errorNotice(error));
    return undefined;
  }
}
