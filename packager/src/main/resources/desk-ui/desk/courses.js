import { get, post } from '../js/api.js';
import { followJob } from '../js/job.js';
import { button, el } from '../js/dom.js';
import { correctionSheet } from './corrections.js';
import { form, values } from './forms.js';
import { folderField } from './folder.js';
import { errorNotice, goodNotice, guarded } from './notice.js';

const WORDS = { error: 'Wrong', doubt: 'Doubtful', note: 'Good to know' };
const megabytes = (bytes) => (bytes / 1e6).toFixed(0);

function reportSheet(report) {
  const counts = ['error', 'doubt', 'note'].map((kind) => [kind, report.findings.filter((one) => one.severity === kind)]);
  const verdict = report.packable
    ? goodNotice(`${report.title} can be packed: ${report.lessons.length} lessons, ${report.size}.`)
    : errorNotice({ happened: `${report.title} cannot be packed yet.`, next: 'Put right what is marked "Wrong" and check again.' });
  return el('div', { id: 'check-report' }, verdict,
    counts.filter(([, all]) => all.length).map(([kind, all]) => el('details', { open: kind !== 'note' },
      el('summary', {}, el('strong', {}, `${WORDS[kind]} · ${all.length}`)),
      all.map((one) => el('div', { class: 'finding', 'data-severity': one.severity },
        el('p', {}, el('strong', {}, one.file || 'the course folder'), one.place ? `, ${one.place}` : ''),
        el('p', {}, one.what), el('p', { class: 'quiet' }, one.whatToDo))))),
    el('details', {}, el('summary', {}, 'Lessons'), el('ol', {}, report.lessons.map((lesson) => el('li', { value: lesson.number },
      `${lesson.title} · ${lesson.files} files, ${lesson.moments} moments${lesson.open ? ' · open without a license' : ''}`)))));
}

function progressSheet(job, onStop) {
  const bar = el('progress', { max: 1, value: 0, 'aria-label': 'Packing' });
  const words = el('p', { role: 'status' }, 'Beginning …');
  const said = el('div', { class: 'said' });
  return {
    node: el('div', { id: 'pack-progress' }, words, bar, said, button({ text: 'Stop', sign: 'stop', onClick: onStop })),
    report: (answer) => {
      bar.max = Math.max(1, answer.totalBytes);
      bar.value = answer.doneBytes;
      words.textContent = `${megabytes(answer.doneBytes)} of ${megabytes(answer.totalBytes)} MB`;
      said.replaceChildren(...answer.said.map((line) => el('p', {}, line)));
    },
  };
}

async function pack(typed, out, trouble) {
  const started = await guarded(trouble, () => post('api/courses/pack', typed));
  if (!started) {
    return false;
  }
  const progress = progressSheet(started.job, () => post(`api/jobs/${started.job}/stop`));
  out.replaceChildren(progress.node);
  const ended = await followJob(started.job, progress.report);
  if (ended.state === 'done') {
    out.replaceChildren(goodNotice(ended.message), el('ul', {}, (ended.result.news || []).map((line) => el('li', {}, line))));
  } else if (ended.state === 'stopped') {
    out.replaceChildren(goodNotice('Stopped. What was finished is kept; packing again goes on from there.'));
  } else {
    out.replaceChildren(errorNotice(ended.result && ended.result.error ? ended.result.error : { happened: ended.message }));
  }
  return ended.state === 'done';
}

function workSheet(known, again) {
  const trouble = el('div', {});
  const out = el('div', {});
  const latest = known.length ? known[known.length - 1] : null;
  const parent = latest ? latest.editions[latest.editions.length - 1].folder.replace(/[\\/][^\\/]*$/, '') : '';
  const check = el('button', { type: 'submit' }, 'Check');
  const node = form({ class: 'sheet', id: 'course-form' }, async (typed) => {
    const report = await guarded(trouble, () => post('api/courses/check', { folder: typed.folder }));
    if (report) {
      out.replaceChildren(reportSheet(report));
    }
  },
  el('h2', {}, 'Check and pack'),
  folderField('Course folder', 'folder', latest ? latest.course : '', 'the folder of one series, with a folder for each lesson'),
  folderField('Editions go to', 'out', parent, 'the edition gets a folder of its own in it'),
  trouble,
  el('div', { class: 'row' }, check, button({
    text: 'Pack',
    kind: 'main',
    id: 'pack-button',
    onClick: async () => {
      if (node.reportValidity() && await pack(values(node), out, trouble)) {
        again();
      }
    },
  })), out);
  return node;
}

function courseSheet(course) {
  const last = course.editions[course.editions.length - 1];
  return el('section', { class: 'sheet' }, el('h3', {}, course.title), el('p', { class: 'quiet' }, course.series),
    course.changes.length ? el('details', { class: 'notice care' }, el('summary', {}, `${course.changes.length} files look different since edition ${last.number}`),
      el('ul', {}, course.changes.map((line) => el('li', {}, line)))) : null,
    course.course && !course.courseThere ? el('p', { class: 'quiet' }, `Its folder is away: ${course.course}`) : null,
    el('ul', {}, course.editions.map((edition) => el('li', {}, `Edition ${edition.number}, ${edition.day}`,
      el('div', { class: 'quiet path' }, edition.folder, edition.there ? '' : ' (not there now)'),
      edition.there ? correctionSheet(edition) : null))),
    button({ text: 'Write its keys file again', onClick: (event) => reissue(course, event.currentTarget) }));
}

async function reissue(course, pressed) {
  const place = pressed.nextElementSibling || pressed.insertAdjacentElement('afterend', el('div', {}));
  const last = course.editions[course.editions.length - 1];
  const done = await guarded(place, () => post('api/courses/keys', { folder: last.folder }));
  if (done) {
    place.replaceChildren(goodNotice(`Issue ${done.issue} of the keys file opens for ${done.licenses} licenses. Copy the small files ${done.files.join(', ')} to sticks and web addresses.`));
  }
}

/** Courses: what was packed, and the way from a folder to an edition. */
export async function courseRoom(place) {
  const list = el('div', { class: 'sheets', id: 'course-list' });
  const draw = async () => {
    const known = (await get('api/courses')).courses;
    list.replaceChildren(...(known.length ? known.map(courseSheet) : [el('p', { class: 'quiet' }, 'Nothing was packed yet. Point at a course folder and check it.')]));
    return known;
  };
  const known = await draw();
  place.append(workSheet(known, draw), list);
}
