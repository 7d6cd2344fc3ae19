// Two variants side by side: the cooler as it stands and kept ones.
import { get, post } from './net.js';
import { enliven } from './charts.js';

const keep = document.getElementById('keep');
const sides = document.getElementById('sides');
const result = document.getElementById('compare-result');
let act = null, wanted = 0, shown = 0;

export function setUpCompare(actions) {
  act = actions;
  keep.innerHTML = '<label>Keep the cooler as it stands under the name <input maxlength="40" placeholder="longer-exchanger" autocomplete="off" spellcheck="false"></label> <button>Keep</button><p class="quiet">A copy goes to variants/NAME inside the cooler\u2019s folder, where it can be opened like any other cooler.</p>';
  keep.querySelector('button').addEventListener('click', async () => {
    const name = keep.querySelector('input').value.trim();
    try {
      showCompare(await post('/api/keep', { name }));
      keep.querySelector('input').value = '';
      sides.querySelectorAll('select')[1].value = name;
      offer();
    } catch (e) {
      act.say('keep', e.problems ?? [e.message], { grave: true });
    }
  });
  sides.innerHTML = '<label>Left <select></select></label> <label>Right <select></select></label> <button class="go">Compare</button> <button class="take" hidden></button><div class="work-progress" role="status" hidden><span class="bar"></span><span class="stage"></span> <button class="stop">Stop</button></div>';
  sides.querySelector('.go').addEventListener('click', order);
  sides.querySelector('.stop').addEventListener('click', () => post('/api/cancel', { id: wanted }));
  const right = sides.querySelectorAll('select')[1];
  sides.querySelectorAll('select').forEach(s => s.addEventListener('change', offer));
  sides.querySelector('.take').addEventListener('click', async () => {
    try {
      await post('/api/take', { name: right.value });
    } catch (e) {
      act.say('keep', e.problems ?? [e.message], { grave: true });
    }
    await act.refresh();
  });
}

function offer() {
  const take = sides.querySelector('.take'), [left, name] = [...sides.querySelectorAll('select')].map(s => s.value);
  // A cooler beside itself says nothing.
  sides.querySelector('.go').disabled = left === name;
  take.hidden = !name;
  take.textContent = `Make machine.yaml like ${name}`;
}

export function showCompare(state) {
  const [left, right] = sides.querySelectorAll('select');
  for (const select of [left, right]) {
    const before = select.value;
    select.replaceChildren(new Option('as it stands', ''), ...state.variants.map(v => new Option(v, v)));
    select.value = [...select.options].some(o => o.value === before) ? before : '';
  }
  if (!right.value && state.variants.length) right.value = state.variants.at(-1);
  offer();
}

async function order() {
  const [first, second] = [...sides.querySelectorAll('select')].map(s => s.value);
  try {
    wanted = (await post('/api/start', { kind: 'compare', first, second })).id;
  } catch (e) {
    act.say('compare', e.problems ?? [e.message], { grave: true });
  }
}

export function comparePulse(jobs) {
  const mine = jobs.filter(j => j.kind === 'compare');
  const running = mine.find(j => j.state === 'running' || j.state === 'waiting');
  const bar = sides.querySelector('.work-progress');
  bar.hidden = !running;
  if (running) {
    wanted = running.id;
    bar.querySelector('.stage').textContent = `${running.stage}, ${Math.round(running.seconds)} s`;
  }
  const best = mine.filter(j => j.state === 'done').at(-1);
  if (best && best.id !== shown) show(best.id);
}

async function show(id) {
  shown = id;
  const job = await get(`/api/job?id=${id}`);
  if (!job.html) return;
  result.innerHTML = `${job.html}<section><h2>The two machines</h2><div class="two-loops"><div><h3></h3>${job.first_loop}</div><div><h3></h3>${job.second_loop}</div></div></section>`;
  const [a, b] = result.querySelectorAll('.two-loops h3');
  [a.textContent, b.textContent] = [job.first_name, job.second_name];
  result.dataset.job = id;
  enliven(result);
}
