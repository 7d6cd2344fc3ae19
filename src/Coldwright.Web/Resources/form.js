// The values of one part, line or section, as they stand in the file. A slider tries a value out; letting it go writes it.

const panel = document.getElementById('form');
const choice = document.getElementById('part-choice');
let sections = [];
let open = null;
let act = null;

export function setUpForm(actions) { act = actions; }

export const findField = place => sections.flatMap(s => s.fields).find(f => f.place === place);

export function refreshForm(form) {
  sections = form.sections;
  const kept = choice.value;
  const option = s => new Option(s.kind && s.kind !== s.title ? `${s.title} (${s.kind})` : s.title, s.title);
  const group = (label, list) => {
    const g = document.createElement('optgroup');
    g.label = label;
    g.append(...list.map(option));
    return g;
  };
  const parts = sections.filter(s => s.place.startsWith('parts/')), lines = sections.filter(s => s.place.startsWith('lines/'));
  choice.replaceChildren(choice.options[0], group('the whole', sections.filter(s => !parts.includes(s) && !lines.includes(s))), group('parts', parts), group('lines', lines));
  choice.value = kept;
  if (open && !panel.contains(document.activeElement)) render();
  else if (open) update();
}

export function showForm(title, keepsFocus) {
  open = title;
  choice.value = title;
  render();
  if (!keepsFocus) panel.querySelector('h2')?.focus();
}

function close() {
  open = null;
  panel.hidden = true;
  document.body.classList.remove('with-form');
  choice.value = '';
  act.closed();
}

function render() {
  const section = sections.find(s => s.title === open);
  if (!section) return close();
  panel.hidden = false;
  document.body.classList.add('with-form');
  panel.replaceChildren();
  const head = document.createElement('div');
  head.className = 'form-head';
  const h = document.createElement('h2');
  h.tabIndex = -1;
  h.textContent = section.kind && section.kind !== section.title ? `${section.title}, a ${section.kind}` : section.title;
  const shut = document.createElement('button');
  shut.textContent = 'Close';
  shut.addEventListener('click', close);
  head.append(h, shut);
  panel.append(head);
  const there = section.fields.filter(f => f.value !== null && f.value !== undefined), absent = section.fields.filter(f => !there.includes(f) && f.editable);
  there.forEach(f => panel.append(row(f)));
  if (absent.length) {
    const more = document.createElement('details');
    more.innerHTML = '<summary></summary>';
    more.firstChild.textContent = `What the file does not say (${absent.length})`;
    absent.forEach(f => more.append(row(f)));
    panel.append(more);
  }
}

// Values that changed under the form, without taking away the field that is being typed in.
function update() {
  for (const input of panel.querySelectorAll('[data-place]')) {
    const field = findField(input.dataset.place);
    if (!field) return render();
    if (input !== document.activeElement) input.value = field.value ?? '';
    input.dataset.was = field.value ?? '';
  }
}

let ids = 0;
function row(field) {
  const box = document.createElement('div');
  box.className = 'field';
  const id = `field-${++ids}`;
  const label = document.createElement('label');
  label.htmlFor = id;
  label.textContent = field.label;
  const meaning = document.createElement('p');
  meaning.className = 'meaning';
  meaning.id = `${id}-meaning`;
  meaning.textContent = field.meaning + (field.example && !field.value ? ` For example: ${field.example}.` : '');
  const input = control(field, id);
  input.setAttribute('aria-describedby', meaning.id);
  box.append(label, input);
  if (field.quantity && field.value && movable(field.value)) box.append(slider(field, input));
  box.append(meaning);
  return box;
}

function control(field, id) {
  let input;
  if (field.choices.length) {
    input = document.createElement('select');
    if (!field.required) input.append(new Option('not given', ''));
    field.choices.forEach(c => input.append(new Option(c, c)));
  } else {
    input = document.createElement('input');
    input.autocomplete = 'off';
    input.spellcheck = false;
    input.placeholder = field.example;
  }
  input.id = id;
  input.dataset.place = field.place;
  input.dataset.was = field.value ?? '';
  input.value = field.value ?? '';
  if (!field.editable) {
    input.disabled = true;
    return input;
  }
  const commit = async () => {
    const value = input.value.trim();
    if (value === input.dataset.was) return;
    if (value === '' && field.required) { input.value = input.dataset.was; return; }
    const good = await act.write([{ place: field.place, was: input.dataset.was === '' ? null : input.dataset.was, value: value === '' ? null : value }]);
    // The form may have been made anew meanwhile; what was refused stays to be mended.
    const shown = panel.querySelector(`[data-place="${CSS.escape(field.place)}"]`) ?? input;
    shown.setAttribute('aria-invalid', String(!good));
    if (!good) shown.value = value;
  };
  input.addEventListener('change', commit);
  input.addEventListener('keydown', e => {
    if (e.key === 'Escape') { input.value = input.dataset.was; }
    if (e.key === 'Enter') { e.preventDefault(); commit(); }
  });
  return input;
}

// "16 m" is moved by factors, "-35 °C" by degrees; "3/8 in" stays as it is.
const movable = text => /^\s*([-+\u2212]?\d+(?:\.\d+)?)\s*([^\d\s/,-][^,]*)?$/.exec(text);

function slider(field, input) {
  const range = document.createElement('input');
  Object.assign(range, { type: 'range', min: -100, max: 100, step: 1, value: 0 });
  range.setAttribute('aria-label', `${field.label}: move`);
  let from = null;
  const moved = () => {
    const [, number, unit = ''] = movable(from);
    const n = Number(number.replace('\u2212', '-'));
    const degrees = /^(°|K$)/.test(unit.trim());
    const value = degrees ? n + range.value * 0.4 : n * 2 ** (range.value / 100);
    const digits = degrees ? 1 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value) || 1)));
    return `${Number(value.toFixed(digits))}${unit ? ` ${unit.trim()}` : ''}`;
  };
  range.addEventListener('input', () => {
    from ??= input.dataset.was;
    input.value = moved();
    act.tryOut([{ place: field.place, was: from, value: input.value }]);
  });
  range.addEventListener('change', () => {
    if (from === null) return;
    from = null;
    range.value = 0;
    input.dispatchEvent(new Event('change'));
  });
  return range;
}
