// What scrolls can be scrolled by keys as well: it then takes part in the order of the tabulator key, and only then.
const scrolling = '.scroll, .findings-all, .now-figures, .questions, .form';

export function reachable() {
  for (const place of document.querySelectorAll(scrolling)) {
    const scrolls = place.scrollWidth > place.clientWidth + 1 || place.scrollHeight > place.clientHeight + 1;
    if (scrolls && place.clientWidth > 0) {
      place.tabIndex = 0;
      if (!place.hasAttribute('role') && place.tagName === 'DIV') place.setAttribute('role', 'group');
      if (!place.hasAttribute('aria-label')) place.setAttribute('aria-label', place.querySelector('th')?.textContent ?? 'more to the side');
    } else place.removeAttribute('tabindex');
  }
}

document.addEventListener('toggle', reachable, true);
// The values of a part, opened beside the answer, make it narrower.
new ResizeObserver(reachable).observe(document.getElementById('answers'));
addEventListener('resize', reachable);
