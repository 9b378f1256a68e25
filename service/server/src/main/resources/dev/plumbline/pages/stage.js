// SPDX-License-Identifier: Apache-2.0
// The frame on the screen: what part of it is seen and how large, the marks that a hand or the keys move, and the loupe.
// Points are pixels of the frame; (0, 0) is the outer corner of its top-left pixel.
import { svg } from './svg.js';

const TAP_PX = 6; // a finger that moves less has tapped
const HOLD_PX = 3; // a mark follows the hand from here on, so that a press alone does not move it
const LEAST = 0.05;
const MOST = 40;
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const TEN = 10;
const PAN_PX = 40;
const LOUPE_PX = 150;

export class Stage {
  /**
   * @param {SVGElement} picture
   * @param {SVGElement} loupe
   * @param {{moved: Function, settled: Function, placed: Function, removed: Function, viewed: Function, busy: Function}} told
   */
  constructor(picture, loupe, told) {
    this.picture = picture;
    this.loupe = loupe;
    this.told = told;
    this.view = { scale: 1, x: 0, y: 0 };
    this.size = { columns: 1, rows: 1 };
    this.image = svg('image', { preserveAspectRatio: 'none' });
    this.drawing = svg('g', { class: 'drawing' });
    this.handles = svg('g', { class: 'handles' });
    this.outside = svg('rect', { class: 'outside', width: '100%', height: '100%' });
    picture.append(this.outside, this.image, this.drawing, this.handles);
    this.lens = svg('image', { preserveAspectRatio: 'none' });
    this.cross = svg('path', { class: 'cross', d: `M0 75H66M84 75H150M75 0V66M75 84V150` });
    loupe.append(svg('rect', { class: 'outside', width: '100%', height: '100%' }), this.lens, this.cross);
    loupe.setAttribute('viewBox', `0 0 ${LOUPE_PX} ${LOUPE_PX}`);
    this.measure();
    this.byKey = new Map();
    this.hands = new Map(); // pointers that are down
    this.listen();
    new ResizeObserver(() => this.resized()).observe(picture);
  }

  /**
   * Measured when the size changes and not at every stroke. The unit is how large a letter is beside the usual one: people
   * enlarge it, and so does a very large screen.
   */
  measure() {
    this.width = this.picture.clientWidth;
    this.height = this.picture.clientHeight;
    this.unit = parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
  }

  /** Another picture; the view stays where it is, unless the size changes. */
  show(address, size) {
    const other = size.columns !== this.size.columns || size.rows !== this.size.rows;
    this.size = size;
    this.measure();
    for (const image of [this.image, this.lens]) image.setAttribute('href', address);
    if (other) this.fit();
    else this.paint();
  }

  /** Shows a part of the plane as large as it fits; the whole frame where none is given. */
  fit(box = { left: 0, top: 0, right: this.size.columns, bottom: this.size.rows }) {
    this.shown = box;
    const [wide, high] = [box.right - box.left, box.bottom - box.top];
    const room = 26; // for the ruler's figures and the labels at the edge
    const scale = Math.min((this.width - 12) / wide, (this.height - room - 6) / high);
    if (!(scale > 0)) return;
    this.view = {
      scale,
      x: (this.width - wide * scale) / 2 - box.left * scale,
      y: room + (this.height - room - 6 - high * scale) / 2 - box.top * scale,
    };
    this.paint();
  }

  resized() {
    this.measure();
    if (this.shown) this.fit(this.shown);
    else this.paint();
  }

  zoom(factor, at = { x: this.width / 2, y: this.height / 2 }) {
    const scale = Math.min(MOST, Math.max(LEAST, this.view.scale * factor));
    const by = scale / this.view.scale;
    this.view = { scale, x: at.x - (at.x - this.view.x) * by, y: at.y - (at.y - this.view.y) * by };
    this.shown = null;
    this.paint();
  }

  pan(x, y) {
    this.view = { ...this.view, x: this.view.x + x, y: this.view.y + y };
    this.shown = null;
    this.paint();
  }

  toScreen = (point) => ({
    x: point.column * this.view.scale + this.view.x,
    y: point.row * this.view.scale + this.view.y,
  });

  toFrame = (at) => ({
    column: (at.x - this.view.x) / this.view.scale,
    row: (at.y - this.view.y) / this.view.scale,
  });

  /** Where a mark is placed by the keys: in the middle of what is seen of the frame. */
  middle() {
    return this.onFrame(this.toFrame({ x: this.width / 2, y: this.height / 2 }));
  }

  onFrame(point) {
    const within = (value, most) => Math.min(most, Math.max(0, value));
    return { column: within(point.column, this.size.columns), row: within(point.row, this.size.rows) };
  }

  /** The marks that can be moved: key, point, kind, label; free ones may leave the frame. */
  setMarks(marks) {
    this.marks = marks;
    const keys = new Set(marks.map((mark) => mark.key));
    for (const [key, handle] of this.byKey) {
      if (!keys.has(key)) {
        handle.remove();
        this.byKey.delete(key);
      }
    }
    for (const mark of marks) if (!this.byKey.has(mark.key)) this.byKey.set(mark.key, this.handle(mark));
    for (const mark of marks) this.handles.append(this.ordered(mark.key));
    this.paintMarks();
  }

  /** Appending what is there already would take the focus from it. */
  ordered(key) {
    const handle = this.byKey.get(key);
    return handle.parentNode === this.handles ? document.createDocumentFragment() : handle;
  }

  handle(mark) {
    const handle = svg(
      'g',
      { class: `handle ${mark.kind} ${mark.of ? `of-${mark.of}` : ''}`, tabindex: '0', role: 'button', 'aria-roledescription': 'mark', 'data-key': mark.key },
      svg('circle', { class: 'hit', r: 17 }),
      svg('path', { class: 'halo', d: SYMBOLS[mark.kind] }),
      svg('path', { class: 'symbol', d: SYMBOLS[mark.kind] }),
    );
    handle.addEventListener('focus', () => this.look(mark.key));
    handle.addEventListener('blur', () => this.look(null));
    return handle;
  }

  focus(key) {
    this.byKey.get(key)?.focus({ preventScroll: true });
  }

  paint() {
    const { scale, x, y } = this.view;
    set(this.image, { x, y, width: this.size.columns * scale, height: this.size.rows * scale });
    this.image.classList.toggle('cells', scale >= 4);
    this.paintMarks();
    this.told.viewed();
  }

  paintMarks() {
    const { unit } = this;
    for (const mark of this.marks ?? []) {
      const handle = this.byKey.get(mark.key);
      const at = this.toScreen(mark.point);
      handle.setAttribute('transform', `translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) scale(${unit})`);
      const place = `column ${mark.point.column.toFixed(1)}, row ${mark.point.row.toFixed(1)}`;
      handle.setAttribute('aria-label', `${mark.label}, ${place}. Arrow keys move it by one pixel, with shift by ten.`);
    }
    this.paintLoupe();
  }

  look(key) {
    this.looked = key;
    this.paintLoupe();
  }

  /** Where the mark is, four times as large as on the screen and at least four screen pixels for one of the frame. */
  paintLoupe() {
    const mark = this.looked && (this.marks ?? []).find((each) => each.key === this.looked);
    this.loupe.toggleAttribute('hidden', !mark);
    if (!mark) return;
    const scale = Math.max(4, Math.min(MOST, this.view.scale * 4));
    set(this.lens, {
      x: LOUPE_PX / 2 - mark.point.column * scale,
      y: LOUPE_PX / 2 - mark.point.row * scale,
      width: this.size.columns * scale,
      height: this.size.rows * scale,
    });
    const at = this.toScreen(mark.point);
    this.loupe.classList.toggle('right', at.x < this.width / 2);
  }

  listen() {
    const { picture } = this;
    picture.addEventListener('pointerdown', (event) => this.down(event));
    picture.addEventListener('pointermove', (event) => this.move(event));
    picture.addEventListener('pointerup', (event) => this.up(event));
    picture.addEventListener('pointercancel', (event) => this.lost(event));
    picture.addEventListener('keydown', (event) => this.key(event));
    picture.addEventListener(
      'wheel',
      (event) => {
        event.preventDefault();
        this.zoom(Math.exp(-event.deltaY / 400), this.at(event));
      },
      { passive: false },
    );
  }

  at(event) {
    const box = this.picture.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  down(event) {
    if (event.button !== 0) return;
    const at = this.at(event);
    this.hands.set(event.pointerId, at);
    this.picture.setPointerCapture(event.pointerId);
    if (this.hands.size > 1) {
      this.drag = null;
      return;
    }
    const key = event.target.closest('.handle')?.dataset.key;
    const mark = key && this.marks.find((each) => each.key === key);
    this.start = at;
    this.drag = mark ? { key, free: mark.free, from: this.toScreen(mark.point) } : null;
    if (mark) {
      event.preventDefault();
      this.focus(key);
      this.told.busy(true);
    }
  }

  move(event) {
    const before = this.hands.get(event.pointerId);
    if (!before) return;
    const at = this.at(event);
    if (this.hands.size === 2) this.pinch(event.pointerId, before, at);
    else if (this.drag) this.dragged(at, event.timeStamp);
    else if (this.panning || distance(at, this.start) >= TAP_PX) {
      this.panning = true;
      this.pan(at.x - before.x, at.y - before.y);
    }
    this.hands.set(event.pointerId, at);
  }

  dragged(at, since) {
    const { from, key, free } = this.drag;
    if (!this.drag.goes && distance(at, this.start) < HOLD_PX) return;
    this.drag.goes = true;
    const point = this.toFrame({ x: from.x + at.x - this.start.x, y: from.y + at.y - this.start.y });
    this.told.moved(key, free ? point : this.onFrame(point), since);
  }

  pinch(id, before, at) {
    const [other] = [...this.hands].filter(([each]) => each !== id).map(([, where]) => where);
    const middle = { x: (at.x + other.x) / 2, y: (at.y + other.y) / 2 };
    const was = distance(before, other);
    if (was > 0) this.zoom(distance(at, other) / was, middle);
    this.pan((at.x - before.x) / 2, (at.y - before.y) / 2);
    this.panning = true;
  }

  up(event) {
    const tapped = this.hands.size === 1 && this.hands.has(event.pointerId) && !this.drag?.goes && !this.panning;
    const onMark = Boolean(this.drag);
    const point = this.onFrame(this.toFrame(this.at(event)));
    this.lost(event);
    if (tapped) this.told.placed(point, event.timeStamp, onMark);
  }

  lost(event) {
    this.hands.delete(event.pointerId);
    if (this.drag) {
      const { goes } = this.drag;
      this.drag = null;
      this.told.busy(false);
      if (goes) this.told.settled();
    }
    if (this.hands.size === 0) this.panning = false;
  }

  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = event.target.closest('.handle')?.dataset.key;
    const mark = key && this.marks.find((each) => each.key === key);
    if (KEYS[event.key]) {
      const by = event.shiftKey ? TEN : 1;
      const [x, y] = KEYS[event.key];
      if (mark) {
        const point = { column: mark.point.column + x * by, row: mark.point.row + y * by };
        this.told.moved(key, mark.free ? point : this.onFrame(point), event.timeStamp);
      } else this.pan(-x * PAN_PX, -y * PAN_PX);
    } else if (mark && (event.key === 'Delete' || event.key === 'Backspace')) this.told.removed(key);
    else if (mark && event.key === 'Escape') this.picture.focus();
    else if (!mark && event.key === 'Enter') this.told.placed(this.middle(), event.timeStamp);
    else if (event.key === '+') this.zoom(1.25);
    else if (event.key === '-') this.zoom(0.8);
    else return;
    event.preventDefault();
  }
}

const distance = (one, other) => Math.hypot(one.x - other.x, one.y - other.y);

function set(element, attributes) {
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value.toFixed(2));
}

/** Each kind of mark has a form of its own, so that none depends on its colour. */
const SYMBOLS = {
  target: 'M-9 0A9 9 0 1 0 9 0A9 9 0 1 0 -9 0M-15 0H-4M4 0H15M0 -15V-4M0 4V15',
  skin: 'M-6 -6H6V6H-6Z',
  midpoint: 'M0 -9V9M-6 -9H6',
  entry: 'M-7 0A7 7 0 1 0 7 0A7 7 0 1 0 -7 0M-2 0A2 2 0 1 0 2 0A2 2 0 1 0 -2 0',
  shaft: 'M-6 -6 6 6M-6 6 6 -6',
  tip: 'M0 -9 9 0 0 9 -9 0Z',
  hazard: 'M-7 0H7M0 -7V7',
  nerve: 'M-7 0H7M0 -7V7',
  edge: 'M-5 0A5 5 0 1 0 5 0A5 5 0 1 0 -5 0',
  scale: 'M-8 0H8M0 -5V5',
};
