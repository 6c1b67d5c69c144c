// One figure alone in the frame of another page. The address says which and how:
// embed.html?figure=hollow&turn=180&wall=3&units=metric&look=dark. The frame decides how wide the figure is; how high it
// then gets, the page around it is told.
(() => {
  const root = document.documentElement;
  const settings = new URLSearchParams(location.search);

  const look = settings.get('look');
  if (look === 'light' || look === 'dark') root.dataset.theme = look;

  /** embed.html itself only leads on. */
  function lead() {
    const figure = settings.get('figure');
    if (figure === null) return;
    const link = [...document.querySelectorAll('a[data-figure]')].find((a) => a.dataset.figure === figure);
    if (link) location.replace(link.href + location.search);
    else document.getElementById('no-figure').hidden = false;
  }

  /** Sets a control as a reader would. */
  function set(name, value) {
    const controls = [...document.querySelectorAll('[data-control]')].filter((c) => c.dataset.control === name);
    const kind = controls[0]?.type;
    if (kind === 'radio') {
      const wanted = controls.find((c) => c.value === value);
      if (wanted) wanted.click();
    } else if (kind === 'range' && value.trim() !== '') {
      // A number alone is metric, whatever the units of the page; the program turns it into the reader's.
      controls[0].dataset.given = value;
      controls[0].dispatchEvent(new Event('input', { bubbles: true }));
    }
  }

  async function begin() {
    const units = settings.get('units');
    if (units === 'us' || units === 'metric') document.querySelector(`[data-act="units-${units}"]`)?.click();
    for (const [name, value] of settings) {
      set(name, value);
      // The figure follows one control with each picture.
      await new Promise(requestAnimationFrame);
    }
  }

  addEventListener('DOMContentLoaded', () => {
    if (!document.querySelector('[data-lesson]')) {
      lead();
      return;
    }
    if (parent !== window) {
      const tell = () => {
        const height = Math.ceil(document.body.getBoundingClientRect().height);
        parent.postMessage({ clampwright: 'height', height }, '*');
      };
      new ResizeObserver(tell).observe(document.body);
    }
    // The program says on the root that it runs.
    new MutationObserver((_, watch) => {
      if (!('ready' in root.dataset)) return;
      watch.disconnect();
      begin();
    }).observe(root, { attributes: true, attributeFilter: ['data-ready'] });
  });
})();
