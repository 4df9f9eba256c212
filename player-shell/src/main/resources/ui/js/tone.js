/** Tones made by the browser itself; no file is needed. */

let context = null;

function sound() {
  const Context = window.AudioContext || window.webkitAudioContext;
  if (!context && Context) {
    context = new Context();
  }
  return context;
}

/** Whether the browser lets this page be heard now; many wait for a first touch. */
export function mayBeHeard() {
  const here = sound();
  return Boolean(here) && here.state === 'running';
}

/** Asks the browser to let this page be heard; works inside a touch or a key press. */
export function wakeSound() {
  const here = sound();
  return here ? here.resume().catch(() => undefined) : Promise.resolve();
}

/** One tone: pitch in hertz, length and delay in seconds, loudness from 0 to 1. */
export function tone(hertz, seconds, after = 0, loudness = 0.25) {
  const here = sound();
  if (!here) {
    return;
  }
  const from = here.currentTime + after;
  const source = here.createOscillator();
  const level = here.createGain();
  source.frequency.value = hertz;
  level.gain.setValueAtTime(loudness, from);
  level.gain.exponentialRampToValueAtTime(0.001, from + seconds);
  source.connect(level).connect(here.destination);
  source.start(from);
  source.stop(from + seconds);
}

/** Four tones that carry through a studio. */
export function chime() {
  [0, 0.35, 1.2, 1.55].forEach((after, i) => tone(i % 2 ? 587 : 784, 0.6, after, 0.6));
}
