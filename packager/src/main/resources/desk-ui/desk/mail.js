import { button, el } from '../js/dom.js';
import { saveText } from '../js/save-text.js';

/** Copies a text; an old browser, or one that is asked from elsewhere, gets a selected field. */
export async function copyText(text, pressed) {
  try {
    await navigator.clipboard.writeText(text);
  } catch (refused) {
    const field = el('textarea', { class: 'heard', 'aria-hidden': 'true' });
    field.value = text;
    document.body.append(field);
    field.select();
    document.execCommand('copy');
    field.remove();
  }
  pressed.classList.add('copied');
  pressed.setAttribute('aria-label', `${pressed.textContent.trim()}, copied`);
}

const encoded = (text) => btoa(unescape(encodeURIComponent(text))).replace(/.{76}/g, '$&\r\n');
const header = (text) => (/^[\x20-\x7e]*$/.test(text) ? text : `=?UTF-8?B?${btoa(unescape(encodeURIComponent(text)))}?=`);

/** The whole mail as a file that mail programs open as a draft. */
export function eml(mail) {
  const border = `lehrcase-${Math.random().toString(36).slice(2)}`;
  return [
    'X-Unsent: 1', `To: ${mail.to}`, `Subject: ${header(mail.subject)}`, 'MIME-Version: 1.0',
    `Content-Type: multipart/mixed; boundary="${border}"`, '', `--${border}`,
    'Content-Type: text/plain; charset=utf-8', 'Content-Transfer-Encoding: base64', '', encoded(mail.text),
    `--${border}`, `Content-Type: text/plain; charset=utf-8; name="${mail.fileName}"`,
    `Content-Disposition: attachment; filename="${mail.fileName}"`, 'Content-Transfer-Encoding: base64', '',
    encoded(mail.file), `--${border}--`, ''].join('\r\n');
}

/** Four copy buttons, the file, and a draft; `onSent` is told once when anything of it leaves the page. */
export function mailButtons(mail, onSent) {
  let told = false;
  const tell = () => {
    if (!told && onSent) {
      told = true;
      onSent();
    }
  };
  const copying = (words, text, leaves) => button({
    text: words,
    onClick: (event) => {
      copyText(text, event.currentTarget);
      if (leaves) {
        tell();
      }
    },
  });
  return el('div', { class: 'row copies', role: 'group', 'aria-label': `Mail to ${mail.to}` },
    copying('Copy to', mail.to, false),
    copying('Copy subject', mail.subject, false),
    copying('Copy text', mail.text, false),
    copying('Copy file as text', mail.file, true),
    button({ text: 'Save file', sign: 'save', onClick: () => { saveText(mail.file, mail.fileName); tell(); } }),
    button({
      text: 'Draft (.eml)',
      kind: 'bare',
      onClick: () => { saveText(eml(mail), mail.fileName.replace(/\.txt$/, '.eml')); tell(); },
    }));
}
