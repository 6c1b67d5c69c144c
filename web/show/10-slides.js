// What is shown one after the other. A lesson's page marks its steps with `data-step`; a step that one screen cannot hold
// becomes several slides, and a problem is shown again with its hints and once more with its answer.

const root = document.documentElement;
const main = document.getElementById('main');
const lesson = main.querySelector('section[data-lesson]');
const steps = [...lesson.querySelectorAll('[data-step]')];

/** Steps that a class without sums leaves out. */
const SUMS = ['worked', 'faded', 'solo'];

/** As large as a slide's lettering may become where there is room; at 1 it is a twenty-sixth of the screen's height. */
const LARGEST = 1.7;

/** The lettering of a drawing, which has to find room, as a part of the screen's smaller side. */
const SMALLEST = 26.9;

/** What has to be seen for a step to be seen. */
const around = (step) => [step, ...['.pair', '.live-figure', 'section'].map((outer) => step.closest(outer))].filter(Boolean);

/** The parts of a step that stay in one piece: paragraphs, lines of a list. */
const parts = (step) =>
  [...step.children].flatMap((part) => (/^[OU]L$/.test(part.tagName) ? [...part.children] : [part])).filter((part) => !part.matches('h2, details, .nears, .actions'));

const overflows = () => main.scrollHeight > main.clientHeight + 1;

/** Takes every mark of a slide off the page. */
function clear() {
  for (const attribute of ['data-now', 'data-off', 'data-told', 'data-reveal', 'data-tight']) {
    for (const marked of main.querySelectorAll(`[${attribute}]`)) marked.removeAttribute(attribute);
  }
  for (const fold of main.querySelectorAll('details[data-opened]')) {
    fold.open = false;
    fold.removeAttribute('data-opened');
  }
  main.style.removeProperty('--fit');
}

/** Opens folds for as long as their slide is shown. */
function open(folds) {
  for (const fold of folds) {
    if (fold.open) continue;
    fold.open = true;
    fold.dataset.opened = '';
  }
}

/** Marks what a slide shows. */
function mark(slide) {
  clear();
  for (const shown of around(slide.step)) shown.dataset.now = '';
  root.dataset.present = slide.figure ? 'figure' : 'text';
  if (slide.told) slide.step.dataset.told = '';
  if (slide.reveal) {
    slide.step.dataset.reveal = slide.reveal;
    open(slide.step.querySelectorAll(slide.reveal === 'answer' ? '.solution' : '.hint'));
  }
  for (const part of slide.without ?? []) part.dataset.off = '';
  if (slide.figure) {
    letter(slide.step);
    // A class guesses aloud: whoever shows the figure has heard it.
    slide.step.closest('.live-figure').querySelector('.controls').disabled = false;
    tighten(slide);
  } else {
    enlarge();
  }
}

/** A drawing's lettering as large as the rest of the screen's; how much that is in its own units depends on its size. */
function letter(step) {
  const drawing = step.querySelector('svg');
  const { width, height } = drawing.viewBox.baseVal;
  const box = drawing.getBoundingClientRect();
  const scale = Math.min(box.width / width, box.height / height);
  step.style.setProperty('--letter', `${(Math.min(innerWidth, innerHeight) / SMALLEST / scale).toFixed(2)}px`);
}

/** Of the choices beside a figure only the chosen ones, where there is no room for all. */
function tighten({ step }) {
  if (overflows()) step.closest('.live-figure').dataset.tight = '';
}

/** The choice after the one that is shown alone. */
function nextChoice(label) {
  const all = [...label.parentElement.querySelectorAll('input')];
  const next = all[(all.findIndex(({ checked }) => checked) + 1) % all.length];
  next.click();
  next.focus();
}

/** As large as it finds room. */
function enlarge() {
  for (let fit = LARGEST; fit > 1; fit -= 0.1) {
    main.style.setProperty('--fit', fit.toFixed(1));
    if (!overflows()) return;
  }
  main.style.removeProperty('--fit');
}

/** The slides of a step of text: as many as its parts need. */
function split(id, step) {
  for (const [index, line] of [...step.querySelectorAll('ol > li')].entries()) {
    // A line that is not shown is not counted; it keeps its number.
    line.value = [...line.parentElement.children].indexOf(line) + 1 || index + 1;
  }
  const all = parts(step);
  const slides = [];
  for (let from = 0; from < all.length; ) {
    let to = all.length;
    const slide = () => ({ id: slides.length ? `${id}.${slides.length + 1}` : id, step, without: all.filter((_, i) => i < from || i >= to) });
    for (mark(slide()); overflows() && to > from + 1; mark(slide())) to -= 1;
    slides.push(slide());
    from = to;
  }
  return slides;
}

/** All slides of the lesson for the screen as it is. */
function slidesOf({ sums }) {
  const slides = [];
  const seen = new Set();
  for (const step of steps) {
    const kind = step.dataset.step;
    if (!sums && SUMS.includes(kind)) continue;
    let id = kind;
    for (let again = 2; seen.has(id); again += 1) id = `${kind}-${again}`;
    seen.add(id);
    if (kind === 'drawing' || kind === 'plot') {
      slides.push({ id, step, figure: true });
      continue;
    }
    slides.push(...split(id, step));
    if (kind === 'faded' || kind === 'solo') {
      slides.push(...['hint', 'answer'].map((reveal) => told({ id: `${id}-${reveal}`, step, reveal })));
    }
  }
  // What comes of each guess, once the class has seen it.
  const guess = lesson.querySelector('[data-step="guess"]');
  const after = slides.findLastIndex(({ figure }) => figure);
  if (guess && after >= 0) slides.splice(after + 1, 0, told({ id: 'told', step: guess, told: true }));
  clear();
  return slides;
}

/** A slide that leaves the question out where there is no room for it. */
function told(slide) {
  mark(slide);
  if (!overflows()) return slide;
  const question = slide.told ? [slide.step.querySelector('legend')] : parts(slide.step).filter((part) => !part.querySelector('input') && !part.matches('.reply'));
  return { ...slide, without: question };
}
