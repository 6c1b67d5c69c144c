// One slide at a time: keys, taps, the address, and the speaker's window all lead here.

let wanted = asked() ?? { at: '', plan: [], sums: true, rest: '' };
let slides = [];
let now = -1;
/** The digits of a jump, until Enter. */
let digits = '';
/** On the way to another lesson: the address is not to be touched any more. */
let leaving = false;

const showing = () => now >= 0;

/** The other window on this computer. It says nothing where the browser keeps windows apart. */
const channel = typeof BroadcastChannel === 'function' ? new BroadcastChannel('clampwright-show') : undefined;

/** Longer than any class; what was kept before that is of another one. */
const OVER_MS = 8 * 3_600_000;

/** When this class and this lesson began; a plan begins anew with its first lesson. */
const began = () => {
  const kept = remembered('class');
  const anew = !(Date.now() - kept?.class < OVER_MS) || (wanted.at === '' && wanted.plan[0]?.id === me);
  const times = anew ? { class: Date.now() } : kept;
  times[me] ??= Date.now();
  remember('class', times);
  return times;
};
const started = began();

function report(at = now) {
  channel?.postMessage({
    from: 'show',
    lesson: me,
    at,
    ids: slides.map(({ id }) => id),
    blank: !blank.hidden,
    hands: handsNow(),
    plan: wanted.plan,
    sums: wanted.sums,
    began: { class: started.class, lesson: started[me] },
    further: [-1, 1].map((way) => neighbor(way, wanted)?.match(/([a-z]+)\.html/)?.[1]),
  });
}

function writePlace(text) {
  place.textContent = text ?? WORDS.place.replace('{0}', now + 1).replace('{1}', slides.length);
}

/**
 * Shows a slide; `how` it gets into the history: `push`, `replace`, or not at all. What is `only` laid out anew keeps what
 * lies over it and a jump that is being typed.
 */
function go(to, how = 'push', only = false) {
  const slide = slides[to];
  if (!slide) return;
  now = to;
  if (!only) {
    digits = '';
    closePanel();
  }
  mark(slide);
  main.scrollTop = 0;
  scrollTo(0, 0);
  if (!digits) writePlace();
  bar.querySelector('[data-do="next"]').disabled = to === slides.length - 1 && !neighbor(1, wanted);
  bar.querySelector('[data-do="back"]').disabled = to === 0 && !neighbor(-1, wanted);
  if (how && !leaving) history[`${how}State`](null, '', `#present-${slide.id}${wanted.rest}`);
  // What is hidden cannot have the focus; a figure's control keeps it from its drawing to its plot.
  const focused = document.activeElement;
  if (!focused || focused === document.body || !focused.checkVisibility()) main.focus({ preventScroll: true });
  report();
}

/** On or back; first over what a small screen has to scroll, at the ends on to the next lesson. */
function move(way) {
  const room = way > 0 ? main.scrollHeight - main.clientHeight - main.scrollTop : main.scrollTop;
  if (room > 2) {
    main.scrollBy(0, way * 0.85 * main.clientHeight);
    return;
  }
  const to = now + way;
  if (to in slides) {
    go(to);
    return;
  }
  const page = neighbor(way, wanted);
  if (!page) return;
  leaving = true;
  location.href = page;
}

/** Slides anew, for another size of the screen or other units, at the same step as before. */
function rebuild() {
  if (!showing()) return;
  const { id } = slides[now];
  slides = slidesOf(wanted);
  const same = slides.findIndex((slide) => slide.id === id);
  go(same >= 0 ? same : find(id), 'replace', true);
}

/** A slide by its name; where this screen has no such slide the one it belongs to. */
function find(id) {
  if (id === 'last') return slides.length - 1;
  for (let name = id; name; name = name.replace(/[.-]?[^.-]*$/, '')) {
    const found = slides.findIndex((slide) => slide.id === name);
    if (found >= 0) return found;
  }
  return 0;
}

function begin(at, how) {
  // Marks the page, so that what is measured has its size.
  root.dataset.present = 'text';
  bar.hidden = false;
  slides = slidesOf(wanted);
  go(find(at), how);
}

/** The whole page again, at the step that was shown. */
function leave() {
  const { step } = slides[now];
  now = -1;
  blank.hidden = true;
  closePanel();
  clear();
  delete root.dataset.present;
  lesson.querySelector('.predict')?.removeAttribute('data-counting');
  bar.hidden = true;
  history.replaceState(null, '', location.pathname + location.search);
  if (document.fullscreenElement) document.exitFullscreen();
  step.scrollIntoView({ behavior: 'instant', block: 'center' });
  if (!step.hasAttribute('tabindex')) step.tabIndex = -1;
  step.focus({ preventScroll: true });
  report();
}

async function setUnits(units) {
  const pressed = document.querySelector(`[data-act="units-${units}"]`);
  if (pressed.disabled || pressed.getAttribute('aria-pressed') === 'true') return;
  pressed.click();
  // The page's program writes the new numbers first.
  await new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(then)));
  rebuild();
}

const ACTS = {
  next: () => move(1),
  back: () => move(-1),
  first: () => go(0),
  end: () => go(slides.length - 1),
  leave,
  keys: showKeys,
  close: closePanel,
  blank: () => {
    blank.hidden = !blank.hidden;
    report();
  },
  units: () => setUnits(document.querySelector('[data-act="units-us"]').getAttribute('aria-pressed') === 'true' ? 'metric' : 'us'),
  hands: () => {
    if (!options.length) return;
    if (slides[now].id !== 'guess') go(find('guess'));
    countHands();
    mark(slides[now]);
    report();
  },
  clear: () => {
    keepHands(undefined);
    mark(slides[now]);
  },
  again: () => {
    unguess();
    go(find('guess'));
  },
  reset: () => lesson.querySelector('[data-act="reset"]').click(),
  speaker: () => window.open(new URL('../speaker.html', location.href), 'clampwright-speaker', 'popup,width=760,height=820'),
  full: () => (document.fullscreenElement ? document.exitFullscreen() : root.requestFullscreen?.())?.catch?.(() => {}),
};

const KEYS = {
  PageDown: 'next', ArrowRight: 'next', ArrowDown: 'next', ' ': 'next',
  PageUp: 'back', ArrowLeft: 'back', ArrowUp: 'back',
  Home: 'first', End: 'end', Escape: 'leave', '.': 'blank', '?': 'keys',
  b: 'blank', u: 'units', h: 'hands', c: 'clear', g: 'again', r: 'reset', s: 'speaker', f: 'full',
};

/** Whether what has the focus needs a key itself. Page keys and Esc are always the show's. */
function needed(target, key) {
  if (/^(Page(Up|Down)|Escape)$/.test(key)) return false;
  if (target.matches('input[type="range"]')) return /^(Arrow|Home|End)/.test(key);
  if (target.matches('input[type="radio"], input[type="checkbox"]')) return /^Arrow|^( |Enter)$/.test(key);
  if (target.matches('input, textarea, select')) return true;
  if (target.matches('button, a, summary')) return key === ' ' || key === 'Enter';
  return false;
}

function take(event) {
  event.preventDefault();
  event.stopPropagation();
}

function onKey(event) {
  if (!showing() || event.ctrlKey || event.metaKey || event.altKey) return;
  const { key, target } = event;
  if (!blank.hidden) {
    // Whatever is pressed first brings the picture back, where it was.
    if (/^(Shift|Tab|F\d+)$/.test(key)) return;
    take(event);
    ACTS.blank();
    return;
  }
  if (needed(target, key)) return;
  if (key === 'Escape' && (closePanel() || digits)) {
    take(event);
    digits = '';
    writePlace();
    return;
  }
  if (/^\d$/.test(key)) {
    take(event);
    digits = (digits + key).slice(-3);
    writePlace(WORDS.jumping.replace('{0}', digits));
    return;
  }
  if (key === 'Enter' && digits) {
    take(event);
    const to = Math.min(Math.max(Number(digits), 1), slides.length) - 1;
    go(to);
    return;
  }
  const act = key === ' ' && event.shiftKey ? 'back' : KEYS[key.length === 1 ? key.toLowerCase() : key];
  if (!act) return;
  take(event);
  ACTS[act]();
}

function onClick(event) {
  if (!showing()) return;
  const { target } = event;
  const link = target.closest('a[href*="#term-"], a[href*="#source-"]');
  if (link && main.contains(link) && !event.ctrlKey && !event.metaKey) {
    event.preventDefault();
    explain(link);
    return;
  }
  const alone = target.closest('[data-tight] .kinds label');
  if (alone && event.detail > 0) {
    event.preventDefault();
    nextChoice(alone);
    return;
  }
  const act = target.closest('[data-do]')?.dataset.do;
  if (!act) return;
  ACTS[act]?.();
  // Space then means the next slide again, and not this button; who came by Tab stays where they are.
  if (event.detail > 0) target.closest('button')?.blur();
}

function start() {
  main.append(bar, panel, blank, turn);
  buildHands();
  showHands();
  onHands = () => report();
  document.addEventListener('keydown', onKey, true);
  document.addEventListener('click', onClick);
  blank.addEventListener('click', ACTS.blank);
  // Once the page's program has drawn and said what came of it, that may need more room.
  main.addEventListener('input', () => {
    const slide = slides[now];
    if (slide?.figure) requestAnimationFrame(() => requestAnimationFrame(() => slide === slides[now] && tighten(slide)));
  });
  document.querySelector('[data-act="present"]').addEventListener('click', () => begin('', 'push'));
  addEventListener('popstate', () => {
    const there = asked();
    if (there) {
      wanted = there;
      begin(there.at, 'replace');
    } else if (showing()) leave();
  });
  addEventListener('pagehide', () => {
    if (!leaving) report(-1);
  });
  addEventListener('pageshow', ({ persisted }) => {
    leaving = false;
    if (persisted) report();
  });
  let [waiting, size] = [0, `${innerWidth} ${innerHeight}`];
  addEventListener('resize', () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      if (size === `${innerWidth} ${innerHeight}`) return;
      size = `${innerWidth} ${innerHeight}`;
      rebuild();
    }, 150);
  });
  channel?.addEventListener('message', ({ data }) => {
    if (data?.from !== 'speaker' || !showing()) return;
    if (data.do === 'hello') report();
    else if (data.do === 'go' && Number.isInteger(data.to)) go(Math.min(Math.max(data.to, 0), slides.length - 1));
    else if (['next', 'back', 'blank', 'units', 'hands', 'again', 'first'].includes(data.do)) ACTS[data.do]();
  });
  begin(wanted.at, asked() ? 'replace' : 'push');
  if (location.protocol === 'file:') openPanel(WORDS.keys, Object.assign(document.createElement('p'), { textContent: WORDS.still }));
  // Numbers and sentences as the page's program writes them; and the units that were planned.
  const ready = () => {
    if (!('ready' in root.dataset)) return false;
    if (wanted.units) setUnits(wanted.units);
    rebuild();
    return true;
  };
  if (ready()) return;
  const watch = new MutationObserver(() => ready() && watch.disconnect());
  watch.observe(root, { attributes: true, attributeFilter: ['data-ready'] });
}

// Nothing can be measured before the sheet is there.
const sheet = Object.assign(document.createElement('link'), { rel: 'stylesheet', href: new URL('{{style}}', document.currentScript.src) });
for (const event of ['load', 'error']) sheet.addEventListener(event, start, { once: true });
document.head.append(sheet);
