import { get, post } from '../js/api.js';
import { whereOf } from '../js/corrections.js';
import { button, el } from '../js/dom.js';
import { saveText } from '../js/save-text.js';
import { choice, field, form } from './forms.js';
import { goodNotice, guarded } from './notice.js';
import { copyText } from './mail.js';

/** Shows a correction as the lesson shows it. */
const asInLesson = (note) => el('div', { class: 'notice bad', id: 'correction-preview' },
  el('p', { class: 'quiet' }, `Lesson ${note.lesson}, ${note.lessonTitle}${note.paper ? `, ${note.paper}` : ''}`),
  el('p', {}, el('strong', {}, `Correction, ${whereOf(note)} (${note.day}): `), note.words));

function placeFields(lessons) {
  const lesson = choice('Lesson', 'lesson', lessons.map((one) => [String(one.number), `${one.number} ${one.title}`]), String(lessons[0].number));
  const where = choice('Where', 'where', [['page', 'a page of a handout'], ['film', 'a time of the film']], 'page');
  const spot = el('div', { class: 'fields' });
  const value = (node) => node.querySelector('select').value;
  const draw = () => {
    const { papers } = lessons.find((one) => String(one.number) === value(lesson));
    spot.replaceChildren(...(value(where) === 'page'
      ? [choice('Handout', 'paper', papers.length ? papers.map((paper) => [paper.id, paper.name]) : [['', 'this lesson has none with pages']], ''),
        field('Page', { name: 'page', type: 'number', min: 1, max: 9999, required: true })]
      : [field('Time', { name: 'at', required: true, placeholder: '12:40', pattern: '(\\d{1,2}:)?\\d{1,2}:\\d{2}' }, 'minutes and seconds, or 1:02:40')]));
  };
  [lesson, where].forEach((node) => node.addEventListener('change', draw));
  draw();
  return [el('div', { class: 'fields' }, lesson, where), spot];
}

function listed(note, context) {
  const trouble = el('div', {});
  const tell = () => post('api/corrections/sent', { folder: context.folder, name: note.name }).then(context.again).catch(() => undefined);
  return el('li', { 'data-correction': note.name }, asInLesson(note), trouble, el('div', { class: 'row' },
    button({ text: 'Copy text to send', onClick: (event) => { copyText(note.text, event.currentTarget); tell(); } }),
    button({ text: 'Save text', sign: 'save', onClick: () => { saveText(note.text, note.fileName); tell(); } }),
    note.sent ? el('span', { class: 'quiet' }, 'Its text left the desk. Another correction of the same place can follow it.')
      : button({
        text: 'Take it back',
        kind: 'bare',
        onClick: async () => {
          if (await guarded(trouble, () => post('api/corrections/take-back', { folder: context.folder, name: note.name }))) {
            context.again();
          }
        },
      })));
}

function writingForm(found, context) {
  const trouble = el('div', { 'aria-live': 'polite' });
  const look = el('div', {});
  let shown = '';
  const sign = button({
    text: 'Sign it and put it in place',
    kind: 'main',
    onClick: async () => {
      const done = await guarded(trouble, () => post('api/corrections/sign', JSON.parse(shown)));
      if (done) {
        context.again('It is signed and lies in the edition\'s folder. Send its text to those who have the edition.');
      }
    },
  });
  const node = form({ id: 'correction-form' }, async (typed) => {
    const body = { ...typed, folder: context.folder };
    const note = await guarded(trouble, () => post('api/corrections/preview', body));
    if (note) {
      shown = JSON.stringify(body);
      look.replaceChildren(el('p', {}, 'So it stands in the lesson:'), asInLesson(note), el('p', {}, sign));
    }
  }, ...placeFields(found.lessons),
  el('label', { class: 'field' }, el('span', {}, 'What is right'), el('textarea', { name: 'text', required: true, maxlength: 4000 })),
  trouble, el('p', {}, el('button', { type: 'submit' }, 'Look at it')), look);
  node.addEventListener('input', () => look.replaceChildren());
  return node;
}

/** Corrections of one edition: written, shown, signed, sent, taken back. */
export function correctionSheet(edition) {
  const inside = el('div', {});
  const draw = async (news) => {
    const trouble = el('div', {});
    const found = await guarded(trouble, () => get('api/corrections', { folder: edition.folder }));
    const context = { folder: edition.folder, again: draw };
    inside.replaceChildren(trouble, ...(found ? [news ? goodNotice(news) : '', writingForm(found, context),
      found.corrections.length ? el('h4', {}, 'In this edition') : '',
      el('ul', { class: 'plain corrections' }, found.corrections.map((note) => listed(note, context)))] : []));
  };
  return el('details', { class: 'correcting', 'data-edition': edition.folder, on: { toggle: (event) => event.target.open && !inside.hasChildNodes() && draw() } },
    el('summary', {}, 'Corrections'), inside);
}
