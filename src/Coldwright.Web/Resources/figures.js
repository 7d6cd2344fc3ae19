// The row of figures that never leaves the screen, and the change of each since the last settled answer.
const row = document.getElementById('now-figures');
const source = document.getElementById('now-source');
let settled = new Map();
let shown = new Map();
let pendingSettled = null;
// One standard deviation beside each figure, where it is known.
const bands = new Map();

const read = html => {
  const box = document.createElement('div');
  box.innerHTML = html;
  return new Map([...box.querySelectorAll('.tile')].map(t => {
    const value = t.querySelector('.value'), band = value.querySelector('small');
    band?.remove();
    bands.set(t.querySelector('.name').textContent, band?.textContent ?? '');
    return [t.querySelector('.name').textContent, value.textContent.trim()];
  }));
};

export function showFigures(answer, isSettled, known = false) {
  // A forecast fills the places that there are; what it knows besides stands in the answer.
  const figures = new Map([...read(answer)].filter(([name]) => !known || !pendingSettled || pendingSettled.has(name)));
  row.replaceChildren(...[...figures].map(([name, value]) => {
    const cell = document.createElement('div');
    cell.className = 'now-figure';
    cell.dataset.name = name;
    const before = settled.get(name);
    cell.innerHTML = '<span><span class="value"></span> <span class="band"></span></span><span class="name"></span><span class="was"></span>';
    cell.querySelector('.band').textContent = bands.get(name);
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
