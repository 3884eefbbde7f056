// The review on a stack's page: layers, the touched place, regions, and tones tried on the reference frame.
'use strict';
(() => {
  const byId = (id) => document.getElementById(id);
  const bench = byId('bench');
  const form = byId('again-form');
  if (bench) look();
  if (form) tryTones();

  function look() {
    const data = bench.dataset;
    const canvas = byId('glass');
    Object.assign(canvas.dataset, { width: data.width, height: data.height, tiles: data.tiles });
    const glass = new Glass(canvas);
    const place = byId('place');
    let touched = null;

    canvas.addEventListener('look', said);
    said();
    function said() {
      byId('scale').textContent = Math.round(100 * glass.scale / glass.ratio) + ' %';
    }

    document.querySelectorAll('[data-zoom]').forEach((button) => button.addEventListener('click', () => {
      const middle = [canvas.width / 2, canvas.height / 2];
      if (button.dataset.zoom === 'fit') glass.fit();
      if (button.dataset.zoom === 'one') glass.look(glass.x, glass.y, glass.ratio);
      if (button.dataset.zoom === 'in') glass.zoom(1.4, ...middle);
      if (button.dataset.zoom === 'out') glass.zoom(1 / 1.4, ...middle);
    }));

    const layers = new Map();
    byId('layer').addEventListener('change', () => {
      const kind = byId('layer').value;
      const legend = byId('legend');
      legend.hidden = kind === '';
      legend.querySelectorAll('[data-for]').forEach((part) => {
        part.hidden = !part.dataset.for.split(' ').includes(kind);
      });
      glass.layer = null;
      if (kind) {
        if (!layers.has(kind)) layers.set(kind, picture(data.layers + kind + '.png'));
        layers.get(kind).then((image) => {
          if (byId('layer').value === kind) glass.layer = image;
          glass.draw();
        });
      }
      glass.draw();
    });
    byId('strength').addEventListener('input', () => {
      glass.strength = byId('strength').value / 100;
      glass.draw();
    });
    byId('border').addEventListener('change', () => {
      glass.around = null;
      glass.draw();
      if (!byId('border').checked) return;
      picture(data.reference).then((image) => {
        if (!byId('border').checked) return;
        glass.around = {
          image, left: Number(data.left), top: Number(data.top), width: Number(data.frameWidth), height: Number(data.frameHeight),
        };
        const wide = Math.min(canvas.width / data.frameWidth, canvas.height / data.frameHeight);
        glass.look(data.frameWidth / 2 - data.left, data.frameHeight / 2 - data.top, wide);
      });
    });

    const regions = outlines(glass, data, () => touched);
    canvas.addEventListener('pick', (event) => {
      if (regions.takes(event.detail)) return;
      touch(event.detail);
    });

    function touch(at, middle) {
      touched = at;
      glass.picked = at;
      glass.draw();
      const query = '?x=' + Math.floor(at.x) + '&y=' + Math.floor(at.y) + (middle === undefined ? '' : '&middle=' + middle);
      fetch(data.point + query, { headers: { Accept: 'text/html' } })
        .then((answer) => (answer.ok ? answer.text() : Promise.reject(new Error(answer.status))))
        .then((html) => {
          if (touched !== at) return;
          place.replaceChildren(...new DOMParser().parseFromString(html, 'text/html').body.childNodes);
          place.querySelectorAll('img[data-exact]').forEach(sharpen);
        })
        .catch(() => { place.querySelector('p').textContent = 'This place cannot be shown now.'; });
    }

    place.addEventListener('click', (event) => {
      const button = event.target.closest('button');
      if (button && button.dataset.middle !== undefined) touch(touched, button.dataset.middle);
      if (button && button.dataset.take !== undefined) regions.begin(button.dataset.take);
    });
    document.querySelectorAll('.strip button').forEach((button) => button.addEventListener('click', () => {
      touch(touched || { x: glass.x, y: glass.y }, button.dataset.rank);
      bench.scrollIntoView({ block: 'start' });
    }));
  }

  /** The small copy shows at once; the original's own pixels take its place when they are there. */
  function sharpen(image) {
    const exact = new Image();
    exact.addEventListener('load', () => {
      image.src = exact.src;
      image.classList.add('exact');
    });
    exact.src = image.dataset.exact;
  }

  function picture(address) {
    return new Promise((resolve) => {
      const image = new Image();
      image.addEventListener('load', () => resolve(image));
      image.src = address;
    });
  }

  // ---- regions taken from a frame; kept in pixels of the reference frame

  function outlines(glass, data, touched) {
    const field = byId('overrides');
    if (!field) return { takes: () => false, begin: () => {} };
    const left = Number(data.left);
    const top = Number(data.top);
    let regions = JSON.parse(field.value || '[]');
    let drawing = null;
    show();

    byId('region-draw').addEventListener('click', () => (drawing ? stop() : begin()));
    byId('region-close').addEventListener('click', close);
    byId('region-undo').addEventListener('click', undo);
    glass.canvas.addEventListener('keydown', (event) => {
      if (!drawing) return;
      if (event.key === 'Escape') stop();
      else if (event.key === 'Backspace') undo();
      else if (event.key === ' ') glass.pick({ x: glass.x, y: glass.y });
      else return;
      event.preventDefault();
    });

    function begin(file) {
      if (file) byId('region-frame').value = file;
      drawing = { places: [], closed: false };
      glass.canvas.focus();
      show();
    }

    function stop() {
      drawing = null;
      show();
    }

    function undo() {
      drawing.places.pop();
      show();
    }

    function takes(place) {
      if (!drawing) return false;
      const first = drawing.places[0];
      const near = first && Math.hypot(first.x - place.x, first.y - place.y) * glass.scale < 10 * glass.ratio;
      if (near && drawing.places.length > 2) close();
      else {
        drawing.places.push(place);
        show();
      }
      return true;
    }

    function close() {
      if (!drawing || drawing.places.length < 3) return;
      const feather = Number(byId('region-feather').value.replace(',', '.'));
      regions.push({
        frame: byId('region-frame').value,
        outline: drawing.places.map((p) => [round(p.x + left), round(p.y + top)]),
        feather: Number.isFinite(feather) ? feather : 8,
      });
      drawing = null;
      show();
      byId('region-said').textContent = 'The region is in the list. It takes effect with the next run.';
    }

    function round(value) {
      return Math.round(value * 10) / 10;
    }

    function show() {
      field.value = JSON.stringify(regions);
      const draw = byId('region-draw');
      draw.textContent = drawing ? 'Give up the outline' : 'Outline a region';
      draw.setAttribute('aria-pressed', String(Boolean(drawing)));
      byId('region-close').hidden = !drawing || drawing.places.length < 3;
      byId('region-undo').hidden = !drawing || drawing.places.length < 1;
      byId('region-said').textContent = drawing
        ? 'Touch the corners on the composite, or move the cross with the arrow keys and press the space bar; touch the first corner again to close. '
          + drawing.places.length + (drawing.places.length === 1 ? ' corner.' : ' corners.')
        : '';
      byId('region-list').replaceChildren(...regions.map(row));
      glass.outlines = regions.map((region) => ({
        places: region.outline.map(([x, y]) => ({ x: x - left, y: y - top })), closed: true,
      }));
      if (drawing) glass.outlines.push(drawing);
      glass.draw();
    }

    function row(region, index) {
      const item = document.createElement('li');
      const text = document.createElement('div');
      text.className = 'what';
      text.textContent = region.outline.length + ' corners from ' + region.frame + ', soft over ' + (region.feather ?? 8) + ' px';
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = 'Remove';
      button.setAttribute('aria-label', 'Remove region ' + (index + 1));
      button.addEventListener('click', () => {
        regions = regions.filter((other) => other !== region);
        show();
        byId('region-draw').focus();
      });
      item.append(text, button);
      return item;
    }

    return { takes, begin };
  }

  // ---- tones, tried by the service with the workers' own code

  function tryTones() {
    const after = byId('tone-after');
    const said = byId('tone-said');
    let timer = 0;
    form.querySelectorAll('[data-with]').forEach((slider) => {
      const field = byId(slider.dataset.with);
      slider.setAttribute('aria-label', slider.closest('label').firstChild.textContent.trim() + ', slider');
      slider.value = field.value;
      slider.addEventListener('input', () => {
        field.value = slider.value;
        later();
      });
      field.addEventListener('input', () => {
        slider.value = field.value;
        later();
      });
    });
    form.querySelector('[name=monochrome]').addEventListener('change', later);
    form.querySelector('[name=reference]').addEventListener('change', later);

    function later() {
      clearTimeout(timer);
      timer = setTimeout(now, 120);
    }

    function now() {
      const query = new URLSearchParams();
      form.querySelectorAll('.tones input[name]').forEach((field) => {
        if (field.type !== 'checkbox' || field.checked) query.set(field.name, field.value);
      });
      query.set('frame', form.querySelector('[name=reference]').value || form.dataset.reference);
      query.set('run', form.querySelector('[name=base]').value);
      fetch(form.dataset.trial + '?' + query).then((answer) => {
        if (!answer.ok) return Promise.reject(new Error(answer.status));
        return answer.blob();
      }).then((blob) => {
        const address = URL.createObjectURL(blob);
        after.addEventListener('load', () => URL.revokeObjectURL(address), { once: true });
        after.src = address;
        said.textContent = '';
      }).catch(() => { said.textContent = '(these values cannot be tried)'; });
    }
  }
})();
