/** The PDF reader (pdf.js, served by the bench): loaded only when a PDF is opened. */

const HOME = new URL('../../pdfjs/', import.meta.url).href;
const WORKER = `${HOME}pdf.worker.min.mjs`;

let reader = null;

/** Under trusted types only this one worker address may be made into a script address. */
function workerAddress() {
  if (!window.trustedTypes) {
    return WORKER;
  }
  const policy = window.trustedTypes.createPolicy('pdf-worker', {
    createScriptURL: (url) => {
      if (url !== WORKER) {
        throw new TypeError('not the PDF worker');
      }
      return url;
    },
  });
  return policy.createScriptURL(WORKER);
}

async function start() {
  const pdfjs = await import(`${HOME}pdf.min.mjs`);
  pdfjs.GlobalWorkerOptions.workerPort = new Worker(workerAddress(), { type: 'module' });
  return pdfjs;
}

/** Opens a PDF by its address; pages are read from the bench as they are needed. */
export async function openPdf(url) {
  reader = reader || start();
  const pdfjs = await reader;
  return pdfjs.getDocument({
    url,
    isEvalSupported: false,
    standardFontDataUrl: `${HOME}standard_fonts/`,
    cMapUrl: `${HOME}cmaps/`,
    cMapPacked: true,
    wasmUrl: `${HOME}wasm/`,
  }).promise;
}
