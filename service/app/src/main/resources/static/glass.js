// A composite in deep zoom, from static tiles named after IIIF Image API 3.0 (512 pixels, level 0). Places are pixels of the composite.
'use strict';
class Glass {
  static TILE = 512;
  static KEPT = 400;
  static LARGEST = 8;

  constructor(canvas) {
    this.canvas = canvas;
    this.context = canvas.getContext('2d');
    this.width = Number(canvas.dataset.width);
    this.height = Number(canvas.dataset.height);
    this.address = canvas.dataset.tiles;
    this.tiles = new Map();
    this.layer = null;
    this.strength = 0.65;
    this.around = null;
    this.outlines = [];
    this.picked = null;
    this.fingers = new Map();
    this.coarsest = 1;
    while (Math.max(this.width, this.height) / this.coarsest > Glass.TILE) this.coarsest *= 2;
    this.listen();
    new ResizeObserver(() => this.resize()).observe(canvas);
    this.resize();
    this.fit();
  }

  // ---- where one looks

  resize() {
    const ratio = window.devicePixelRatio || 1;
    const box = this.canvas.getBoundingClientRect();
    this.ratio = ratio;
    this.canvas.width = Math.max(1, Math.round(box.width * ratio));
    this.canvas.height = Math.max(1, Math.round(box.height * ratio));
    if (this.fitted) this.fit(); else this.draw();
  }

  fitScale() {
    return Math.min(this.canvas.width / this.width, this.canvas.height / this.height);
  }

  fit() {
    this.fitted = true;
    this.scale = this.fitScale();
    this.x = this.width / 2;
    this.y = this.height / 2;
    this.moved();
  }

  /** Looks at a place. Scale: screen pixels per pixel of the composite. */
  look(x, y, scale) {
    this.fitted = false;
    this.scale = Math.max(this.fitScale() / 2, Math.min(Glass.LARGEST * this.ratio, scale));
    this.x = Math.max(0, Math.min(this.width, x));
    this.y = Math.max(0, Math.min(this.height, y));
    this.moved();
  }

  /** Zooms so that the place under (px, py) of the canvas stays there. */
  zoom(factor, px, py) {
    const at = this.placeOf(px, py);
    const scale = Math.max(this.fitScale() / 2, Math.min(Glass.LARGEST * this.ratio, this.scale * factor));
    this.look(at.x - (px - this.canvas.width / 2) / scale, at.y - (py - this.canvas.height / 2) / scale, scale);
  }

  placeOf(px, py) {
    return {
      x: this.x + (px - this.canvas.width / 2) / this.scale,
      y: this.y + (py - this.canvas.height / 2) / this.scale,
    };
  }

  screenOf(place) {
    return {
      x: (place.x - this.x) * this.scale + this.canvas.width / 2,
      y: (place.y - this.y) * this.scale + this.canvas.height / 2,
    };
  }

  moved() {
    this.draw();
    this.canvas.dispatchEvent(new CustomEvent('look'));
  }

  // ---- what is drawn

  draw() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.paint();
    });
  }

  paint() {
    const c = this.context;
    c.setTransform(1, 0, 0, 1, 0, 0);
    c.fillStyle = '#d9d7d0';
    c.fillRect(0, 0, this.canvas.width, this.canvas.height);
    c.setTransform(this.scale, 0, 0, this.scale, this.canvas.width / 2 - this.x * this.scale, this.canvas.height / 2 - this.y * this.scale);
    c.imageSmoothingEnabled = this.scale < 3 * this.ratio;
    if (this.around) this.paintAround(c);
    let wanted = 1;
    while (wanted < this.coarsest && 2 * wanted * this.scale <= 1.2) wanted *= 2;
    for (let s = this.coarsest; s >= wanted; s /= 2) this.paintLevel(c, s, s === wanted || s === this.coarsest);
    if (this.layer) {
      c.globalAlpha = this.strength;
      c.imageSmoothingEnabled = false;
      c.drawImage(this.layer, 0, 0, this.width, this.height);
      c.globalAlpha = 1;
    }
    c.setTransform(1, 0, 0, 1, 0, 0);
    this.outlines.forEach((outline) => this.paintOutline(c, outline));
    if (this.picked) this.paintCross(c, this.screenOf(this.picked), 9, false);
    if (document.activeElement === this.canvas && this.canvas.matches(':focus-visible')) {
      this.paintCross(c, { x: this.canvas.width / 2, y: this.canvas.height / 2 }, 14, true);
    }
  }

  /** The reference frame that the composite was cropped from, dimmed. */
  paintAround(c) {
    const a = this.around;
    c.globalAlpha = 0.55;
    c.drawImage(a.image, -a.left, -a.top, a.width, a.height);
    c.globalAlpha = 1;
    c.lineWidth = 2 / this.scale;
    c.setLineDash([8 / this.scale, 5 / this.scale]);
    c.strokeStyle = '#22262a';
    c.strokeRect(-a.left, -a.top, a.width, a.height);
    c.setLineDash([]);
    c.strokeRect(0, 0, this.width, this.height);
  }

  paintLevel(c, s, ask) {
    const side = Glass.TILE * s;
    const left = Math.max(0, this.x - this.canvas.width / 2 / this.scale);
    const top = Math.max(0, this.y - this.canvas.height / 2 / this.scale);
    const right = Math.min(this.width, this.x + this.canvas.width / 2 / this.scale);
    const bottom = Math.min(this.height, this.y + this.canvas.height / 2 / this.scale);
    for (let y = Math.floor(top / side) * side; y < bottom; y += side) {
      for (let x = Math.floor(left / side) * side; x < right; x += side) {
        const tile = this.tile(x, y, s, ask);
        if (tile && tile.complete && tile.naturalWidth > 0) {
          c.drawImage(tile, x, y, Math.min(side, this.width - x), Math.min(side, this.height - y));
        }
      }
    }
  }

  tile(x, y, s, ask) {
    const w = Math.min(Glass.TILE * s, this.width - x);
    const h = Math.min(Glass.TILE * s, this.height - y);
    const name = x + ',' + y + ',' + w + ',' + h + '/' + Math.ceil(w / s) + ',' + Math.ceil(h / s) + '/0/default.jpg';
    let tile = this.tiles.get(name);
    if (!tile && ask) {
      if (this.tiles.size >= Glass.KEPT) this.tiles.delete(this.tiles.keys().next().value);
      tile = new Image();
      tile.addEventListener('load', () => {
        this.draw();
        this.canvas.dispatchEvent(new CustomEvent('tile'));
      });
      tile.src = this.address + name;
      this.tiles.set(name, tile);
    }
    return tile;
  }

  paintOutline(c, outline) {
    if (outline.places.length === 0) return;
    for (const [colour, width] of [['#fff', 4], ['#1f4e9c', 2]]) {
      c.strokeStyle = colour;
      c.lineWidth = width * this.ratio;
      c.beginPath();
      outline.places.forEach((place, i) => {
        const at = this.screenOf(place);
        if (i === 0) c.moveTo(at.x, at.y); else c.lineTo(at.x, at.y);
      });
      if (outline.closed) c.closePath();
      c.stroke();
      if (!outline.closed) {
        outline.places.forEach((place) => {
          const at = this.screenOf(place);
          c.strokeRect(at.x - 4 * this.ratio, at.y - 4 * this.ratio, 8 * this.ratio, 8 * this.ratio);
        });
      }
    }
  }

  paintCross(c, at, arm, open) {
    const from = open ? 4 * this.ratio : 0;
    const to = arm * this.ratio;
    for (const [colour, width] of [['#fff', 4], ['#22262a', 1.5]]) {
      c.strokeStyle = colour;
      c.lineWidth = width * this.ratio;
      c.beginPath();
      for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
        c.moveTo(at.x + dx * from, at.y + dy * from);
        c.lineTo(at.x + dx * to, at.y + dy * to);
      }
      c.stroke();
    }
  }

  // ---- hands and keys

  listen() {
    const canvas = this.canvas;
    canvas.addEventListener('pointerdown', (event) => this.down(event));
    canvas.addEventListener('pointermove', (event) => this.move(event));
    for (const end of ['pointerup', 'pointercancel']) canvas.addEventListener(end, (event) => this.up(event));
    canvas.addEventListener('wheel', (event) => {
      event.preventDefault();
      const at = this.onCanvas(event);
      this.zoom(Math.exp(-event.deltaY * (event.deltaMode === 1 ? 0.05 : 0.0018)), at.x, at.y);
    }, { passive: false });
    canvas.addEventListener('keydown', (event) => this.key(event));
    for (const change of ['focus', 'blur']) canvas.addEventListener(change, () => this.draw());
  }

  onCanvas(event) {
    const box = this.canvas.getBoundingClientRect();
    return { x: (event.clientX - box.left) * this.ratio, y: (event.clientY - box.top) * this.ratio };
  }

  down(event) {
    this.canvas.setPointerCapture(event.pointerId);
    this.fingers.set(event.pointerId, this.onCanvas(event));
    this.dragged = this.fingers.size > 1 ? Infinity : 0;
  }

  move(event) {
    const before = this.fingers.get(event.pointerId);
    if (!before) return;
    const now = this.onCanvas(event);
    if (this.fingers.size === 2) {
      const other = [...this.fingers].find(([id]) => id !== event.pointerId)[1];
      const wide = (a) => Math.hypot(a.x - other.x, a.y - other.y);
      this.zoom(wide(now) / Math.max(1, wide(before)), (now.x + other.x) / 2, (now.y + other.y) / 2);
    } else {
      this.dragged += Math.hypot(now.x - before.x, now.y - before.y);
      if (this.dragged > 4 * this.ratio) {
        this.look(this.x - (now.x - before.x) / this.scale, this.y - (now.y - before.y) / this.scale, this.scale);
      }
    }
    this.fingers.set(event.pointerId, now);
  }

  up(event) {
    const known = this.fingers.delete(event.pointerId);
    if (known && event.type === 'pointerup' && this.dragged <= 4 * this.ratio) {
      const at = this.onCanvas(event);
      this.pick(this.placeOf(at.x, at.y));
    }
  }

  pick(place) {
    if (place.x < 0 || place.y < 0 || place.x >= this.width || place.y >= this.height) return;
    this.canvas.dispatchEvent(new CustomEvent('pick', { detail: place }));
  }

  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = (event.shiftKey ? 10 : 60) * this.ratio / this.scale;
    const middle = [this.canvas.width / 2, this.canvas.height / 2];
    const deeds = {
      ArrowLeft: () => this.look(this.x - step, this.y, this.scale),
      ArrowRight: () => this.look(this.x + step, this.y, this.scale),
      ArrowUp: () => this.look(this.x, this.y - step, this.scale),
      ArrowDown: () => this.look(this.x, this.y + step, this.scale),
      '+': () => this.zoom(1.4, ...middle),
      '=': () => this.zoom(1.4, ...middle),
      '-': () => this.zoom(1 / 1.4, ...middle),
      0: () => this.fit(),
      1: () => this.look(this.x, this.y, this.ratio),
      Enter: () => this.pick({ x: this.x, y: this.y }),
    };
    if (deeds[event.key]) {
      event.preventDefault();
      deeds[event.key]();
    }
  }
}
