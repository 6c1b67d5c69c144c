// The address says which slide is shown and what was planned for the class:
//
//   lessons/spring.html#present-worked.2&plan=spring.20,hollow.25&units=us&sums=no
//
// `#present` begins, `#present-last` begins at the end. The rest is handed on from lesson to lesson.

/** What the address asks for; nothing where it is not about showing. */
function asked() {
  const [at, ...rest] = location.hash.slice(1).split('&');
  if (!/^present(-|$)/.test(at)) return undefined;
  const options = new URLSearchParams(rest.join('&'));
  const plan = (options.get('plan') ?? '')
    .split(',')
    .map((entry) => entry.match(/^([a-z]+)(?:\.(\d{1,3}))?$/))
    // What is no lesson is left out: a link may have been damaged on its way.
    .filter((found) => found && LESSONS.includes(found[1]))
    .map(([, id, minutes]) => ({ id, minutes: minutes === undefined ? undefined : Number(minutes) }));
  const units = options.get('units');
  return {
    at: at.slice('present-'.length),
    plan,
    sums: options.get('sums') !== 'no',
    units: units === 'us' || units === 'metric' ? units : undefined,
    rest: rest.length ? `&${rest.join('&')}` : '',
  };
}

/** The page of the lesson that comes after this one, or before it: as planned, else as they are numbered. */
function neighbor(way, { plan, rest }) {
  const end = way < 0 ? '-last' : '';
  const here = plan.findIndex(({ id }) => id === lesson.dataset.lesson);
  if (here >= 0) {
    const next = plan[here + way];
    return next && `${next.id}.html#present${end}${rest}`;
  }
  const link = document.querySelector(`a[rel="${way < 0 ? 'prev' : 'next'}"]`);
  return link && `${link.getAttribute('href')}#present${end}${rest}`;
}

/** Kept for as long as this tab is open; a browser that keeps nothing forgets it with the page. */
function remembered(key) {
  try {
    return JSON.parse(sessionStorage.getItem(`clampwright-${key}`)) ?? undefined;
  } catch {
    return undefined;
  }
}

function remember(key, value) {
  try {
    sessionStorage.setItem(`clampwright-${key}`, JSON.stringify(value));
  } catch {
    // Then it holds until the next page.
  }
}
