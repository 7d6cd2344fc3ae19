// The page: reads the folder, asks for a first answer, lets the reference answer replace it, and looks now and then whether anything has changed.
import { get, post, settings, newest, Refusal } from './net.js';
import { say, unsay, clash } from './notices.js';
import { showFigures, rememberSettled, nothingMoved, sayWhere, forgetFigures } from './figures.js';
import { enliven } from './charts.js';
import { reachable } from './reach.js';
import { setUpForm, showForm, refreshForm, findField } from './form.js';
import { setUpMixture, showMixture, showFreezing, openMixture } from './mixture.js';
import { setUpWork, workPulse, redrawWork } from './work.js';
import { offerOrders } from './orders.js';
import { setUpCompare, showCompare, comparePulse } from './compare.js';

const $ = id => document.getElementById(id);
const page = { state: null, form: null, revision: '', trial: false, rateJob: 0, safetyJob: 0, shownRate: 0, shownSafety: 0, busy: false };

// --- showing ---

function showState(state) {
  // While the file cannot be read, the name is that of the last good one.
  if (!state.good && page.state) state.name = page.state.name;
  page.state = state;
  document.title = `${state.name}: Coldwright`;
  $('name').textContent = state.name;
  $('file-line').textContent = `${state.folder}/machine.yaml${state.notes?.length ? `. ${state.notes.join('. ')}` : ''}`;
  showSteps(state);
  if (state.problems.length) say('problems', [state.good ? '' : page.rated ? 'The files cannot be used as they are; the figures below are of an earlier state.' : 'The files cannot be used as they are.', ...state.problems].filter(Boolean), { grave: true });
  else unsay('problems');
  showFindings(state.findings, state.findings_known);
  $('hold-choice').hidden = !state.good || (state.hold === 'both' && state.missing_for_closed.length > 0);
  $('hold').value = state.hold ?? 'both';
  document.querySelector('.questions a[href="#batch"]').hidden = state.good && !state.makes_liquid;
}

function showSteps({ undo, redo }) {
  for (const [id, what, words] of [['undo', undo, 'Take back'], ['redo', redo, 'Make again']]) {
    $(id).disabled = !what;
    $(id).setAttribute('aria-label', what ? `${words}: ${what.replaceAll('/', ' ')}` : words);
  }
}

function showFindings(f, isKnown = true) {
  if (!f) return;
  if (isKnown) page.findings = f;
  else if (page.findings) f = page.findings;
  const line = $('findings-line');
  const count = (n, one, many) => n ? [`${n} ${n === 1 ? one : many}`] : [];
  const grave = [...count(f.danger, 'danger', 'dangers'), ...count(f.serious, 'serious finding', 'serious findings')];
  line.className = `findings-line ${!isKnown ? 'serious' : f.danger ? 'danger' : f.serious ? 'serious' : ''}`;
  const words = document.createElement('span');
  const of = isKnown ? '' : page.findings ? ', as the files were before' : ' not known while the files have problems';
  words.textContent = !isKnown && !page.findings ? `\u2691 Safety${of}` : `\u2691 Safety${of}: ${[...grave, ...count(f.caution, 'caution', 'cautions')].join(', ') || 'nothing found that a description can show'}${f.brief.length ? `. ${f.brief.join('; ')}` : ''}`;
  line.replaceChildren(words);
  $('findings-all').innerHTML = f.html;
  reachable();
}

function showRated(rated, { first, isSettled }) {
  page.rated = rated;
  delete document.body.dataset.drawing;
  $('stands-answer').innerHTML = rated.answer;
  showFigures(rated.answer, isSettled);
  $('loop').innerHTML = rated.loop;
  // Whoever hears the drawing hears the figures that others see.
  $('loop').querySelectorAll('[role=button]').forEach(g => {
    const texts = [...g.querySelectorAll('text')];
    const seen = texts.map(t => t.textContent).join(' ');
    texts.forEach(t => t.after(' '));
    g.setAttribute('aria-label', [seen, g.getAttribute('aria-label')].filter(Boolean).join('. '));
  });
  $('loop-table').innerHTML = rated.loop_table;
  $('stands-pictures').innerHTML = rated.pictures;
  if (rated.tables) $('stands-tables').innerHTML = rated.tables;
  else if (!first) $('stands-tables').replaceChildren();
  enliven($('stands-pictures'));
  showMixture(rated, isSettled);
  const name = page.form?.open;
  if (name) $('loop').querySelector(`[data-part="${CSS.escape(name)}"], [data-line="${CSS.escape(name)}"]`)?.classList.add('chosen');
  document.body.dataset.model = rated.model;
}

// --- asking ---

// What a first answer leaves out where the pressures are to follow from hardware and charge.
const betweenWords = () => page.state.hold === 'both' ? '' : ', between the two pressures of the file and not from hardware and charge';

const askFirst = newest((signal, body) => post('/api/try', body, signal));

// Along the slopes of the last closed answer: figures alone; the drawing stays as it was closed, and says so.
function showForecast(forecast) {
  showFigures(forecast.answer, false, true);
  $('stands-answer').innerHTML = forecast.answer;
  document.body.dataset.drawing = 'old';
}

const forecastWords = f => `along the slopes of the closed answer of ${f.asked}, ${f.seconds < 0.01 ? 'at once' : `${Math.round(1000 * f.seconds)} ms`}${f.far ? '. A long way to go on a slope: take the direction, not the figure' : ''}`;

// A moved value: the figures follow, nothing is written.
export async function tryOut(changes, freezing = false) {
  rememberSettled();
  page.trial = true;
  // Whoever puts the value back wants the settled answer back too.
  page.shownRate = 0;
  try {
    const rated = await askFirst({ changes, freezing });
    if (!rated) return;
    unsay('try');
    if (rated.answer && !rated.forecast) showRated(rated, { first: true });
    if (rated.freezing) showFreezing(rated);
    if (rated.forecast) {
      showForecast(rated.forecast);
      sayWhere(`Tried out, not written: ${forecastWords(rated.forecast)}`, 'trial');
    } else sayWhere(`Tried out, not written: cubic model${betweenWords()}, ${Math.round(1000 * rated.seconds)} ms`, 'trial');
  } catch (e) {
    sayWhere(e.problems?.[0] ?? e.message, 'failed');
  }
}

// A value let go: written to the file.
export async function write(changes) {
  page.trial = false;
  page.busy = true;
  try {
    const done = await post('/api/edit', { changes });
    rememberSettled();
    showSteps(done);
    page.mine = done.revision;
    page.edited = true;
    unsay('edit');
    unsay('same');
    await refresh();
    return true;
  } catch (e) {
    page.busy = false;
    if (!(e instanceof Refusal)) throw e;
    if (e.clashes.length) clash(e.clashes, list => write(list.map(c => ({ place: c.place, was: c.theirs, value: c.mine }))));
    else say('edit', ['Nothing was written:', ...e.problems], { grave: true });
    await refresh();
    return false;
  }
}

async function step(path) {
  page.busy = true;
  try {
    const done = await post(path);
    rememberSettled();
    page.mine = done.revision;
    await refresh();
  } catch (e) {
    if (e.clashes?.length) clash(e.clashes, list => write(list.map(c => ({ place: c.place, was: c.theirs, value: c.mine }))));
    else say('edit', e.problems?.length ? e.problems : [e.message], { grave: true });
    page.busy = false;
  }
}

export async function refresh() {
  page.busy = true;
  try {
    const [state, form] = await Promise.all([get('/api/state'), get('/api/form')]);
    page.revision = state.revision;
    page.trial = false;
    showState(state);
    page.form = { ...page.form, ...form };
    refreshForm(form);
    showCompare(state);
    if (state.good) offerOrders(state);
    if (!state.good) {
      sayWhere('The files have problems; nothing is computed.', 'failed');
      return;
    }
    await firstAnswer(state);
    if (document.body.dataset.view === 'mixture') openMixture();
  } finally {
    page.busy = false;
    document.body.dataset.ready = 'true';
    document.body.dataset.revision = page.revision;
  }
}

async function firstAnswer(state) {
  const known = (await get('/api/pulse')).jobs.some(j => j.kind === 'rate' && j.revision === page.revision && j.state === 'done');
  // What is known already needs no first answer; else that comes before all longer work, which would only slow it down.
  if (!known) {
    sayWhere('Asking the cubic model', 'asking');
    try {
      const rated = await askFirst({ changes: [], freezing: false });
      if (rated?.forecast && rated.revision === page.revision) {
        showForecast(rated.forecast);
        sayWhere(`First answer: ${forecastWords(rated.forecast)}. The loop is being closed anew by the reference model`, 'first');
      } else if (rated && rated.revision === page.revision) {
        showRated(rated, { first: true });
        sayWhere(`First answer: cubic model${betweenWords()}, ${Math.round(1000 * rated.seconds)} ms. ${state.hold === 'both' ? 'The reference model is being asked' : 'Closing the loop takes some seconds more'}`, 'first');
      }
    } catch (e) {
      sayWhere(e.problems?.[0] ?? e.message, 'failed');
    }
  }
  const [rate, safety] = await Promise.all([post('/api/start', { kind: 'rate' }), post('/api/start', { kind: 'safety' })].map(p => p.catch(e => e)));
  [page.rateJob, page.safetyJob] = [rate.id ?? 0, safety.id ?? 0];
  if (rate instanceof Error) sayWhere(`${rate.message}${page.rated ? '. What is shown is the first answer' : ''}`, 'failed');
  await pulse();
}

async function settle(id) {
  const job = await get(`/api/job?id=${id}`);
  if (job.revision !== page.revision || page.trial) return;
  page.shownRate = id;
  if (job.state === 'done') {
    showRated(job, { first: false, isSettled: true });
    if (page.edited && nothingMoved()) sayThatNothingMoved();
    page.edited = false;
    sayWhere(`${job.model === 'reference' ? 'Reference model' : 'Cubic model'}${job.second_model ? `, ${job.second_model} model as second opinion` : ''}${job.closed ? ', pressures from hardware and charge' : ', between the two pressures of the file'}`, 'settled');
  } else if (job.state === 'failed') {
    sayWhere(`The reference model: ${job.problems.join('; ')}${page.rated ? '. What is shown is the first answer' : ''}`, 'failed');
  } else sayWhere('Stopped. What is shown is the first answer, by the cubic model', 'failed');
}

// Between given pressures the plain figures of the parts count; tubes, lengths and grams count when pressures follow from them.
function sayThatNothingMoved() {
  const follows = page.state.hold === 'both' && page.state.missing_for_closed.length === 0;
  say('same', ['The change is in the file, and no figure has moved.', ...follows ? ['Between the two pressures of the file a rating takes the plain figures of the parts, such as a conductance. Lengths, bores and grams count when the pressures follow from hardware and charge, which takes longer.'] : []],
    { actions: follows ? [['Let the pressures follow', () => holdPressures('neither')], ['Leave it', () => {}]] : [] });
}

const holdPressures = value => write([{ place: 'operation/hold', was: findField('operation/hold')?.value ?? null, value }]);

async function settleSafety(id) {
  const job = await get(`/api/job?id=${id}`);
  if (job.revision !== page.revision) return;
  page.shownSafety = id;
  if (job.findings) showFindings(job.findings);
}

// --- looking ---

let timer = 0;
async function pulse() {
  clearTimeout(timer);
  let wait = 1500;
  try {
    const beat = await get('/api/pulse');
    unsay('lost');
    if (beat.revision !== page.revision && !page.busy) {
      if (page.revision && beat.revision !== page.mine) say('outside', ['machine.yaml or shop.yaml was changed outside this page; it now shows what the files say.']);
      rememberSettled();
      await refresh();
    }
    const running = beat.jobs.filter(j => j.state === 'running' || j.state === 'waiting');
    const over = id => beat.jobs.find(j => j.id === id && !running.includes(j));
    if (over(page.rateJob) && page.shownRate !== page.rateJob && !page.trial) await settle(page.rateJob);
    if (over(page.safetyJob) && page.shownSafety !== page.safetyJob) await settleSafety(page.safetyJob);
    const mine = running.find(j => j.id === page.rateJob);
    $('now-stage').textContent = mine && mine.seconds > 1 ? `${mine.stage}, ${Math.round(mine.seconds)} s` : '';
    $('now-stop').hidden = !(mine && mine.seconds > 1);
    workPulse(beat.jobs, page.revision);
    comparePulse(beat.jobs);
    if (running.length) wait = 300;
  } catch (e) {
    if (e.status === 401) return location.reload();
    say('lost', ['The program that serves this page does not answer. Is it still running?'], { grave: true });
    wait = 3000;
  }
  timer = setTimeout(pulse, document.hidden ? 15000 : wait);
}

document.addEventListener('visibilitychange', () => { if (!document.hidden) pulse(); });

// --- going about ---

function go() {
  const wanted = location.hash.slice(1) || 'stands';
  const views = [...document.querySelectorAll('.view')];
  const view = views.find(v => v.id === wanted) ?? views[0];
  views.forEach(v => { v.hidden = v !== view; });
  document.querySelectorAll('.questions a').forEach(a => {
    if (a.hash !== `#${view.id}`) return a.removeAttribute('aria-current');
    a.setAttribute('aria-current', 'page');
    a.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });
  // Only where the machine's drawing has room beside the answer.
  document.body.dataset.view = view.id;
  if (view.id === 'mixture' && page.revision) openMixture();
  reachable();
}

addEventListener('hashchange', () => { go(); scrollTo({ top: 0 }); });
$('undo').addEventListener('click', () => step('/api/undo'));
$('redo').addEventListener('click', () => step('/api/redo'));
addEventListener('keydown', e => {
  if (!(e.ctrlKey || e.metaKey) || e.target.matches('input:not([type=range]), select, textarea')) return;
  if (e.key === 'z' && !e.shiftKey) { e.preventDefault(); $('undo').click(); }
  if (e.key === 'y' || (e.key === 'z' && e.shiftKey)) { e.preventDefault(); $('redo').click(); }
});
$('findings-line').addEventListener('click', () => {
  const all = $('findings-all');
  all.hidden = !all.hidden;
  $('findings-line').setAttribute('aria-expanded', String(!all.hidden));
  reachable();
});
$('hold').addEventListener('change', () => holdPressures($('hold').value));
$('now-stop').addEventListener('click', () => post('/api/cancel', { id: page.rateJob }));
$('units').value = settings.units;
$('units').addEventListener('change', async () => {
  settings.units = $('units').value;
  forgetFigures();
  page.shownRate = page.shownSafety = 0;
  await refresh();
  redrawWork();
});
const open = (name, keepsFocus = false) => { page.form = { ...page.form, open: name }; showForm(name, keepsFocus); };
$('loop').addEventListener('click', e => {
  const place = e.target.closest('[data-part], [data-line]');
  if (place) open(place.dataset.part ?? place.dataset.line);
});
$('loop').addEventListener('keydown', e => {
  const place = e.target.closest('[data-part], [data-line]');
  if (place && (e.key === 'Enter' || e.key === ' ')) { e.preventDefault(); open(place.dataset.part ?? place.dataset.line); }
});
// By keys a person walks through the list: each part opens beside it, and Enter goes there.
let byKeys = false;
$('part-choice').addEventListener('keydown', e => {
  byKeys = true;
  if (e.key === 'Enter' && e.target.value) { e.preventDefault(); open(e.target.value); }
});
$('part-choice').addEventListener('pointerdown', () => { byKeys = false; });
$('part-choice').addEventListener('change', e => { if (e.target.value) open(e.target.value, byKeys); });

setUpForm({ tryOut, write, closed: () => { page.form.open = null; if (page.trial) refresh(); } });
setUpMixture({ tryOut, write, findField, revision: () => page.revision });
setUpWork(() => page, { write });
setUpCompare({ refresh, write, say });
go();
refresh().catch(e => say('lost', [e.message], { grave: true })).finally(pulse);
