// Two composites of one stack that move together: places are matched in the reference frame that both were cropped from.
'use strict';
(() => {
  const pair = [...document.querySelectorAll('canvas.glass')].map((canvas) => ({
    glass: new Glass(canvas),
    left: Number(canvas.dataset.left),
    top: Number(canvas.dataset.top),
  }));
  let following = false;
  pair.forEach((one) => one.glass.canvas.addEventListener('look', () => {
    if (following) return;
    following = true;
    pair.filter((other) => other !== one).forEach((other) => {
      other.glass.look(one.glass.x + one.left - other.left, one.glass.y + one.top - other.top, one.glass.scale);
    });
    following = false;
  }));
})();
