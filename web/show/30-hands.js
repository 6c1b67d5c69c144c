// A show of hands: how many of the class vote for each answer, typed or tapped, with a bar beside the answer. It is kept
// for as long as the tab is open, or until it is cleared.

const options = [...lesson.querySelectorAll('.predict .option')];
const HANDS = 'hands';
const MOST = 999;
const me = lesson.dataset.lesson;

const allHands = () => remembered(HANDS) ?? {};
/** The votes for each answer; nothing where nobody counted. */
const handsNow = () => {
  const kept = allHands()[me];
  return Array.isArray(kept) && kept.length === options.length ? kept.map((n) => Math.min(Math.max(Math.round(Number(n)) || 0, 0), MOST)) : undefined;
};

let onHands = () => {};

function keepHands(hands) {
  const all = allHands();
  if (hands) all[me] = hands;
  else delete all[me];
  remember(HANDS, all);
  showHands();
  onHands();
}

const button = (words, act, label) => {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = words;
  made.dataset.do = act;
  if (label) made.setAttribute('aria-label', label);
  return made;
};

/** A line below each answer to count on. */
function buildHands() {
  for (const [index, option] of options.entries()) {
    const line = document.createElement('div');
    line.className = 'hands';
    line.hidden = true;
    const answer = option.querySelector('label').textContent.trim();
    const field = document.createElement('input');
    Object.assign(field, { type: 'number', min: '0', max: String(MOST), inputMode: 'numeric', autocomplete: 'off' });
    field.setAttribute('aria-label', `${WORDS.hands}: ${answer}`);
    const bar = document.createElement('span');
    bar.className = 'votes';
    const change = (by) => keepHands((handsNow() ?? options.map(() => 0)).map((n, i) => (i === index ? Math.min(Math.max(n + by, 0), MOST) : n)));
    const less = button('−', '', `${WORDS.less}: ${answer}`);
    const more = button('+', '', `${WORDS.more}: ${answer}`);
    less.addEventListener('click', () => change(-1));
    more.addEventListener('click', () => change(1));
    field.addEventListener('input', () => change((Math.round(Number(field.value)) || 0) - (handsNow()?.[index] ?? 0)));
    // Enter goes on to the next answer, after the last one it is done.
    field.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      event.stopPropagation();
      const next = options[index + 1]?.querySelector('.hands input');
      if (next) next.select();
      else field.blur();
    });
    line.append(less, field, more, bar);
    option.append(line);
  }
}

/** Brings lines and bars in step with what is kept; the lines are there while somebody counts. */
function showHands(counting = lesson.querySelector('.predict')?.hasAttribute('data-counting')) {
  const hands = handsNow();
  const most = Math.max(1, ...(hands ?? []));
  for (const [index, option] of options.entries()) {
    const line = option.querySelector('.hands');
    line.hidden = !hands && !counting;
    for (const part of line.querySelectorAll('input, button')) part.disabled = false;
    const field = line.querySelector('input');
    if (field.value !== String(hands?.[index] ?? 0)) field.value = hands?.[index] ?? 0;
    line.style.setProperty('--share', String((hands?.[index] ?? 0) / most));
  }
}

/** Begins to count, or ends it. */
function countHands() {
  const form = lesson.querySelector('.predict');
  const counting = form.toggleAttribute('data-counting');
  showHands(counting);
  if (counting) options[0].querySelector('.hands input').select();
  else document.activeElement?.blur();
}

/** Back to where nobody had guessed: the figure at its start, the answers open. */
function unguess() {
  const form = lesson.querySelector('.predict');
  if (!form) return;
  lesson.querySelector('[data-act="reset"]')?.click();
  form.removeAttribute('data-done');
  for (const option of form.querySelectorAll('[data-mine]')) option.removeAttribute('data-mine');
  for (const field of form.querySelectorAll('input, button')) field.disabled = false;
  form.reset();
  form.querySelector('.outcome').textContent = '';
  const guess = lesson.querySelector('[data-at="guess"]');
  if (guess) guess.hidden = true;
  showHands();
}
