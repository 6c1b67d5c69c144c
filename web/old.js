// Addresses of the first versions, when everything stood on one page: whoever follows one goes on to the page that
// has it now. Runs before anything is painted.
(() => {
  const PAGES = {
    'your-trailer': 'joint.html',
    'own-joint': 'joint.html',
    lessons: 'lessons/index.html',
    spring: 'lessons/spring.html',
    torque: 'lessons/torque.html',
    grip: 'lessons/grip.html',
    slip: 'lessons/slip.html',
    share: 'lessons/share.html',
    hollow: 'lessons/hollow.html',
    stand: 'lessons/stand.html',
    road: 'lessons/road.html',
    leak: 'lessons/leak.html',
    look: 'lessons/look.html',
    method: 'method.html',
    'outside-checks': 'method.html',
    care: 'care.html',
    glossary: 'words.html',
    term: 'words.html',
    'source-list': 'sources.html',
    source: 'sources.html',
  };

  /** The page of an old address, with the rest of it; nothing where it belongs to this page. */
  function moved() {
    const { search, hash } = location;
    // A joint, or what is left of one: its settings are parted by slashes.
    if (hash.includes('/') || search.includes('/')) return `joint.html${search}${hash}`;
    const parts = hash.slice(1).replace(/^fig-/, '').split('-');
    for (let count = parts.length; count > 0; count -= 1) {
      const page = PAGES[parts.slice(0, count).join('-')];
      if (page) return page + hash;
    }
    return undefined;
  }

  function go() {
    const page = moved();
    if (page) location.replace(page);
  }

  addEventListener('hashchange', go);
  go();
})();
