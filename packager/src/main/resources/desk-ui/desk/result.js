import { post } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { choice, field, form } from './forms.js';
import { guarded } from './notice.js';
import { mailButtons } from './mail.js';

function letter(result, name) {
  const notes = [
    result.again ? 'answered before: this is the same letter again' : null,
    result.retired ? 'the place of the laptop before was retired' : null].filter(Boolean);
  return el('li', { 'data-kind': 'letter' },
    el('strong', {}, `A letter for ${result.license.name}`), ` · ${result.license.email}`,
    el('p', { class: 'quiet small' }, [name, ...notes].filter(Boolean).join(' · ')),
    mailButtons(result.mail, () => post(`api/licenses/${result.license.id}/sent`).catch(() => undefined)));
}

/** What the teacher can say beside a card: whose it is, or which laptop it replaces. */
function answerForm(result, item, trouble, context) {
  const living = result.license ? result.license.laptops.filter((laptop) => laptop.living) : [];
  const parts = result.license
    ? [choice('The laptop that is gone', 'replaces', [['', 'none'],
      ...living.map((laptop) => [laptop.id, `place ${laptop.id.slice(0, 6)}, since ${laptop.since}`])], '')]
    : [field('Whose laptop is it?', { name: 'license', required: true, placeholder: 'address or license' })];
  return form({ class: 'fields' }, async (typed) => {
    const done = await guarded(trouble, () => post(`api/waiting/${result.id}/answer`, typed));
    if (done) {
      item.replaceWith(letter(done, ''));
      context.onSettled?.();
    }
  }, ...parts, el('p', {}, el('button', { type: 'submit', class: 'main' }, 'Write the letter')));
}

function settle(result, item, trouble, context, words) {
  return button({
    text: words,
    kind: 'bare',
    onClick: async () => {
      if (await guarded(trouble, () => post(`api/waiting/${result.id}/settle`))) {
        item.remove();
        context.onSettled?.();
      }
    },
  });
}

function waits(result, name, context) {
  const trouble = el('div', {});
  const item = el('li', { 'data-kind': 'waits' });
  const who = result.license ? `A card of ${result.license.name} waits` : 'A card waits';
  item.append(el('strong', {}, who), name ? ` · ${name}` : '', el('p', {}, result.reason), trouble,
    answerForm(result, item, trouble, context),
    settle(result, item, trouble, context, 'Put it away without a letter'));
  return item;
}

export function slip(result, name, context) {
  const trouble = el('div', {});
  const item = el('li', { 'data-kind': 'slip' });
  const reply = (result.reply || []).join('\n\n');
  item.append(el('strong', {}, 'A buyer asks for help'), name ? ` · ${name}` : '', trouble,
    result.happened ? el('ul', {}, result.happened.map((line) => el('li', {}, line))) : el('p', {}, 'It stands in Waiting, with an answer to send.'),
    result.lines ? el('details', {}, el('summary', {}, 'The slip'), el('pre', { class: 'slip' }, result.lines.join('\n'))) : '',
    reply ? el('details', { open: true }, el('summary', {}, 'An answer to send'), el('p', {}, reply)) : '',
    el('div', { class: 'row' },
      reply ? button({ text: 'Copy the answer', onClick: () => navigator.clipboard.writeText(reply) }) : null,
      settle(result, item, trouble, context, 'Done')));
  return item;
}

/** One answer of the desk to one message. */
export function resultItem(result, name, context) {
  if (result.kind === 'letter') {
    return letter(result, name);
  }
  if (result.kind === 'waits') {
    return waits(result, name, context);
  }
  if (result.kind === 'slip') {
    return slip(result, name, context);
  }
  if (result.kind === 'returned') {
    return el('li', { 'data-kind': 'returned' }, el('strong', {}, `${result.license.name} gave a place back`), ` · ${result.license.email}`,
      el('p', {}, `${result.reason} ${result.license.laptops.filter((laptop) => laptop.living).length} of ${result.license.places} laptops in use.`),
      el('p', { class: 'quiet small' }, name));
  }
  return el('li', { 'data-kind': 'nothing' }, el('strong', {}, name), el('p', {}, result.reason));
}
