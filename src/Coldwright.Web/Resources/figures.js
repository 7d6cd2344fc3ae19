// The row of figures that never leaves the screen, and the change of each since the last settled answer.
const row = document.getElementById('now-figures');
const source = document.getElementById('now-source');
let settled = new Map();
let shown = new Map();
let pendingSettled = null;

const read = html => {
  const box = document.createElement('div');
  box.innerHTML = html;
  return new Map([...box.querySelectorAll('.tile')].map(t => [t.querySelector('.name').textContent, t.querySelector('.value').textContent]));
};

export function showFigures(answer, isSettled) {
  const figures = read(answer);
  row.replaceChildren(...[...figures].map(([name, value]) => {
    const cell = document.createElement('div');
    cell.className = 'now-figure';
    cell.dataset.name = name;
    const before = settled.get(name);
    cell.innerHTML = '<span class="value"></span><span class="name"></span><span class="was"></span>';
    cell.querySelector('.value').textContent = value;
    cell.querySelector('.name').textContent = name;
    if (before !== undefined && before !== value) cell.querySelector('.was').textContent = `was ${before}`;
    if (shown.has(name) && shown.get(name) !== value) cell.classList.add('changed');
    return cell;
  }));
  shown = figures;
  // The next change is compared with what was settled before it, by the same models.
  if (isSettled) pendingSettled = figures;
}

// Called when a value begins to move or the file changes: from here on figures are compared with what was settled.
export function rememberSettled() {
  if (pendingSettled) settled = pendingSettled;
}

// True when nothing that is shown differs from what was settled before the last change.
export const nothingMoved = () => settled.size > 0 && [...settled].every(([name, value]) => shown.get(name) === value);

export function sayWhere(text, state) {
  source.textContent = text;
  source.dataset.state = state;
}

export function forgetFigures() {
  settled = new Map();
  shown = new Map();
  pendingSettled = null;
}
