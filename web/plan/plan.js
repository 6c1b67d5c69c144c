// The plan of a class: which lessons, in which order, how long, with or without sums, in which units. It becomes the
// address that opens the show, and a page to print. What was chosen is kept on this device.

const plan = document.getElementById('plan');
const table = plan.querySelector('table');
const body = table.querySelector('tbody');
const caption = table.querySelector('caption');
const KEY = 'clampwright-plan';
const [LEAST, MOST] = [1, 240];

const made = (name, properties = {}, ...inside) => {
  const element = Object.assign(document.createElement(name), properties);
  element.append(...inside);
  return element;
};
const fill = (text, value) => text.replace('{0}', value);
const rows = new Map([...body.rows].map((row) => [row.dataset.lesson, row]));
const ids = [...rows.keys()];
const usual = (id, sums) => Number(rows.get(id).dataset.minutes) - (sums ? 0 : Number(rows.get(id).dataset.sums));

/** What is chosen: all lessons in order, each on or off; minutes only where they were typed. */
let state = { order: ids, off: [], minutes: {}, sums: true, units: 'us', title: '' };

function read() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY));
    if (!kept) return;
    const known = (list) => (Array.isArray(list) ? list.filter((id) => rows.has(id)) : []);
    const order = [...new Set(known(kept.order))];
    state = {
      order: [...order, ...ids.filter((id) => !order.includes(id))],
      off: known(kept.off),
      minutes: Object.fromEntries(Object.entries(kept.minutes ?? {}).filter(([id, n]) => rows.has(id) && good(n))),
      sums: kept.sums !== false,
      units: kept.units === 'metric' ? 'metric' : 'us',
      title: typeof kept.title === 'string' ? kept.title.slice(0, 80) : '',
    };
  } catch {
    // Begins anew.
  }
}

function keep() {
  try {
    localStorage.setItem(KEY, JSON.stringify(state));
  } catch {
    // Then it holds for this page alone.
  }
}

const good = (n) => Number.isInteger(n) && n >= LEAST && n <= MOST;
const chosen = () => state.order.filter((id) => !state.off.includes(id));
const minutesOf = (id) => state.minutes[id] ?? usual(id, state.sums);

const list = made('ol', { className: 'plan-list' });
const link = made('a', { className: 'button main', textContent: WORDS.link });
const total = made('p', { className: 'total' });
total.setAttribute('role', 'status');
const told = made('span');
told.setAttribute('role', 'status');
const address = made('output', { className: 'address' });
const title = made('input', { type: 'text', maxLength: 80, autocomplete: 'off', id: 'plan-title' });

function line(id) {
  const name = rows.get(id).querySelector('th').textContent;
  const on = made('input', { type: 'checkbox', checked: !state.off.includes(id) });
  const field = made('input', { type: 'text', inputMode: 'numeric', value: String(minutesOf(id)), autocomplete: 'off' });
  field.setAttribute('aria-label', `${WORDS.minutes}: ${name}`);
  const fault = made('p', { className: 'error', hidden: true, id: `plan-${id}-fault` });
  fault.setAttribute('role', 'alert');
  const move = (words, way) => {
    const button = made('button', { type: 'button', textContent: words });
    button.dataset.way = String(way);
    button.setAttribute('aria-label', `${words}: ${name}`);
    button.disabled = !(state.order.indexOf(id) + way in state.order);
    button.addEventListener('click', () => {
      const order = state.order.filter((other) => other !== id);
      order.splice(state.order.indexOf(id) + way, 0, id);
      state.order = order;
      lines();
      const again = list.querySelector(`[data-lesson="${id}"] [data-way="${way}"]`);
      (again.disabled ? list.querySelector(`[data-lesson="${id}"] [data-way="${-way}"]`) : again).focus();
      render();
    });
    return button;
  };
  on.addEventListener('change', () => {
    state.off = on.checked ? state.off.filter((other) => other !== id) : [...state.off, id];
    render();
  });
  field.addEventListener('change', () => {
    const typed = field.value.trim() === '' ? undefined : Number(field.value);
    const fine = typed === undefined || good(typed);
    fault.hidden = fine;
    fault.textContent = fine ? '' : WORDS.range;
    field.setAttribute('aria-invalid', String(!fine));
    if (fine) field.removeAttribute('aria-describedby');
    else field.setAttribute('aria-describedby', fault.id);
    if (!fine) return;
    if (typed === undefined) {
      delete state.minutes[id];
      field.value = String(minutesOf(id));
    } else state.minutes[id] = typed;
    render();
  });
  const item = made('li', {}, made('label', {}, on, made('span', { textContent: name })), field, move(WORDS.up, -1), move(WORDS.down, 1), fault);
  item.dataset.lesson = id;
  return item;
}

function lines() {
  list.replaceChildren(...state.order.map(line));
}

/** The address, from this page's folder. */
function target() {
  const lessons = chosen();
  const parts = lessons.map((id) => `${id}.${minutesOf(id)}`).join(',');
  return `lessons/${lessons[0]}.html#present&plan=${parts}&units=${state.units}${state.sums ? '' : '&sums=no'}`;
}

/** The page to print, and the address. */
function render() {
  const lessons = chosen();
  keep();
  let minutes = 0;
  for (const id of [...lessons, ...ids.filter((other) => !lessons.includes(other))]) {
    const row = rows.get(id);
    row.hidden = !lessons.includes(id);
    row.cells[1].textContent = row.hidden ? '' : `${minutes}–${minutes + minutesOf(id)}`;
    if (!row.hidden) minutes += minutesOf(id);
    body.append(row);
  }
  caption.textContent = [state.title, fill(WORDS.total, minutes), state.units === 'us' ? WORDS.us : WORDS.metric, state.sums ? WORDS.sums : WORDS.without].filter(Boolean).join(' · ');
  total.textContent = lessons.length ? fill(WORDS.total, minutes) : WORDS.none;
  if (lessons.length) link.href = target();
  else link.removeAttribute('href');
  address.textContent = lessons.length ? new URL(target(), location.href).href : '';
}

const choice = (type, words, checked, then) => {
  const input = made('input', { type, checked, name: `plan-${type}` });
  input.addEventListener('change', () => {
    then(input.checked);
    lines();
    render();
  });
  return made('label', {}, input, words);
};

read();
title.value = state.title;
title.addEventListener('input', () => {
  state.title = title.value;
  render();
});
const copy = made('button', { type: 'button', textContent: WORDS.copy });
copy.addEventListener('click', async () => {
  try {
    await navigator.clipboard.writeText(address.textContent);
    told.textContent = WORDS.copied;
  } catch {
    // It stands there to be copied by hand.
    getSelection().selectAllChildren(address);
  }
});
const print = made('button', { type: 'button', textContent: WORDS.print });
print.addEventListener('click', () => {
  const root = document.documentElement;
  root.dataset.print = 'plan';
  addEventListener('afterprint', () => delete root.dataset.print, { once: true });
  globalThis.print();
});
const units = (id, words) => choice('radio', words, state.units === id, () => (state.units = id));
plan.querySelector('.live').append(
  made('fieldset', {}, made('legend', { textContent: WORDS.legend }), list, made('div', { className: 'kinds' }, units('us', WORDS.us), units('metric', WORDS.metric), choice('checkbox', WORDS.sums, state.sums, (on) => (state.sums = on)))),
  made('p', { className: 'field' }, made('label', { htmlFor: 'plan-title', textContent: WORDS.title }), title),
  total,
  made('p', { className: 'actions' }, link, copy, print, told),
  address,
);
lines();
render();
