/** Keeps the screen on while the film plays or the wet-hands view is open, where the browser can. */

let lock = null;
let wanted = false;

export const canStayAwake = () => Boolean(navigator.wakeLock);

async function follow() {
  if (wanted && !lock && document.visibilityState === 'visible') {
    lock = await navigator.wakeLock.request('screen').catch(() => null);
    lock?.addEventListener('release', () => { lock = null; });
  } else if (!wanted && lock) {
    const held = lock;
    lock = null;
    await held.release().catch(() => undefined);
  }
  document.documentElement.toggleAttribute('data-awake', Boolean(lock));
}

export function connectWake(store) {
  if (!canStayAwake()) {
    return;
  }
  store.watch((state) => state.wet || !state.paused, (now) => {
    wanted = now;
    follow();
  });
  document.addEventListener('visibilitychange', follow);
}
