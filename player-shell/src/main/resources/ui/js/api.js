/** The bench's answers as objects. All addresses hang below the secret path this file came from. */

const ROOT = new URL('../../', import.meta.url);

/** Turns an address of the interface ("api/state", "media/…") into a full one. */
export function address(path, query) {
  const url = new URL(path, ROOT);
  Object.entries(query || {}).forEach(([name, value]) => url.searchParams.set(name, value));
  return url.href;
}

/** What went wrong, in the three parts every error of the bench has. */
export class ApiError extends Error {
  constructor(status, body) {
    super(body.happened);
    this.status = status;
    this.code = body.code || 'unknown';
    this.happened = body.happened;
    this.safe = body.safe || '';
    this.next = body.next || '';
  }
}

const GONE = {
  code: 'gone',
  happened: 'Lehrcase on this laptop does not answer.',
  safe: 'Your courses, your place in each lesson and your licenses are kept.',
  next: 'Start Lehrcase again from its icon; this page can then be closed.',
};

async function readError(response) {
  try {
    const body = await response.json();
    return new ApiError(response.status, body.error);
  } catch (notJson) {
    return new ApiError(response.status, {
      code: 'unreadable',
      happened: `The bench answered with number ${response.status} and no reason.`,
      safe: 'Nothing was changed.',
      next: 'Try once more; if it stays, quit and start Lehrcase again.',
    });
  }
}

async function ask(path, options, query) {
  let response;
  try {
    response = await fetch(address(path, query), { credentials: 'same-origin', ...options });
  } catch (offline) {
    throw new ApiError(0, GONE);
  }
  if (!response.ok) {
    throw await readError(response);
  }
  const text = await response.text();
  return text ? JSON.parse(text) : {};
}

export const get = (path, query) => ask(path, {}, query);

function write(method, path, body, keepalive) {
  return ask(path, {
    method,
    keepalive: Boolean(keepalive),
    headers: { 'Content-Type': 'application/json', 'X-Lehrcase': '1' },
    body: JSON.stringify(body || {}),
  });
}

export const post = (path, body) => write('POST', path, body);
export const put = (path, body, keepalive) => write('PUT', path, body, keepalive);

/** Hands a file (or pasted text as a Blob) to the one drop place. */
export function dropFile(blob, name, path) {
  return ask(path || 'api/drop', {
    method: 'POST',
    headers: {
      'Content-Type': 'application/octet-stream',
      'X-Lehrcase': '1',
      'X-File-Name': encodeURIComponent(name),
    },
    body: blob,
  });
}

/** Asks whether a media address can be read now: resolves to null, or to the ApiError. */
export async function probe(url) {
  try {
    const response = await fetch(url, { headers: { Range: 'bytes=0-0' }, credentials: 'same-origin' });
    return response.ok ? null : await readError(response);
  } catch (offline) {
    return new ApiError(0, GONE);
  }
}
