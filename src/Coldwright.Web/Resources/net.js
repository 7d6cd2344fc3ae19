// Requests to the program that serves this page; nothing is asked of anybody else.
const word = document.querySelector('meta[name="page-word"]').content;

export const settings = {
  get units() { return localStorage.getItem('units') === 'us' ? 'us' : 'si'; },
  set units(value) { localStorage.setItem('units', value); },
};

export class Refusal extends Error {
  constructor(status, body) {
    super((body.problems || []).join('\n') || 'the program gave no answer');
    this.status = status;
    this.problems = body.problems || [];
    this.clashes = body.clashes || [];
  }
}

async function ask(path, options) {
  const join = path.includes('?') ? '&' : '?';
  const response = await fetch(`${path}${join}units=${settings.units}`, { credentials: 'same-origin', ...options });
  const body = await response.json().catch(() => ({}));
  if (!response.ok) throw new Refusal(response.status, body);
  return body;
}

export const get = (path, signal) => ask(path, { signal });

export const post = (path, body = {}, signal) => ask(path, {
  method: 'POST', body: JSON.stringify(body), signal,
  headers: { 'Content-Type': 'application/json', 'X-Coldwright': word },
});

// Only the newest of several quick questions is of interest: an older one is dropped, on the server too.
export function newest(work) {
  let running = null;
  return async (...args) => {
    running?.abort();
    const mine = running = new AbortController();
    try {
      return await work(mine.signal, ...args);
    } catch (e) {
      if (mine.signal.aborted) return null;
      throw e;
    } finally {
      if (running === mine) running = null;
    }
  };
}
