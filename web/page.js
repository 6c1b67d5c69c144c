// What every page does, before it is painted and without its program.
(() => {
  const root = document.documentElement;

  // Light or dark, as chosen on any page.
  try {
    const theme = localStorage.getItem('clampwright-theme');
    if (theme) root.dataset.theme = theme;
  } catch {
    // A browser that keeps nothing shows what the device prefers.
  }

  /** Opens the fold that holds the place of the address; not every browser does so by itself. */
  function unfold() {
    const place = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    const fold = place?.closest('details.fold');
    if (!fold) return;
    fold.open = true;
    place.scrollIntoView({ behavior: 'instant' });
  }

  addEventListener('hashchange', unfold);
  addEventListener('DOMContentLoaded', unfold);

  // Paper has everything.
  addEventListener('beforeprint', () => {
    for (const fold of document.querySelectorAll('details.fold:not([open])')) {
      fold.open = true;
      fold.dataset.printed = '';
    }
  });
  addEventListener('afterprint', () => {
    for (const fold of document.querySelectorAll('details.fold[data-printed]')) {
      fold.open = false;
      delete fold.dataset.printed;
    }
  });
})();
