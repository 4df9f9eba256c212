import { get, post } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { choice, field, form } from './forms.js';
import { goodNotice, guarded } from './notice.js';
import { mailButtons } from './mail.js';

const DONE = {
  blocked: 'The license is blocked.',
  unblocked: 'The license is served again.',
  refunded: 'The refund is in the book and the license is blocked.',
  places: 'The number of laptops was changed.',
  renamed: 'Name and address were corrected.',
};

/** What cannot be undone about a refund, said before it is done. */
function refundWords(license) {
  return license.laptops.length
    ? 'A laptop was opened with this license. What it opens now it keeps; it opens no edition that you pack from now on.'
    : 'This license was never opened. Without a letter its file opens nothing.';
}

function undoNotice(act, again) {
  const trouble = el('div', {});
  const notice = goodNotice(DONE[act.kind] || 'Done.');
  notice.append(button({
    text: 'Take it back',
    onClick: async () => {
      if (await guarded(trouble, () => post(`api/acts/${act.seq}/undo`))) {
        again();
      }
    },
  }), trouble);
  return notice;
}

function actButtons(license, run) {
  const act = (words, name, body, sure) => button({
    text: words,
    onClick: () => {
      if (!sure || window.confirm(sure)) {
        run(`api/licenses/${license.id}/${name}`, body || {});
      }
    },
  });
  return license.state === 'blocked'
    ? [act('Serve it again', 'unblock')]
    : [act('Refund', 'refund', {}, `${refundWords(license)}\n\nEnter the refund and block the license?`),
      act('Block', 'block', {}, `${license.name} keeps what opens now, and gets no letter and no later edition.\n\nBlock the license?`)];
}

function licenseBlock(license, courses, context) {
  const { run, out, trouble } = context;
  const living = license.laptops.filter((laptop) => laptop.living).length;
  const facts = Object.entries(license.facts).map(([name, value]) => `${name} ${value}`).join(' · ');
  const more = courses.filter((course) => !license.series.includes(course.series));
  const issue = async (body) => {
    const sold = await guarded(trouble, () => post(`api/licenses/${license.id}/issue`, body));
    if (sold) {
      out.replaceChildren(goodNotice(`Here is issue ${sold.license.issue} of the license.`),
        mailButtons(sold.mail, () => post(`api/licenses/${license.id}/sent`).catch(() => undefined)));
    }
  };
  return el('div', { class: 'license' },
    el('p', {}, el('strong', {}, license.series.join(', ')), ` · ${living} of ${license.places} laptops in use · since ${license.day}`,
      license.state === 'blocked' ? el('span', { class: 'state-blocked' }, ' · blocked') : null),
    facts ? el('p', { class: 'quiet small' }, facts) : null,
    license.laptops.length ? el('details', {}, el('summary', {}, 'Laptops'), el('ul', {}, license.laptops.map((laptop) => el('li', {},
      `place ${laptop.id.slice(0, 6)} · since ${laptop.since}${laptop.living ? '' : ' · retired'}`)))) : null,
    el('div', { class: 'row' },
      license.state === 'open' ? button({ text: 'License again', sign: 'license', onClick: () => issue({}) }) : null,
      ...actButtons(license, run)),
    license.state === 'open' ? el('details', {}, el('summary', {}, 'Laptops and courses'),
      form({ class: 'row' }, (typed) => run(`api/licenses/${license.id}/places`, typed),
        field('Laptops', { name: 'places', type: 'number', min: Math.max(1, living), max: 99, value: license.places }),
        el('button', { type: 'submit' }, 'Change')),
      more.length ? form({ class: 'row' }, (typed) => issue(typed),
        choice('Another course', 'series', more.map((one) => [one.series, one.title]), more[0].series),
        el('button', { type: 'submit' }, 'Add and write the license')) : null) : null);
}

function nameForm(person, context, again) {
  return el('details', { class: 'license' }, el('summary', {}, 'Name, address, forgetting'),
    form({ class: 'fields' }, (typed) => context.run(`api/people/${person.id}/rename`, typed),
      field('Name', { name: 'name', value: person.name, required: true, maxlength: 100 }),
      field('Address', { name: 'email', type: 'email', value: person.email, required: true }),
      el('p', {}, el('button', { type: 'submit' }, 'Correct'))),
    button({
      text: 'Forget this person',
      onClick: async () => {
        const sure = `Name and address of ${person.name} leave the book for good; licenses and laptops stay, nameless. `
          + 'Backups made before still hold them. Forget?';
        if (window.confirm(sure) && await guarded(context.trouble, () => post(`api/people/${person.id}/erase`))) {
          again();
        }
      },
    }));
}

/** One person, closed to a line; what can be done stands inside. */
export function personSheet(person, courses, again) {
  const inside = el('div', {});
  const series = [...new Set(person.licenses.flatMap((license) => license.series))].join(', ');
  const blocked = person.licenses.some((license) => license.state === 'blocked');
  const node = el('details', { class: 'person', 'data-person': person.id },
    el('summary', {}, el('strong', {}, person.name), el('span', { class: 'quiet' }, person.email), el('span', {}, series),
      blocked ? el('span', { class: 'state-blocked' }, 'blocked') : null), inside);
  const draw = async () => {
    const trouble = el('div', {});
    const fresh = await guarded(trouble, () => get('api/person', { id: person.id }));
    const out = el('div', {});
    const run = async (path, body) => {
      if (await guarded(trouble, () => post(path, body))) {
        await draw();
      }
    };
    const context = { run, out, trouble };
    inside.replaceChildren(trouble, ...(fresh ? [
      ...fresh.acts.map((act) => undoNotice(act, draw)), out,
      ...fresh.licenses.map((license) => licenseBlock(license, courses, context)),
      nameForm(fresh, context, again)] : []));
  };
  node.addEventListener('toggle', () => node.open && draw());
  return node;
}
