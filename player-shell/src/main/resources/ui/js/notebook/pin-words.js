import { clock } from '../units.js';

/** Where a note is pinned, in words. `title` gives the name of a paper by its id. */
export function pinWords({ pin }, title = () => '') {
  const name = pin.asset ? title(pin.asset) : '';
  const of = name ? `, ${name}` : '';
  switch (pin.where) {
    case 'second':
      return pin.to ? `${clock(pin.at / 1000)} to ${clock(pin.to / 1000)}` : `at ${clock(pin.at / 1000)}`;
    case 'page':
      return `page ${pin.at}${of}`;
    case 'line':
      return `line ${pin.at}${of}`;
    default:
      return 'the whole lesson';
  }
}

export const KIND_WORDS = { note: 'Note', mark: 'Mark', loop: 'Loop' };
