// Rows that are chosen for one order together. They stay chosen when the list is renewed under the hand.
'use strict';
(() => {
  const bulk = document.getElementById('bulk');
  const all = document.getElementById('all');
  const said = document.getElementById('chosen');
  const boxes = () => [...document.querySelectorAll('input[name=run][form=bulk]')];
  let chosen = new Set();

  function show() {
    const there = boxes();
    chosen = new Set(there.filter((box) => box.checked).map((box) => box.value));
    bulk.hidden = there.length === 0;
    all.checked = there.length > 0 && chosen.size === there.length;
    all.indeterminate = chosen.size > 0 && chosen.size < there.length;
    said.textContent = chosen.size === 0 ? 'none chosen' : chosen.size === 1 ? '1 chosen' : `${chosen.size} chosen`;
    bulk.querySelectorAll('button').forEach((button) => { button.disabled = chosen.size === 0; });
  }

  document.addEventListener('change', (event) => {
    if (event.target === all) boxes().forEach((box) => { box.checked = all.checked; });
    if (event.target === all || event.target.name === 'run') show();
  });
  document.body.addEventListener('htmx:sseMessage', () => {
    boxes().forEach((box) => { box.checked = chosen.has(box.value); });
    show();
  });
  show();
})();
