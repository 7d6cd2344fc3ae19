// The shares of the mixture: one moves, the others make room; figures, freezing and envelope follow.
import { get, post } from './net.js';
import { enliven } from './charts.js';
import { say } from './notices.js';

const PLACE = 'charge/mixture';
const shares = document.getElementById('shares');
const freezing = document.getElementById('freezing');
const pictures = document.getElementById('mixture-pictures');
const envelope = document.getElementById('envelope');
const model = document.getElementById('envelope-model');
let act = null, last = null;
let gases = [];
let envelopeJob = 0, shownEnvelope = 0, wait = 0, freezingAsked = 0;
// While a share moves, what the file says must not push it back.
let moving = false;

export function setUpMixture(actions) {
  act = actions;
  model.addEventListener('change', () => askEnvelope([]));
}

const isOpen = () => !document.getElementById('mixture').hidden;
const text = list => list.filter(g => g.share > 0).map(g => `${g.name} ${Number(g.share.toFixed(4))}`).join(', ');

export function showFreezing(answer) {
  freezing.innerHTML = answer.freezing;
  const by = document.createElement('p');
  by.className = 'quiet';
  by.textContent = `By the ${answer.freezing_model} model, ${answer.freezing_closed ? 'for the mixture that circulates' : 'for the mixture in the file between its two pressures'}.`;
  freezing.append(by);
}

export function showMixture(rated, isSettled) {
  last = rated;
  if (!isOpen()) return;
  drawPictures();
  if (isSettled) askFreezing();
  if (!moving && !shares.matches(':focus-within')) load();
}

function drawPictures() {
  if (!last) return;
  pictures.innerHTML = last.pictures;
  enliven(pictures);
}

export async function openMixture() {
  drawPictures();
  await load();
  await Promise.all([askFreezing(), askEnvelope([])]);
}

async function askFreezing() {
  const asked = ++freezingAsked;
  try {
    const answer = await post('/api/try', { changes: [], freezing: true });
    // Asked again meanwhile, or a share is on its way: this one is out of date.
    if (asked === freezingAsked && !moving) showFreezing(answer);
  } catch (e) {
    freezing.textContent = (e.problems?.length ? e.problems : [e.message]).join(' ');
  }
}

async function load() {
  const state = await get('/api/state');
  if (!state.mixture) return;
  gases = Object.entries(state.mixture).map(([name, share]) => ({ name, share, kept: gases.find(g => g.name === name)?.kept ?? false }));
  render();
}

function render() {
  shares.replaceChildren(...gases.map(gasRow), addRow());
}

function gasRow(gas) {
  const row = document.createElement('div');
  row.className = 'share';
  row.dataset.gas = gas.name;
  row.innerHTML = '<label></label><input type="range" min="0" max="100" step="0.5"><input type="number" min="0" max="100" step="0.1"><span>%</span><label class="keep"><input type="checkbox"> keep</label>';
  const [range, number] = row.querySelectorAll('input');
  const label = row.querySelector('label');
  const keep = row.querySelector('.keep input');
  label.textContent = gas.name;
  range.setAttribute('aria-label', `${gas.name}, share`);
  number.setAttribute('aria-label', `${gas.name}, per cent by mole`);
  keep.setAttribute('aria-label', `keep ${gas.name} as it is`);
  keep.checked = gas.kept;
  keep.addEventListener('change', () => { gas.kept = keep.checked; });
  for (const input of [range, number]) {
    input.value = Number((100 * gas.share).toFixed(2));
    input.addEventListener('input', () => move(gas, input.value / 100));
    input.addEventListener('change', () => commit());
  }
  return row;
}

function addRow() {
  const row = document.createElement('div');
  row.className = 'share-add';
  row.innerHTML = '<label>Another gas <select></select></label> <button>Let in 2 %</button>';
  const select = row.querySelector('select');
  const all = ['nitrogen', 'argon', 'oxygen', 'methane', 'ethane', 'ethylene', 'propane', 'propylene', 'butane', 'isobutane', 'isopentane', 'pentane', 'neon', 'helium', 'hydrogen', 'krypton', 'xenon', 'R14', 'R23', 'R22', 'R32', 'R125', 'R134a', 'R1234yf'];
  all.filter(n => !gases.some(g => g.name === n)).forEach(n => select.append(new Option(n, n)));
  row.querySelector('button').addEventListener('click', () => {
    const gas = { name: select.value, share: 0, kept: false };
    gases.push(gas);
    move(gas, 0.02, false);
    commit();
  });
  return row;
}

function move(gas, share, tries = true) {
  moving = true;
  const others = gases.filter(g => g !== gas && !g.kept);
  const fixed = gases.filter(g => g !== gas && g.kept).reduce((s, g) => s + g.share, 0);
  gas.share = Math.max(0, Math.min(share, 1 - fixed));
  const room = 1 - fixed - gas.share, before = others.reduce((s, g) => s + g.share, 0);
  if (!others.length) gas.share = 1 - fixed;
  else others.forEach(g => { g.share = before > 0 ? g.share * room / before : room / others.length; });
  for (const row of shares.querySelectorAll('[data-gas]')) {
    const g = gases.find(x => x.name === row.dataset.gas);
    row.querySelectorAll('input[type=range], input[type=number]').forEach(i => { if (i !== document.activeElement || g !== gas) i.value = Number((100 * g.share).toFixed(2)); });
  }
  if (!tries) return;
  act.tryOut(changes(), true);
  clearTimeout(wait);
  wait = setTimeout(() => askEnvelope(changes()), 350);
}

// The page counts by mole; a file that counts by mass is told so.
function changes() {
  const list = [{ place: PLACE, was: act.findField(PLACE)?.value ?? null, value: rounded() }];
  if (act.findField('charge/fractions')?.value === 'mass') list.push({ place: 'charge/fractions', was: 'mass', value: 'mole' });
  return list;
}

// Rounded shares that still make a whole: the largest takes what is left over.
function rounded() {
  const list = gases.map(g => ({ name: g.name, share: Math.round(1e4 * g.share) / 1e4 }));
  const largest = list.reduce((a, b) => a.share > b.share ? a : b);
  largest.share += 1 - list.reduce((s, g) => s + g.share, 0);
  return text(list);
}

async function commit() {
  clearTimeout(wait);
  // What is written comes back through the page's own refresh.
  const written = await act.write(changes());
  moving = false;
  if (!written) await load();
}

async function askEnvelope(list) {
  try {
    const job = await post('/api/start', { kind: 'envelope', model: model.value, changes: list });
    envelopeJob = job.id;
    await followEnvelope(job.id);
  } catch (e) {
    say('envelope', e.problems?.length ? e.problems : [e.message]);
  }
}

async function followEnvelope(id) {
  while (envelopeJob === id && isOpen()) {
    const job = await get(`/api/job?id=${id}`);
    if (envelopeJob !== id) return;
    if (job.state === 'done') {
      if (shownEnvelope === id) return;
      shownEnvelope = id;
      const folded = [...envelope.querySelectorAll('details')].map(d => d.open);
      envelope.innerHTML = job.html;
      envelope.dataset.job = id;
      [...envelope.querySelectorAll('details')].forEach((d, i) => { d.open = folded[i] ?? false; });
      enliven(envelope);
      return;
    }
    if (job.state === 'failed') { envelope.textContent = job.problems.join(' '); return; }
    if (job.state === 'cancelled') return;
    await new Promise(r => setTimeout(r, 150));
  }
}
