import { address, ApiError } from '../js/api.js';

/** Sends bytes: a file, a mail's text, or something that must not become a log line. */
export async function sendBytes(path, bytes, name) {
  let response;
  try {
    response = await fetch(address(path), {
      method: 'POST',
      credentials: 'same-origin',
      headers: {
        'Content-Type': 'application/octet-stream',
        'X-Lehrcase': '1',
        'X-File-Name': encodeURIComponent(name || 'text'),
      },
      body: bytes,
    });
  } catch (offline) {
    throw new ApiError(0, {
      happened: 'The desk does not answer.', safe: 'What is in the sales book is kept.',
      next: 'Start the desk again; this page can then be closed.',
    });
  }
  const body = await response.json().catch(() => ({}));
  if (!response.ok) {
    throw new ApiError(response.status, body.error || { happened: `The desk answered with ${response.status}.` });
  }
  return body;
}
