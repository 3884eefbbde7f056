// Gives every request of a page the token that only our own pages know.
'use strict';
document.addEventListener('htmx:configRequest', (event) => {
  const value = (name) => document.querySelector(`meta[name="${name}"]`)?.content;
  if (value('csrf-token')) event.detail.headers[value('csrf-header')] = value('csrf-token');
});
