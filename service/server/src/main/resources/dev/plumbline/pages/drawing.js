// SPDX-License-Identifier: Apache-2.0
// The plan and the observation over the frame, drawn from the service's answer. Nothing is computed here but places on the
// screen: every number shown is one that the service gave. Line forms say the same as the colours.
import { svg } from './svg.js';
import { quantity, tenth } from './words.js';

const LETTER = 7.4; // mean width of a letter of 13 px, enough to keep labels apart
const LINE = 16;
const TICK_MM = 5;
const RULER_BEYOND_MM = 5;

/**
 * @param {{answer: object|null, state: object, step: string, moved: boolean, toScreen: Function, width: number,
 *     height: number, unit: number, pixel: {mmPerColumn: number, mmPerRow: number}|null}} scene
 * @returns {SVGElement[]}
 */
export function drawing(scene) {
  const sheet = new Sheet(scene);
  sheet.structures();
  if (scene.answer) {
    sheet.plan();
    if (scene.step === 'observation') sheet.observation();
  }
  sheet.names();
  return sheet.nodes();
}

class Sheet {
  constructor(scene) {
    Object.assign(this, scene);
    this.lines = [];
    this.labels = [];
    this.taken = [];
    for (const mark of [this.state.marks.target, ...this.state.marks.skin]) if (mark) this.keepFree(mark, 14);
  }

  nodes() {
    return [...this.lines, ...this.labels];
  }

  keepFree(point, half) {
    const at = this.toScreen(point);
    this.taken.push({ left: at.x - half, right: at.x + half, top: at.y - half, bottom: at.y + half });
  }

  line(kind, ...points) {
    const d = points.map((point, i) => {
      const at = this.toScreen(point);
      return `${i ? 'L' : 'M'}${at.x.toFixed(2)} ${at.y.toFixed(2)}`;
    });
    this.path(kind, d.join(''));
    this.avoid(points);
  }

  path(kind, d) {
    this.lines.push(svg('path', { class: `under ${kind}`, d }), svg('path', { class: kind, d }));
  }

  /** Labels keep off a line: it is taken in pieces. */
  avoid(points) {
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [this.toScreen(points[i - 1]), this.toScreen(points[i])];
      const pieces = Math.min(80, Math.ceil(Math.hypot(a.x - b.x, a.y - b.y) / 10));
      for (let k = 0; k <= pieces; k++) {
        const [x, y] = [a.x + ((b.x - a.x) * k) / pieces, a.y + ((b.y - a.y) * k) / pieces];
        this.taken.push({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 });
      }
    }
  }

  /** Puts words near a place where they cover nothing, or leaves them out where there is no room: the table has them. */
  label(kind, text, point, prefer = ['right', 'left', 'below', 'above']) {
    const at = this.toScreen(point);
    if (at.x < -40 || at.x > this.width + 40 || at.y < -40 || at.y > this.height + 40) return;
    const wide = text.length * LETTER * this.unit;
    for (const gap of [9, 16, 30, 48, 70]) {
      for (const side of prefer) {
        const box = place(side, at, gap * this.unit, wide, LINE * this.unit);
        if (this.isFree(box)) {
          this.taken.push(box);
          this.labels.push(words(kind, text, box.left, box.bottom - 4 * this.unit));
          return;
        }
      }
    }
  }

  isFree(box) {
    const inside = box.left >= 2 && box.right <= this.width - 2 && box.top >= 2 && box.bottom <= this.height - 2;
    return (
      inside &&
      this.taken.every(
        (other) => box.right < other.left || box.left > other.right || box.bottom < other.top || box.top > other.bottom,
      )
    );
  }

  structures() {
    const { skin, hazards, nerves } = this.state.marks;
    if (skin.length > 1) this.line('skin', ...skin);
    const shapes = [...hazards.map((each) => ['hazard', each]), ...nerves.map((each) => ['nerve', each])];
    const tops = shapes.map(([kind, shape]) => this.structure(kind, shape));
    this.later = shapes.map(([kind, shape], i) => [kind, this.structureWords(kind, shape.name), tops[i]]);
  }

  structure(kind, shape) {
    if (shape.disc) {
      if (!this.pixel) return null;
      const { center, radiusMm } = shape.disc;
      const at = this.toScreen(center);
      const one = this.toScreen({ column: center.column + 1, row: center.row + 1 });
      const rx = (radiusMm / this.pixel.mmPerColumn) * (one.x - at.x);
      const ry = (radiusMm / this.pixel.mmPerRow) * (one.y - at.y);
      this.path(kind, `M${at.x - rx} ${at.y}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0`);
      this.taken.push({ left: at.x - rx, right: at.x + rx, top: at.y - ry, bottom: at.y + ry });
      return { column: center.column, row: center.row + radiusMm / this.pixel.mmPerRow };
    }
    this.line(kind, ...shape.outline, shape.outline[0]);
    return shape.outline.reduce((best, point) => (point.row > best.row ? point : best));
  }

  /** Names of structures come last: numbers of the path go before them. */
  names() {
    for (const [kind, text, at] of this.later) if (at) this.label(kind, text, at, ['below', 'right', 'left', 'above']);
  }

  structureWords(kind, name) {
    const plan = this.answer?.plan;
    const list = kind === 'hazard' ? plan?.hazardClearances : plan?.nerveClearances;
    const found = (list ?? []).find((each) => each.name === name);
    const distance = kind === 'hazard' ? found?.clearanceMm : found?.pathMm;
    return distance && distance.value !== null ? `${name}, ${tenth(distance.value)} mm away` : name;
  }

  plan() {
    const { plan } = this.answer;
    const target = this.state.marks.target;
    if (plan.entryAt && target) {
      this.ruler(plan);
      const proposed = plan.source === 'proposed' ? ' proposed' : '';
      if (plan.firstSeenAt) {
        this.line(`planned hidden${proposed}`, plan.entryAt, plan.firstSeenAt);
        this.line(`planned${proposed}`, plan.firstSeenAt, target);
        this.firstSeen(plan.firstSeenAt);
      } else {
        this.line(`planned${proposed}`, plan.entryAt, target);
      }
      this.keepFree(plan.entryAt, 12);
      if (this.step === 'observation') this.entry(plan.entryAt);
      const angle = plan.angleToSkinDeg;
      if (angle?.value !== null) {
        const word = plan.source === 'proposed' ? 'Proposed' : 'Plan';
        this.label('planned', `${word} ${tenth(angle.value)}°`, along(plan.entryAt, target, 0.25), ['right', 'left', 'below']);
      }
    }
    if (target && this.step === 'observation') this.reticle(target);
    if (target && plan.targetDepthMm?.value != null) {
      this.label('planned', `target, ${tenth(plan.targetDepthMm.value)} mm deep`, target, ['left', 'below', 'right', 'above']);
    }
  }

  /** The plan's own marks, while those of the observation are moved. */
  entry(point) {
    const at = this.toScreen(point);
    this.path('planned', `M${at.x - 6} ${at.y}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0`);
  }

  reticle(point) {
    const { x, y } = this.toScreen(point);
    const ring = `M${x - 9} ${y}a9 9 0 1 0 18 0a9 9 0 1 0 -18 0`;
    this.path('planned', `${ring}M${x - 15} ${y}h11M${x + 4} ${y}h11M${x} ${y - 15}v11M${x} ${y + 4}v11`);
  }

  firstSeen(point) {
    const at = this.toScreen(point);
    this.path('planned', `M${at.x - 5} ${at.y - 5}h10v10h-10z`);
    this.keepFree(point, 8);
  }

  /** Millimetres along the skin from the probe's middle to beyond the entry: laid out between two places of the answer. */
  ruler(plan) {
    const middle = this.state.probe.midpoint;
    const mm = plan.entryDistanceMm?.value;
    if (!middle || !mm) return;
    const [zero, entry] = [this.toScreen(middle), this.toScreen(plan.entryAt)];
    const one = { x: (entry.x - zero.x) / mm, y: (entry.y - zero.y) / mm };
    const perMm = Math.hypot(one.x, one.y);
    if (!(perMm > 0)) return;
    const up = one.x >= 0 ? { x: one.y / perMm, y: -one.x / perMm } : { x: -one.y / perMm, y: one.x / perMm };
    const last = mm + Math.sign(mm) * RULER_BEYOND_MM;
    const at = (distance) => ({ x: zero.x + one.x * distance, y: zero.y + one.y * distance });
    const end = at(last);
    let d = `M${zero.x} ${zero.y}L${end.x} ${end.y}`;
    const apart = perMm * 10 < 26 * this.unit ? 20 : 10;
    for (let k = 0; k <= Math.abs(last); k += TICK_MM) {
      const point = at(Math.sign(mm) * k);
      const long = k % 10 === 0 ? 9 : 5;
      d += `M${point.x} ${point.y}l${up.x * long} ${up.y * long}`;
      if (k % apart === 0) this.figure(String(k), { x: point.x + up.x * 12, y: point.y + up.y * 12 });
    }
    this.path('ruler', d);
    this.avoid([middle, plan.entryAt]);
  }

  figure(text, at) {
    const wide = text.length * LETTER * this.unit;
    this.labels.push(words('ruler', text, at.x - wide / 2, at.y));
    this.taken.push({ left: at.x - wide / 2, right: at.x + wide / 2, top: at.y - LINE * this.unit, bottom: at.y });
  }

  observation() {
    const observed = (this.answer.observations ?? []).at(-1);
    const { shaft, tip } = this.state.observation;
    if (!observed) return;
    const deepest = tip ?? shaft.at(-1);
    if (observed.entryAt && deepest) {
      const first = shaft[0] ?? deepest;
      this.line('observed hidden', observed.entryAt, first);
      this.diamond(observed.entryAt);
    }
    if (shaft.length > 1) {
      this.rails(shaft[0], shaft.at(-1));
      if (tip) this.line('observed hidden', shaft.at(-1), tip);
    }
    const angle = observed.angleToSkinDeg;
    if (angle?.value != null && deepest && observed.entryAt) {
      const text = `Observed ${quantity(angle, '°').split(' ')[0]}°`;
      this.label('observed', text, along(observed.entryAt, deepest, 0.45), ['left', 'below', 'right', 'above']);
    }
    const depth = observed.tipDepthMm;
    if (tip && depth?.value != null) {
      this.keepFree(tip, 11);
      this.label('observed', `tip, ${tenth(depth.value)} mm deep`, tip, ['right', 'below', 'left', 'above']);
    }
  }

  /** Two lines beside the shaft, so that its own echo stays in view. */
  rails(from, to) {
    const [a, b] = [this.toScreen(from), this.toScreen(to)];
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    const off = { x: (-(b.y - a.y) / length) * 5, y: ((b.x - a.x) / length) * 5 };
    for (const side of [-1, 1]) {
      const [x, y] = [off.x * side, off.y * side];
      this.path('observed rail', `M${a.x + x} ${a.y + y}L${b.x + x} ${b.y + y}`);
    }
    this.avoid([from, to]);
  }

  diamond(point) {
    const at = this.toScreen(point);
    this.path('observed', `M${at.x} ${at.y - 6}l6 6 -6 6 -6 -6z`);
    this.keepFree(point, 9);
  }
}

const along = (from, to, part) => ({
  column: from.column + (to.column - from.column) * part,
  row: from.row + (to.row - from.row) * part,
});

function place(side, at, gap, wide, high) {
  const left = { right: at.x + gap, left: at.x - gap - wide, above: at.x - wide / 2, below: at.x - wide / 2 }[side];
  const top = { right: at.y - high / 2, left: at.y - high / 2, above: at.y - gap - high, below: at.y + gap }[side];
  return { left, right: left + wide, top, bottom: top + high };
}

const words = (kind, text, x, y) => svg('text', { class: `label ${kind}`, x: x.toFixed(1), y: y.toFixed(1) }, text);

/** Out-of-plane seen from the side: skin, beam, puncture and path, true to scale. */
export function sideView(picture, plan) {
  const distance = plan.punctureDistanceMm?.value;
  const depth = plan.targetDepthMm?.value;
  const known = distance != null && depth != null && distance > 0 && depth > 0;
  picture.toggleAttribute('hidden', !known);
  if (!known) return;
  const [wide, high] = [360, 210];
  const scale = Math.min((wide - 150) / distance, (high - 70) / depth, 6);
  const beam = 56;
  const skin = 44;
  const x = beam + distance * scale;
  const y = skin + depth * scale;
  picture.setAttribute('viewBox', `0 0 ${wide} ${high}`);
  const angle = plan.angleToSkinDeg?.value;
  picture.setAttribute(
    'aria-label',
    `From the side: puncture ${tenth(distance)} mm from the beam, target ${tenth(depth)} mm deep, ` +
      `${angle == null ? '' : `${tenth(angle)}°`}`,
  );
  picture.replaceChildren(
    svg('path', { class: 'skin', d: `M8 ${skin}H${wide - 8}` }),
    svg('path', { class: 'beam', d: `M${beam} ${skin}V${high - 8}` }),
    svg('path', { class: 'planned', d: `M${x} ${skin}L${beam} ${y}` }),
    svg('path', { class: 'planned', d: `M${x - 6} ${skin}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0` }),
    svg('path', { class: 'planned', d: `M${beam - 8} ${y}a8 8 0 1 0 16 0a8 8 0 1 0 -16 0M${beam - 13} ${y}h26M${beam} ${y - 13}v26` }),
    words('side', 'beam', beam - 36, high - 12),
    words('side', 'skin', 8, skin - 7),
    words('planned', `puncture, ${tenth(distance)} mm from the beam`, Math.min(x - 60, wide - 222), skin - 14),
    words('planned', `${tenth(depth)} mm deep`, beam + 20, Math.min(y + 16, high - 12)),
    ...(angle == null ? [] : [words('planned', `${tenth(angle)}°`, Math.min(x + 12, wide - 50), skin + 22)]),
  );
}
