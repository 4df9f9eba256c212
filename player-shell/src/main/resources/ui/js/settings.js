import { get, put } from './api.js';

/** What holds on every page; the bench keeps it, so that it survives another browser. */
export const DEFAULTS = Object.freeze({
  temperatureUnit: 'C', lengthUnit: 'mm', theme: 'system', speed: 1, captionSize: 'm', captionsOn: true,
});

/** Theme is an attribute on the root; "system" leaves the choice to the operating system. */
export function applyTheme(theme) {
  const root = document.documentElement;
  if (theme === 'light' || theme === 'dark') {
    root.dataset.theme = theme;
  } else {
    delete root.dataset.theme;
  }
}

export async function loadSettings() {
  const settings = { ...DEFAULTS, ...(await get('api/settings')) };
  applyTheme(settings.theme);
  return settings;
}

/** Keeps the settings; a failure is quiet, as the page goes on with what the person chose. */
export function saveSettings(settings) {
  applyTheme(settings.theme);
  return put('api/settings', settings).catch(() => undefined);
}
