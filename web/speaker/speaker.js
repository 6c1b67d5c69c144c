// The speaker's window: follows the show in another window of this browser, and leads it. The notes are in the page; this
// only picks those for the step that is shown.

const notes = document.getElementById('speaker-notes');
const sections = [...notes.querySelectorAll('section')];

const made = (name, properties, ...inside) => {
  const element = Object.assign(document.createElement(name), properties);
  element.append(...inside);
  return element;
};
const fill = (text, ...values) => values.reduce((filled, value, i) => filled.replace(`{${i}}`, value), text);

const channel = typeof BroadcastChannel === 'function' ? new BroadcastChannel('clampwright-show') : undefined;
/** What the show said last. */
let show;
/** What is picked by hand where no show is heard. */
let picked = { lesson: sections[0].dataset.lesson, at: 0 };

const status = made('p', { className: 'status' });
status.setAttribute('role', 'status');
const place = made('p', { className: 'lead' });
const clock = made('p', {});
const then = made('p', {});
const press = (words, act) => {
  const button = made('button', { type: 'button', textContent: words });
  button.addEventListener('click', act);
  return button;
};
const lead = (act, to) => () => {
  if (show) channel.postMessage({ from: 'speaker', do: act, to });
  else step(act === 'back' ? -1 : 1);
};
const back = press(WORDS.back, lead('back'));
const next = press(WORDS.next, lead('next'));
const blank = press(WORDS.blank, lead('blank'));
const shared = [blank, press(WORDS.units, lead('units')), press(WORDS.hands, lead('hands'))];
const pick = made('select', {});
for (const section of sections) pick.append(made('option', { value: section.dataset.lesson, textContent: section.querySelector('h2').textContent }));
pick.addEventListener('change', () => {
  picked = { lesson: pick.value, at: 0 };
  render();
});
const byHand = made('label', { className: 'by-hand' }, `${WORDS.pick} `, pick);
document.querySelector('h1').after(made('div', { className: 'lead-on' }, status, byHand, place, made('p', { className: 'actions' }, back, next, ...shared), then, clock));

const of = (lesson) => sections.find((section) => section.dataset.lesson === lesson);
/** The notes that a slide belongs to: its second page and its hints have those of their step. */
const kindOf = (id) => id.replace(/\.\d+$/, '').replace(/-\d+$/, '');
const called = (id) => WORDS[kindOf(id)] ?? WORDS[kindOf(id).split('-')[0]] ?? id;
const stepsOf = (section) => [...section.querySelectorAll('[data-for]')].map((part) => part.dataset.for);

/** Where the class is: as the show says, else as picked. */
function here() {
  if (show) return { ...show, ids: show.ids };
  return { ...picked, ids: stepsOf(of(picked.lesson)) };
}

/** By hand, from step to step and on to the next lesson. */
function step(way) {
  const { lesson, at, ids } = here();
  if (at + way in ids) picked.at = at + way;
  else {
    const other = sections[sections.indexOf(of(lesson)) + way];
    if (other) picked = { lesson: other.dataset.lesson, at: way < 0 ? stepsOf(other).length - 1 : 0 };
  }
  render();
}

/** Whether the notes of a step were found before: at the start the page stays where it is. */
let moving = false;

function render() {
  const { lesson, at, ids, hands, blank: dark, further = [] } = here();
  const section = of(lesson);
  const id = ids[at] ?? '';
  const shown = kindOf(id);
  for (const other of sections) other.hidden = other !== section;
  for (const part of section.querySelectorAll('[data-for]')) {
    const now = part.dataset.for === shown || part.dataset.for === shown.split('-')[0];
    if (moving && now && !part.hasAttribute('data-now')) part.scrollIntoView({ block: 'nearest' });
    part.toggleAttribute('data-now', now);
  }
  moving = true;
  pick.value = lesson;
  byHand.hidden = Boolean(show);
  for (const button of shared) button.hidden = !show;
  blank.textContent = dark ? WORDS.unblank : WORDS.blank;
  place.textContent = `${WORDS.now}: ${called(id)} (${fill(WORDS.place, at + 1, ids.length)})`;
  const after = ids[at + 1];
  const beyond = show ? further[1] : sections[sections.indexOf(section) + 1]?.dataset.lesson;
  then.textContent = `${WORDS.then}: ${after ? called(after) : beyond && of(beyond) ? of(beyond).querySelector('h2').textContent : WORDS.end}`;
  const total = hands?.reduce((sum, n) => sum + n, 0);
  for (const [index, answer] of [...section.querySelectorAll('.answers > li')].entries()) {
    let votes = answer.querySelector('.counted');
    if (!hands) votes?.remove();
    else {
      votes ??= answer.querySelector('b').appendChild(made('span', { className: 'counted' }));
      votes.textContent = ` (${fill(WORDS.votes, hands[index] ?? 0, total)})`;
    }
  }
  tick();
}

function tick() {
  clock.hidden = !show;
  if (!show) return;
  const minutes = (since) => Math.max(0, Math.floor((Date.now() - since) / 60_000));
  const { minutes: planned, sums } = of(show.lesson).dataset;
  const chosen = show.plan.find(({ id }) => id === show.lesson)?.minutes ?? (show.sums ? Number(planned) : planned - sums);
  clock.textContent = fill(WORDS.clock, minutes(show.began.lesson), chosen, minutes(show.began.class));
  clock.classList.toggle('late', minutes(show.began.lesson) >= chosen);
}

/** A message of the show, with all that is read of it. Another page of the same host may speak here, too. */
const understood = (data) =>
  data?.from === 'show' &&
  Boolean(of(data.lesson)) &&
  Array.isArray(data.ids) &&
  data.ids.every((id) => typeof id === 'string') &&
  Array.isArray(data.plan) &&
  Array.isArray(data.further) &&
  Number.isInteger(data.at) &&
  Number.isFinite(data.began?.class) &&
  Number.isFinite(data.began?.lesson);

function hear({ data }) {
  if (!understood(data)) return;
  // On its whole page it is not shown to anybody.
  show = data.at < 0 ? undefined : data;
  if (show) picked = { lesson: show.lesson, at: 0 };
  status.textContent = show ? WORDS.following : WORDS.waiting;
  document.documentElement.dataset.speaker = show ? 'following' : '';
  render();
}

function onKey(event) {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const page = /^Page(Up|Down)$/.test(event.key);
  if (!page && event.target.closest('input, select, textarea, button, a')) return;
  const act = { PageDown: 'next', ArrowRight: 'next', ' ': 'next', PageUp: 'back', ArrowLeft: 'back', b: 'blank', '.': 'blank' }[event.key];
  if (!act) return;
  event.preventDefault();
  if (act !== 'blank' || show) lead(act)();
}

document.documentElement.dataset.speaker = '';
// Said from the beginning, so that nothing moves when no show answers.
status.textContent = !channel ? WORDS.silent : location.protocol === 'file:' ? WORDS.apart : WORDS.waiting;
render();
document.addEventListener('keydown', onKey);
setInterval(tick, 5000);
if (channel) {
  channel.addEventListener('message', hear);
  channel.postMessage({ from: 'speaker', do: 'hello' });
}

