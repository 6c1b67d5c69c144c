// The bar at the foot of the screen, the list of keys, and what is shown in place of the page: a word that was asked for,
// and nothing at all.

const bar = document.createElement('div');
bar.className = 'present-bar';
const place = document.createElement('span');
place.className = 'place';
place.setAttribute('role', 'status');
bar.append(button(WORDS.back, 'back'), place, button(WORDS.next, 'next'), button(WORDS.keys, 'keys'));

/** Over the page, with the keys or with a word. */
const panel = document.createElement('div');
panel.className = 'present-panel';
panel.setAttribute('role', 'dialog');
panel.hidden = true;

const blank = document.createElement('div');
blank.className = 'present-blank';
blank.hidden = true;
blank.setAttribute('role', 'img');
blank.setAttribute('aria-label', WORDS.blanked);

/** On a screen that is higher than wide and small. */
const turn = document.createElement('div');
turn.className = 'present-turn';
turn.append(Object.assign(document.createElement('p'), { textContent: WORDS.turn }), button(WORDS.leave, 'leave'));

function closePanel() {
  if (panel.hidden) return false;
  panel.hidden = true;
  panel.replaceChildren();
  return true;
}

function openPanel(name, ...content) {
  panel.setAttribute('aria-label', name);
  panel.replaceChildren(...content, button(WORDS.close, 'close'));
  panel.hidden = false;
  panel.querySelector('button').focus();
}

/** All keys, each a button for who has none. */
function showKeys() {
  const list = document.createElement('ul');
  for (const [act, key, words] of [
    ['next', 'Page Down', WORDS.next],
    ['back', 'Page Up', WORDS.back],
    ['first', 'Home', WORDS.first],
    ['', '5 Enter', WORDS.jump],
    ['blank', 'B .', WORDS.blank],
    ['units', 'U', WORDS.units],
    ['hands', 'H', WORDS.hands],
    ['clear', 'C', WORDS.clear],
    ['again', 'G', WORDS.again],
    ['reset', 'R', WORDS.reset],
    ['speaker', 'S', WORDS.speaker],
    ['full', 'F', WORDS.full],
    ['leave', 'Esc', WORDS.leave],
  ]) {
    const line = document.createElement('li');
    const shown = document.createElement('kbd');
    shown.textContent = key;
    line.append(shown, act ? button(words, act) : words);
    list.append(line);
  }
  openPanel(WORDS.keys, list);
}

/** What a word means, or what a source is, without leaving the slide; where it cannot be had the link is followed. */
async function explain(link) {
  try {
    const address = new URL(link.href);
    const answer = await fetch(address);
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const found = page.getElementById(decodeURIComponent(address.hash.slice(1)));
    const meaning = found.localName === 'dt' ? found.nextElementSibling : found;
    const text = (content) => Object.assign(document.createElement('p'), { textContent: content.trim().replace(/\s+/g, ' ') });
    const name = link.title || link.textContent;
    openPanel(name, Object.assign(document.createElement('h2'), { textContent: name }), text(meaning.textContent));
  } catch {
    location.href = link.href;
  }
}
