// Gives every request of a page the token that only our own pages know, and keeps what is being done while parts are renewed.
'use strict';
(() => {
  const meta = (name) => document.querySelector(`meta[name="${name}"]`)?.content;

  document.addEventListener('htmx:configRequest', (event) => {
    if (meta('csrf-token')) event.detail.headers[meta('csrf-header')] = meta('csrf-token');
  });

  // Parts that are sent to all open pages cannot carry the token of one of them.
  document.addEventListener('formdata', (event) => {
    const token = meta('csrf-token');
    if (token && event.target.method === 'post') event.formData.set('_csrf', token);
  });

  // What is being typed must not be swapped away: the newest waits until the field is left.
  const waiting = new Map();
  let focused = '';

  const mark = (element) => {
    if (element.tagName === 'A') return `a[href="${CSS.escape(element.getAttribute('href'))}"]`;
    if (element.tagName === 'INPUT' && element.value) return `input[name="${element.name}"][value="${CSS.escape(element.value)}"]`;
    const form = element.closest('form[action]');
    return form ? `form[action="${CSS.escape(form.getAttribute('action'))}"] ${element.tagName.toLowerCase()}` : '';
  };

  // How far runs are comes as figures alone, a line each of run, per cent and step, and is laid over whatever shows such a run.
  let progress = new Map();

  const steps = (list, step) => {
    const words = [...list.children].map((item) => item.lastElementChild.textContent);
    const at = words.indexOf(step);
    list.hidden = at < 0;
    [...list.children].forEach((item, n) => {
      item.className = n < at ? 'done' : n === at ? 'now' : 'ahead';
      item.firstElementChild.textContent = n < at ? '✓' : n === at ? '▸' : '·';
      item.toggleAttribute('aria-current', n === at);
      if (n === at) item.setAttribute('aria-current', 'step');
    });
    return at;
  };

  const advance = (root) => root.querySelectorAll('[data-progress]').forEach((shown) => {
    const now = progress.get(shown.dataset.progress);
    if (!now) return;
    shown.querySelector('progress').value = now.percent;
    shown.querySelector('.figure').textContent = `${now.percent} %`;
    const word = shown.querySelector('.step');
    if (word) word.textContent = now.step;
    const list = shown.querySelector('.steps');
    if (list) shown.querySelector('.begins').hidden = steps(list, now.step) >= 0;
  });

  const told = (lines) => {
    progress = new Map(lines.split('\n').map((line) => line.split(' '))
      .map(([run, percent, ...step]) => [run, { percent: Number(percent), step: step.join(' ') }]));
    advance(document);
  };

  // A stream begins with all parts as they are: what a page shows already must not move under a hand.
  const words = (node) => node.textContent.replace(/\s+/g, ' ').trim();
  const shown = (part, html) => {
    const fresh = document.createElement('template');
    fresh.innerHTML = html;
    advance(fresh.content);
    return words(fresh.content) === words(part);
  };

  document.addEventListener('htmx:sseBeforeMessage', (event) => {
    const part = event.target;
    if (part.getAttribute('sse-swap') === 'progress') {
      told(event.detail.data);
      event.preventDefault();
      return;
    }
    if (shown(part, event.detail.data)) {
      waiting.delete(part);
      event.preventDefault();
      return;
    }
    const active = document.activeElement;
    const inside = part.contains(active);
    if (inside && active.matches('input[type=text], input[type=search], select, textarea')) {
      waiting.set(part, event.detail.data);
      event.preventDefault();
    } else {
      focused = inside ? mark(active) : '';
    }
  });

  document.addEventListener('htmx:sseMessage', (event) => {
    waiting.delete(event.target);
    advance(event.target);
    if (focused) event.target.querySelector(focused)?.focus({ preventScroll: true });
    focused = '';
  });

  document.addEventListener('focusout', () => setTimeout(() => {
    for (const [part, data] of waiting) {
      if (part.contains(document.activeElement)) continue;
      waiting.delete(part);
      htmx.swap(part, data, { swapStyle: 'innerHTML' });
      advance(part);
    }
  }, 200));
})();
