// The sound at the table: two rising tones when a sweep is whole, three low ones when something is missing or asked. While a
// sweep is shot its word changes with every frame; it sounds once nothing has changed for a moment.
'use strict';
(() => {
  const button = document.getElementById('sound');
  const word = document.getElementById('word');
  const kept = 'stook-sound';
  let audio = null;
  const still = 1800;
  let last = said();
  let sounded = last;
  let soon = 0;

  function said() {
    const now = word.querySelector('[data-mood]');
    return now ? now.dataset.stack + ' ' + now.dataset.mood : '';
  }

  function isOn() {
    return localStorage.getItem(kept) === 'on';
  }

  function show() {
    button.hidden = false;
    button.textContent = isOn() ? 'Sound is on' : 'Sound is off';
    button.setAttribute('aria-pressed', String(isOn()));
  }

  function tone(hertz, at, seconds) {
    const source = audio.createOscillator();
    const level = audio.createGain();
    const start = audio.currentTime + at;
    source.frequency.value = hertz;
    level.gain.setValueAtTime(0, start);
    level.gain.linearRampToValueAtTime(0.25, start + 0.02);
    level.gain.linearRampToValueAtTime(0, start + seconds);
    source.connect(level).connect(audio.destination);
    source.start(start);
    source.stop(start + seconds);
  }

  function play(mood) {
    if (!audio) audio = new AudioContext();
    if (mood === 'WHOLE') {
      tone(660, 0, 0.18);
      tone(880, 0.2, 0.3);
    } else if (mood === 'MISSING' || mood === 'ASKING') {
      [0, 0.3, 0.6].forEach((at) => tone(220, at, 0.24));
    }
  }

  button.addEventListener('click', () => {
    localStorage.setItem(kept, isOn() ? 'off' : 'on');
    show();
    // A browser lets a page sound only after a click on it.
    if (isOn()) play('WHOLE');
  });

  document.body.addEventListener('htmx:sseMessage', () => {
    const now = said();
    if (now === last) return;
    last = now;
    clearTimeout(soon);
    soon = setTimeout(() => {
      if (isOn() && last !== sounded) play(last.split(' ')[1]);
      sounded = last;
    }, still);
  });

  show();
})();
