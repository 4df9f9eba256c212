import { button, el } from '../dom.js';
import { finishPiece, keepsItself, savePiece, stepDone } from './pieces.js';

/**
 * The next step of a piece as one line that is changed in place. "Done" puts the step behind the
 * piece and asks for the next one; while none is written, the piece can be finished.
 */
export function stepLine(piece, { id, onChange, onFinish, fail }) {
  const input = el('input', {
    id, type: 'text', class: 'piece-step', maxlength: 200, value: piece.nextStep, placeholder: 'What comes next?',
    'aria-label': `Next step of ${piece.name}`,
  });
  const keeper = keepsItself(input, async (value, leaving) => onChange(await savePiece(piece, 'nextStep')(value, leaving)), fail);
  const done = button({
    text: 'Done', sign: 'check', 'aria-label': `Done: what comes next for ${piece.name}?`, title: 'Done: what comes next?',
    onClick: async () => {
      const text = input.value.trim();
      input.value = '';
      keeper.forget();
      show();
      input.focus();
      try {
        onChange(await stepDone(piece, text), text);
      } catch (error) {
        input.value = text;
        show();
        fail(error);
      }
    },
  });
  const finish = button({
    text: 'The piece is finished', 'aria-label': `${piece.name} is finished`,
    onClick: () => finishPiece(piece).then(onFinish).catch(fail),
  });
  function show() {
    done.hidden = !input.value.trim();
    finish.hidden = !done.hidden;
  }
  input.addEventListener('input', show);
  show();
  return [input, done, finish];
}
