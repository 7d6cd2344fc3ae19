// What can be filled in beside the button of a piece of long work. Texts go to the program as they are typed; it knows units and limits.

const fields = {
  blend: [
    { name: 'goal', label: 'What for', broad: true, choices: [['cooling', 'most cooling at the load'], ['litres', 'most liquid collected'], ['lowest', 'lowest temperature without load'], ['endless', 'most, whatever the exchanger']] },
    { name: 'at', label: 'Load at', placeholder: 'the product\u2019s own', example: '105 K' },
    { name: 'gases', label: 'From these gases', wide: true, gases: true },
  ],
  size: [
    { name: 'part', label: 'Part', parts: true },
    { name: 'target', label: 'It shall do', placeholder: 'what the file describes', wide: true, targets: true },
  ],
  charge: [
    { name: 'mixture', label: 'Let in', placeholder: 'the file\u2019s mixture', example: 'nitrogen 0.3, methane 0.7', wide: true },
    { name: 'mass', label: 'So much of it', placeholder: 'as in the file', example: '320 g' },
    { name: 'scale', label: 'The scale may be off by', placeholder: '1 g' },
    { name: 'gauge', label: 'The gauge may be off by', placeholder: '0.05 bar' },
  ],
};
const more = {
  blend: ['Limits', [
    { name: 'burns', label: 'At most so much of it burns', placeholder: 'no limit', example: '60 %' },
    { name: 'price', label: 'A kilogram costs at most', placeholder: 'no limit', example: '12 per kg' },
    { name: 'discharge', label: 'Hottest discharge', placeholder: 'the compressor\u2019s own', example: '110 \u00b0C' },
    { name: 'margin', label: 'Margin to freezing (1 is the brink)', placeholder: '1.3' },
    { name: 'error', label: 'A share may be off after filling by', placeholder: '1 %' },
    { name: 'one-liquid', label: 'No second liquid before the throttle', tick: true },
  ]],
  charge: ['Pump and leak', [
    { name: 'vacuum', label: 'The pump leaves', placeholder: 'as in the file', example: '0.5 mbara' },
    { name: 'rinses', label: 'Rinses with dry gas', placeholder: 'as many as needed', example: '2' },
    { name: 'lost', label: 'Leaked out since', placeholder: 'nothing', example: '40 g' },
    { name: 'now', label: 'Gauge at rest now', placeholder: 'not read', example: '11 barg' },
    { name: 'warm-only', label: 'Leave out what circulates once it is cold (quicker)', tick: true },
  ]],
};

let ids = 0;

// The fields of a kind of work; null where there are none.
export function orderForm(kind) {
  if (!fields[kind]) return null;
  const box = document.createElement('div');
  box.className = 'order';
  box.append(...fields[kind].map(control));
  if (more[kind]) {
    const folded = document.createElement('details');
    const summary = document.createElement('summary');
    summary.textContent = more[kind][0];
    const inner = document.createElement('div');
    inner.className = 'order';
    inner.append(...more[kind][1].map(control));
    folded.append(summary, inner);
    box.append(folded);
  }
  return box;
}

function control(field) {
  const box = document.createElement('div');
  box.className = `order-field${field.wide ? ' wide' : field.broad ? ' broad' : ''}`;
  const id = `order-${++ids}`;
  const label = document.createElement('label');
  label.htmlFor = id;
  label.textContent = field.label;
  if (field.gases) {
    const group = document.createElement('fieldset');
    const legend = document.createElement('legend');
    legend.textContent = field.label;
    const list = document.createElement('div');
    list.className = 'order-gases';
    list.dataset.gases = field.name;
    group.append(legend, list);
    box.append(group);
    return box;
  }
  const input = document.createElement(field.choices || field.parts ? 'select' : 'input');
  input.id = id;
  input.dataset.order = field.name;
  if (field.tick) {
    input.type = 'checkbox';
    box.classList.add('tick');
    box.append(input, label);
    return box;
  }
  field.choices?.forEach(([value, text]) => input.append(new Option(text, value)));
  if (!field.choices && !field.parts) {
    input.autocomplete = 'off';
    input.spellcheck = false;
    input.placeholder = field.example ? `${field.placeholder}; or ${field.example}` : field.placeholder;
  }
  box.append(label, input);
  if (field.targets) {
    const hint = document.createElement('p');
    hint.className = 'meaning';
    hint.id = `${id}-meaning`;
    hint.dataset.targets = '';
    input.setAttribute('aria-describedby', hint.id);
    box.append(hint);
  }
  return box;
}

// What the files offer: gases of the shop, parts that can be sized. What was chosen stays chosen.
export function offerOrders(state) {
  for (const list of document.querySelectorAll('[data-gases]')) {
    const ticked = new Map([...list.querySelectorAll('input')].map(i => [i.value, i.checked]));
    const names = [...new Set([...(state.shop_gases ?? []), ...Object.keys(state.mixture ?? {})])];
    if (names.join() === [...ticked.keys()].join()) continue;
    list.replaceChildren(...names.map(name => {
      const label = document.createElement('label');
      const input = document.createElement('input');
      Object.assign(input, { type: 'checkbox', value: name, checked: ticked.get(name) ?? true });
      label.append(input, ` ${name}`);
      return label;
    }));
  }
  const parts = document.querySelector('[data-order=part]');
  const chosen = parts.value;
  parts.replaceChildren(...(state.sizeable ?? []).map(p => new Option(p.name, p.name)));
  if ([...parts.options].some(o => o.value === chosen)) parts.value = chosen;
  const targets = () => {
    const known = state.sizeable?.find(p => p.name === parts.value)?.targets ?? [];
    const input = document.querySelector('[data-order=target]');
    input.disabled = !known.length;
    input.placeholder = known.length ? `what the file describes; or ${known[0].example}` : 'follows from the machine';
    document.querySelector('[data-targets]').textContent = known.length ? `${known.map(t => `${t.name} (${t.example})`).join(', or ')}.` : 'What it has to pass follows from the machine.';
  };
  parts.onchange = () => { document.querySelector('[data-order=target]').value = ''; targets(); };
  targets();
}

// What was filled in; fields left empty are left out.
export function filledIn(place) {
  const order = {};
  for (const input of place.querySelectorAll('[data-order]')) {
    if (input.type === 'checkbox') { if (input.checked) order[input.dataset.order] = true; }
    else if (input.value.trim() && !input.disabled) order[input.dataset.order] = input.value.trim();
  }
  for (const list of place.querySelectorAll('[data-gases]')) {
    const boxes = [...list.querySelectorAll('input')];
    const ticked = boxes.filter(b => b.checked).map(b => b.value);
    // All of them is the program's own choice.
    if (ticked.length < boxes.length) order[list.dataset.gases] = ticked.join(', ') || 'none';
  }
  return order;
}
