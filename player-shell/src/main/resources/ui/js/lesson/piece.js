import { byId, button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { beginForm } from '../pieces/begin-form.js';
import { fetchPieces } from '../pieces/pieces.js';
import { stepLine } from '../pieces/step-line.js';

const say = (words) => { byId('said').textContent = words; };

/** Pieces in work; those of this lesson first, then what was changed last. */
function inWork(pieces, lesson) {
  const active = pieces.filter((piece) => piece.state === 'active');
  const ofThis = (piece) => piece.lesson === lesson;
  return [...active.filter(ofThis), ...active.filter((piece) => !ofThis(piece))];
}

function nameOf(pieces, chosen, choose) {
  if (pieces.length === 1) {
    return el('label', { class: 'piece-title', for: 'piece-step' }, chosen.name);
  }
  const select = el('select', { class: 'piece-title', 'aria-label': 'My piece' },
    pieces.map((piece) => el('option', { value: piece.id, selected: piece.id === chosen.id }, piece.name)));
  select.addEventListener('change', () => choose(select.value));
  return select;
}

/** One line below the work strip: what the student is making and what comes next for it. */
export function connectPiece(store) {
  const place = byId('piece');
  const { lesson } = store.getState();
  const here = { edition: lesson.edition, lesson: lesson.lesson.id };
  let pieces = [];
  let chosenId = null;

  const fail = (error) => place.append(el('div', { class: 'piece-trouble' }, errorNotice(error)));
  const put = (changed) => { pieces = [changed, ...pieces.filter((piece) => piece.id !== changed.id)]; };

  function begin() {
    const { form, focus } = beginForm({
      place: here,
      onBegun: (piece) => { put(piece); chosenId = piece.id; render(); byId('piece-step').focus(); },
      onCancel: () => { render(); byId('piece-begin').focus(); },
    });
    place.replaceChildren(form);
    focus();
  }

  function render() {
    const active = inWork(pieces, here.lesson);
    const chosen = active.find((piece) => piece.id === chosenId) || active[0];
    const start = button({
      id: 'piece-begin', sign: 'plus', kind: chosen ? 'bare' : null, onClick: begin,
      text: chosen ? null : 'Start a piece for this lesson', label: chosen ? 'Start a piece for this lesson' : null,
    });
    if (!chosen) {
      place.replaceChildren(start, el('span', { class: 'piece-hint' }, 'and its next step stands here, in every lesson.'));
      return;
    }
    place.replaceChildren(
      nameOf(active, chosen, (id) => { chosenId = id; render(); byId('piece-step').focus(); }),
      ...stepLine(chosen, {
        id: 'piece-step',
        onChange: (piece, done) => { put(piece); if (done) { say(`Done: ${done}. What comes next?`); } },
        onFinish: (piece) => { put(piece); chosenId = null; say(`${piece.name} is finished.`); render(); byId('piece-begin').focus(); },
        fail,
      }),
      start);
  }

  fetchPieces().then((found) => { pieces = found; render(); }).catch(fail);
}
