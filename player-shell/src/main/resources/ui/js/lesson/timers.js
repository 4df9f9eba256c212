import { button, byId, el } from '../dom.js';
import { clock, spoken } from '../units.js';

/** A soft double tone; a browser that forbids it stays silent and the timer still shows. */
function chime() {
  try {
    const sound = new (window.AudioContext || window.webkitAudioContext)();
    [0, 0.35, 1.2, 1.55].forEach((at, i) => {
      const tone = sound.createOscillator();
      const level = sound.createGain();
      tone.frequency.value = i % 2 ? 392 : 523;
      level.gain.setValueAtTime(0.25, sound.currentTime + at);
      level.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + at + 0.6);
      tone.connect(level).connect(sound.destination);
      tone.start(sound.currentTime + at);
      tone.stop(sound.currentTime + at + 0.6);
    });
  } catch (noSound) {
    byId('said').textContent = 'This browser allows no tone.';
  }
}

/** Starts a countdown that stays in sight; it counts by the clock, so a sleeping page is not late. */
export function startTimer(words, seconds) {
  const end = Date.now() + seconds * 1000;
  const left = el('span', { role: 'timer' });
  const box = el('div', { class: 'timer' }, el('span', {}, words), left);
  const tick = () => {
    const rest = (end - Date.now()) / 1000;
    left.textContent = rest > 0 ? clock(Math.ceil(rest)) : `over by ${clock(-rest)}`;
    if (rest <= 0 && !box.classList.contains('over')) {
      box.classList.add('over');
      byId('said').textContent = `${words}: time is up`;
      chime();
    }
  };
  const running = setInterval(tick, 500);
  const dismiss = () => {
    clearInterval(running);
    box.remove();
  };
  box.append(button({ label: `End the timer ${words}`, sign: 'close', kind: 'bare', onClick: dismiss }));
  byId('timers').append(box);
  byId('said').textContent = `Timer started: ${spoken(seconds)}`;
  tick();
}
