// Loads the page's program, or a part's when it is asked for, and, when that fails, says why in one sentence.
//
// The text and the still drawings are already on the page and stay there whatever happens here.
// Like the two files that it loads it carries a hash in its name and may be cached for good.

const WAIT_MS = 8000;

const own = document.querySelector('script[data-wasm]');
/** A part of the page with a program of its own, loaded when the reader asks for it. */
const later = document.querySelector('[data-later]');
const root = document.documentElement;

const STAYS = 'The text and the still drawings remain.';
const SENTENCES = {
  offline: `The calculator could not be loaded: this device is offline. ${STAYS}`,
  import: `The calculator could not be loaded: one of its files did not arrive. ${STAYS}`,
  missing: `The calculator could not be loaded: one of its files is not on the server. ${STAYS}`,
  fetch: `The calculator could not be loaded: the connection broke off. ${STAYS}`,
  compile: `The calculator could not be started: this browser does not accept it. Browsers from 2022 on do. ${STAYS}`,
  start: `The calculator could not be started because of a fault in this page. ${STAYS}`,
  slow: `The calculator is taking long to load. It will start by itself if it arrives. ${STAYS}`,
};

/** An error that knows at which step it happened. */
class Failure extends Error {
  constructor(step, cause) {
    super(`${step}: ${cause}`);
    this.step = step;
  }
}

function say(step) {
  const notice = document.getElementById('trouble');
  if (!notice) return;
  const again = document.createElement('button');
  again.type = 'button';
  again.textContent = 'Try again';
  again.addEventListener('click', () => location.reload());
  notice.replaceChildren(`${SENTENCES[step]} `, again);
  notice.dataset.step = step;
  notice.hidden = false;
}

/** Fetches and compiles at once where the server names the type, else one after the other. */
async function compile(address) {
  let response;
  try {
    response = await fetch(address);
  } catch (cause) {
    throw new Failure(navigator.onLine === false ? 'offline' : 'fetch', cause);
  }
  if (!response.ok) throw new Failure('missing', `${response.status} for ${address}`);
  const typed = response.headers.get('content-type')?.startsWith('application/wasm');
  try {
    return typed
      ? await WebAssembly.compileStreaming(response)
      : await WebAssembly.compile(await response.arrayBuffer());
  } catch (cause) {
    throw new Failure(cause instanceof WebAssembly.CompileError ? 'compile' : 'fetch', cause);
  }
}

async function load({ js, wasm }) {
  const script = new URL(js, document.baseURI);
  const program = compile(new URL(wasm, document.baseURI));
  // Awaited below; without this a failure during the import would count as unhandled.
  program.catch(() => {});
  let loader;
  try {
    loader = await import(script.href);
  } catch (cause) {
    throw new Failure(navigator.onLine === false ? 'offline' : 'import', cause);
  }
  const module = await program;
  // The program starts slice by slice and says when all of it is live.
  const live = new Promise((then) => document.addEventListener('clampwright-live', then, { once: true }));
  try {
    await loader.default({ module_or_path: module });
    await live;
  } catch (cause) {
    throw new Failure('start', cause);
  }
}

/** Loads a program and says what keeps it from starting. */
async function start(files) {
  // Who has stopped has said so.
  const timer = setTimeout(() => 'dead' in root.dataset || say('slow'), WAIT_MS);
  try {
    await load(files);
    root.dataset.ready = '';
    const notice = document.getElementById('trouble');
    if (notice?.dataset.step === 'slow') {
      notice.hidden = true;
      notice.replaceChildren();
    }
  } catch (failure) {
    const step = failure.step ?? 'start';
    root.dataset.dead = step;
    say(step);
    console.error(failure.message);
  } finally {
    clearTimeout(timer);
  }
}

later?.querySelector('button').addEventListener('click', async ({ currentTarget: button }) => {
  button.disabled = true;
  button.textContent = 'Loading …';
  await start(later.dataset);
  if (root.dataset.dead) return;
  later.querySelector('input')?.focus();
});
if (later) later.querySelector('button').disabled = false;
await start(own.dataset);
