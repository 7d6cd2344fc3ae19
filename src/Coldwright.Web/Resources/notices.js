// Notices above the answers: what went wrong, what was changed elsewhere, which of two values shall stand.
const place = document.getElementById('notices');

export function say(key, lines, { grave = false, actions = [] } = {}) {
  unsay(key);
  const box = document.createElement('div');
  box.className = grave ? 'notice grave' : 'notice';
  box.dataset.notice = key;
  if (grave) box.setAttribute('role', 'alert');
  for (const line of lines) {
    const p = document.createElement('p');
    p.textContent = line;
    box.append(p);
  }
  const row = document.createElement('p');
  for (const [text, act] of actions) {
    const button = document.createElement('button');
    button.textContent = text;
    button.addEventListener('click', () => { unsay(key); act(); });
    row.append(button, ' ');
  }
  const close = document.createElement('button');
  close.textContent = 'Close';
  close.className = 'plain';
  close.addEventListener('click', () => unsay(key));
  if (!actions.length) row.append(close);
  box.append(row);
  place.append(box);
}

export function unsay(key) {
  place.querySelector(`[data-notice="${CSS.escape(key)}"]`)?.remove();
}

// A change that met another one: nothing was written, both are shown, the person decides.
export function clash(clashes, keepMine) {
  say('clash', [
    'machine.yaml has been changed by somebody else in the same place. Nothing was written; both values are here:',
    ...clashes.map(c => `${c.place.replaceAll('/', ' ')}: the file says ${c.theirs ?? 'nothing'}, you want ${c.mine ?? 'nothing'}.`),
  ], { grave: true, actions: [['Keep what the file says', () => {}], ['Write mine', () => keepMine(clashes)]] });
}
