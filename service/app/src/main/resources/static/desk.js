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

  // A stream begins with all parts as they are: what a page shows already must not move under a hand.
  const words = (node) => node.textContent.replace(/\s+/g, ' ').trim();
  const shown = (part, html) => {
    const fresh = document.createElement('template');
    fresh.innerHTML = html;
    return words(fresh.content) === words(part);
  };

  document.addEventListener('htmx:sseBeforeMessage', (event) => {
    const part = event.target;
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
    if (focused) event.target.querySelector(focused)?.focus({ preventScroll: true });
    focused = '';
  });

  document.addEventListener('focusout', () => setTimeout(() => {
    for (const [part, data] of waiting) {
      if (part.contains(document.activeElement)) continue;
      waiting.delete(part);
      htmx.swap(part, data, { swapStyle: 'innerHTML' });
    }
  }, 200));
})();
