import { get, post } from '../js/api.js';
import { byId, el, icon, wakeIcons } from '../js/dom.js';
import { gate } from './gate.js';
import { errorNotice, guarded } from './notice.js';
import { waitingRoom } from './waiting.js';
import { laptopRoom } from './laptops.js';
import { peopleRoom } from './people.js';
import { courseRoom } from './courses.js';
import { bookRoom } from './book.js';
import { safeRoom } from './safe.js';

const ROOMS = [
  { id: 'waiting', words: 'Waiting', sign: 'clock', show: waitingRoom },
  { id: 'laptops', words: 'Laptops', sign: 'card', show: laptopRoom },
  { id: 'people', words: 'People', sign: 'license', show: peopleRoom },
  { id: 'courses', words: 'Courses', sign: 'go', show: courseRoom },
  { id: 'book', words: 'Sales book', sign: 'page', show: bookRoom },
  { id: 'safe', words: 'Keep safe', sign: 'shut', show: safeRoom },
];

let desk = null;

function chosen() {
  const id = window.location.hash.slice(1).split('/')[0];
  return ROOMS.find((room) => room.id === id) || ROOMS[0];
}

function drawNav(room) {
  const nav = byId('rooms');
  nav.hidden = false;
  nav.replaceChildren(...ROOMS.map((one) => el('a', {
    href: `#${one.id}`,
    'aria-current': one === room ? 'page' : null,
  }, icon(one.sign), one.words, one.id === 'waiting' ? el('span', { id: 'waiting-count', class: 'count', hidden: true }) : null)));
}

/** The number beside "Waiting", kept right by whoever settles something. */
export function tellCount(count) {
  const place = byId('waiting-count');
  if (place) {
    place.textContent = String(count);
    place.hidden = count === 0;
  }
}

async function show() {
  const room = chosen();
  drawNav(room);
  document.title = `${room.words} · ${desk.shop}`;
  const place = byId('room');
  place.replaceChildren(el('h1', {}, room.words));
  await guarded(byId('trouble'), () => room.show(place, { desk, tellCount }));
  if (desk.breaks.length) {
    byId('trouble').prepend(errorNotice({
      happened: `The sales book is not as this desk wrote it. ${desk.breaks[0]}`,
      safe: 'Courses open on laptops as before; keys are not touched.',
      next: 'Make no sale yet. Keep a copy of the folder of this desk and compare it with your last backup.',
    }));
  }
  if (room.id !== 'waiting') {
    get('api/waiting').then((all) => tellCount(all.items.length)).catch(() => undefined);
  }
}

function opened(answer) {
  desk = answer;
  show();
}

async function quit() {
  await post('api/quit').catch(() => undefined);
  document.body.replaceChildren(el('main', { class: 'farewell' }, el('h1', {}, 'The desk is closed'),
    el('p', {}, 'Everything is kept. To come back, start it again. You can close this page.')));
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  byId('quit-button').addEventListener('click', quit);
  const answer = await guarded(byId('trouble'), () => get('api/desk'));
  if (!answer) {
    return;
  }
  byId('shop').textContent = answer.shop;
  window.addEventListener('hashchange', () => desk && show());
  if (answer.unlocked) {
    opened(answer);
  } else {
    gate(byId('room'), answer, opened);
  }
}

start();
