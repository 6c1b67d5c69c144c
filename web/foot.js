// What stands in the foot of every page: light or dark, and whether these pages stay on this device.
(() => {
  const root = document.documentElement;

  // A lesson one step at a time; its script comes when it is asked for.
  const present = document.querySelector('[data-act="present"][data-script]');
  if (present) {
    const show = () => {
      if ('show' in root.dataset) return;
      root.dataset.show = '';
      document.head.append(Object.assign(document.createElement('script'), { src: present.dataset.script }));
    };
    const asked = () => /^#present(-|&|$)/.test(location.hash) && show();
    present.disabled = false;
    present.addEventListener('click', show);
    addEventListener('hashchange', asked);
    asked();
  }

  const device = document.getElementById('device');
  if (!device) return;
  const here = new URL(document.currentScript.dataset.root, document.baseURI);

  /** A browser that keeps nothing has no choice to remember. */
  function remembered(key) {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  }

  function remember(key, value) {
    try {
      if (value) localStorage.setItem(key, value);
      else localStorage.removeItem(key);
    } catch {
      // Then it holds for this page alone.
    }
  }

  // Light or dark; the page's program may change it too.
  const look = device.querySelector('#device-look');
  const showLook = () => {
    look.value = root.dataset.theme ?? '';
  };
  look.addEventListener('change', () => {
    remember('clampwright-theme', look.value);
    if (look.value) root.dataset.theme = look.value;
    else delete root.dataset.theme;
  });
  new MutationObserver(showLook).observe(root, { attributes: true, attributeFilter: ['data-theme'] });
  showLook();
  device.hidden = false;

  // On this device, without a signal.
  const worker = navigator.serviceWorker;
  if (!worker) return;
  const KEY = 'clampwright-offline';
  const keep = device.querySelector('#device-keep');
  const newer = document.getElementById('newer-build');
  let asked = false;

  function say(state) {
    for (const part of keep.querySelectorAll('[data-when]')) part.hidden = !part.dataset.when.split(' ').includes(state);
    keep.dataset.state = state;
    keep.hidden = false;
  }

  function tell(words, press, act) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = press;
    button.addEventListener('click', act);
    newer.replaceChildren(`${words} `, button);
  }

  function offer(waiting) {
    tell('A newer version of these pages is ready.', 'Use it now', () => {
      asked = true;
      waiting.postMessage('go');
    });
  }

  /** Follows a build on its way onto the device. */
  function follow(registration, coming) {
    const look = () => {
      if (coming.state === 'installed' && registration.active) offer(coming);
      if (coming.state === 'activated') say('on');
      if (coming.state === 'redundant' && !registration.active) say('off');
    };
    coming.addEventListener('statechange', look);
    look();
  }

  async function begin() {
    const registration = await worker.register(new URL('sw.js', here), { updateViaCache: 'none' }).catch(() => undefined);
    // Where the browser or the host refuses there is nothing to be switched.
    if (!registration) return;
    say('getting');
    registration.active?.postMessage('keep');
    if (registration.waiting && registration.active) offer(registration.waiting);
    if (registration.installing) follow(registration, registration.installing);
    registration.addEventListener('updatefound', () => follow(registration, registration.installing));
  }

  async function end() {
    const registration = await worker.getRegistration(here);
    await registration?.unregister();
    const ours = `clampwright ${here.href} `;
    for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
    newer.replaceChildren();
    say('off');
  }

  worker.addEventListener('message', ({ data }) => {
    if (data === 'kept') say('on');
    if (data === 'not kept') say('off');
  });

  // The build under this page was changed: by a press here, or on another page.
  let controlled = Boolean(worker.controller);
  worker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (controlled) tell('These pages were brought up to date on another tab.', 'Load this one again', () => location.reload());
    controlled = true;
  });

  keep.addEventListener('click', async ({ target }) => {
    if (target.localName !== 'button') return;
    const off = target.dataset.when === 'off';
    remember(KEY, off ? '' : 'off');
    await (off ? begin() : end());
    keep.querySelector('button:not([hidden])')?.focus();
  });

  /** Not before the page itself is there and its program runs. */
  function later() {
    if (document.querySelector('script[data-wasm]') && !('ready' in root.dataset) && !('dead' in root.dataset)) {
      setTimeout(later, 500);
    } else if (remembered(KEY) === 'off') {
      say('off');
    } else if (navigator.connection?.saveData && !worker.controller) {
      say('off');
    } else {
      (globalThis.requestIdleCallback ?? setTimeout)(begin);
    }
  }

  if (document.readyState === 'complete') later();
  else addEventListener('load', later);
})();
