import { get } from '../api.js';
import { button, byId, el, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { loadSettings } from '../settings.js';
import { lessonUrl } from '../start/go-on.js';
import { connectTimers } from '../timers.js';
import { connectBooks } from './books.js';
import { connectStick } from './stick.js';
import { noteCard } from './note-card.js';
import { fetchNotes, undoNote, withNote } from './notes.js';

let notes = [];
let lessons = new Map();
let cards = [];

const say = (words) => { byId('said').textContent = words; };
const fail = (error) => byId('trouble').replaceChildren(errorNotice(error));

/** Lessons by id, in the order of the courses; the newest edition that is here. */
function readLessons(state) {
  lessons = new Map();
  state.courses.forEach((course) => course.lessons.filter((lesson) => lesson.id).forEach((lesson) =>
    lessons.set(lesson.id, { edition: course.edition, id: lesson.id, title: lesson.title, course: course.title, playable: lesson.playable })));
}

function jump(note) {
  const lesson = lessons.get(note.lesson);
  if (!lesson) {
    say('The course of this note is not on this laptop.');
    byId('trouble').replaceChildren(el('div', { class: 'notice', role: 'status' }, 'The course of this note is not here now: put the stick in, or bring it in on My courses. The note is kept.'));
    return;
  }
  const url = new URL(lessonUrl(lesson.edition, lesson.id));
  url.searchParams.set('n', note.item);
  window.location.href = url.href;
}

const on = {
  jump,
  kept: (now, before) => { notes = withNote(notes, now, before); },
  gone: (now, before) => {
    notes = withNote(notes, now, before);
    draw();
    const notice = el('div', { class: 'notice', role: 'status' }, el('span', {}, 'Put away. '), button({ text: 'Fetch it back', onClick: async () => {
      notes = withNote(notes, await undoNote(now));
      notice.remove();
      draw();
    } }));
    byId('trouble').replaceChildren(notice);
  },
};

const wanted = (note) => {
  const words = byId('notes-find').value.trim().toLowerCase();
  const kind = byId('notes-kind').value;
  return (!kind || note.kind === kind) && (!words || note.content.text.toLowerCase().includes(words));
};

function group(title, list) {
  const made = list.map((note) => noteCard(note, on));
  cards.push(...made);
  return [el('h2', {}, title), el('div', { class: 'note-list' }, made.map((card) => card.node))];
}

function draw() {
  cards.forEach((card) => card.end());
  cards = [];
  const shown = notes.filter(wanted);
  const known = Array.from(lessons.values()).map((lesson) => [`${lesson.title} · ${lesson.course}`, shown.filter((note) => note.lesson === lesson.id)]);
  const others = shown.filter((note) => !lessons.has(note.lesson));
  const groups = [...known, ['Of courses that are not here now', others]].filter(([, list]) => list.length);
  byId('notes').replaceChildren(...groups.flatMap(([title, list]) => group(title, list)),
    ...(shown.length ? [] : [el('p', { class: 'quiet' }, notes.length ? 'Nothing matches.' : 'Nothing is written yet. In a lesson, press J, or the pencil beside the papers.')]));
}

async function load() {
  [notes] = await Promise.all([fetchNotes(), get('api/state').then(readLessons)]);
  draw();
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  connectTimers();
  loadSettings().catch(() => undefined);
  byId('notes-find').addEventListener('input', draw);
  byId('notes-kind').addEventListener('change', draw);
  connectBooks(byId('books'), load, fail);
  connectStick(byId('stick'), async () => {
    await load();
    connectBooks(byId('books'), load, fail);
  }).catch(fail);
  load().catch(fail);
}

start();
