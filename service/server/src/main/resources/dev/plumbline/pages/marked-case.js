// SPDX-License-Identifier: Apache-2.0
// The case while it is marked: what a person put where, with every step taken back one by one; and the case document that
// the service is asked with.

const EIGHTH = 8; // marks lie on eighths of a pixel, so that they stay what they are on every way
const UNDOS = 200;
const SAME_MOVE_MS = 1_000; // keys that follow one another so fast are one step

export const round = (point) => ({
  column: Math.round(point.column * EIGHTH) / EIGHTH,
  row: Math.round(point.row * EIGHTH) / EIGHTH,
});

const blank = () => ({
  approach: '', // nobody has said it
  frame: null,
  probe: {},
  marks: { target: null, skin: [], hazards: [], nerves: [] },
  scale: { from: null, to: null, distanceMm: null },
  targetKind: '',
  needle: null,
  intent: null,
  band: { low: null, high: null },
  context: {},
  observation: { frame: null, shaft: [], tip: null, tipIsTip: false, phase: '', punctureDistanceMm: null },
});

export class MarkedCase {
  constructor() {
    this.state = blank();
    this.steps = [];
    this.kept = []; // observations that the service holds; they stand
    this.rest = {}; // of the case that is held, what this page does not set
  }

  /** Changes the state; what is done under the same name in one go is one step. */
  change(name, work) {
    const last = this.steps.at(-1);
    const goesOn = last && last.name === name && performance.now() - last.at < SAME_MOVE_MS;
    if (!goesOn) this.steps.push({ name, before: structuredClone(this.state), at: 0 });
    this.steps.at(-1).at = performance.now();
    if (this.steps.length > UNDOS) this.steps.shift();
    work(this.state);
  }

  /** The step is over; what comes next is another one, whatever its name. */
  settle() {
    const last = this.steps.at(-1);
    if (last) last.at = -Infinity;
  }

  undo() {
    const last = this.steps.pop();
    if (last) this.state = last.before;
    return Boolean(last);
  }

  /** Begins on another frame. */
  begin(frame, probe) {
    this.state = blank();
    this.state.frame = frame;
    this.state.probe = probe;
    this.steps = [];
    this.kept = [];
    this.rest = {};
  }

  /** The frame reference, with the scale a person stated where there is one. */
  frame(frame = this.state.frame) {
    const { from, to, distanceMm } = this.state.scale;
    const plain = { sopInstanceUid: frame.sopInstanceUid, frameNumber: frame.frameNumber };
    return from && to && distanceMm > 0 ? { ...plain, scale: { from, to, distanceMm } } : plain;
  }

  marks() {
    const { target, skin, hazards, nerves } = this.state.marks;
    const marks = { target };
    if (this.state.targetKind) marks.targetKind = this.state.targetKind;
    if (skin.length > 1) marks.skin = skin;
    if (nerves.length) marks.nerves = nerves;
    if (hazards.length) marks.hazards = hazards;
    return marks;
  }

  /** Each part of the case document as it is to stand; null where nothing is said. */
  parts() {
    const { probe, needle, intent, band, context } = this.state;
    const orNull = (part) => (part && Object.keys(part).length ? part : null);
    const inBand = band.low !== null && band.high !== null && band.low < band.high;
    const others = this.rest.constraints ?? {};
    return {
      approach: this.state.approach ? { approach: this.state.approach } : null,
      frame: this.frame(),
      marks: this.marks(),
      probe: orNull(probe),
      needle: orNull(needle),
      intent: orNull(intent),
      constraints: orNull(inBand ? { ...others, angleBandDeg: [band.low, band.high] } : others),
      context: orNull(context),
    };
  }

  /** The observation being marked, if there is enough of it to be judged. */
  observation(id = 'obs-new') {
    const { frame, shaft, tip, tipIsTip, phase, punctureDistanceMm } = this.state.observation;
    const outOfPlane = this.state.approach === 'outOfPlane';
    if (outOfPlane ? !tip : shaft.length < 2 && !tip) return null;
    const observation = { id };
    if (phase) observation.phase = phase;
    if (frame && !sameFrame(frame, this.state.frame)) observation.frame = this.frame(frame);
    if (shaft.length > 1 && !outOfPlane) observation.shaft = shaft;
    if (tip) Object.assign(observation, { tip, tipIsTip });
    if (outOfPlane && punctureDistanceMm !== null) observation.punctureDistanceMm = punctureDistanceMm;
    return observation;
  }

  /** The whole document, with the observation being marked as the last one. */
  document(caseId = null) {
    const document = { schema: 'plumbline-case/1' };
    if (caseId) document.caseId = caseId;
    for (const [name, part] of Object.entries(this.parts())) {
      if (part !== null) document[name] = name === 'approach' ? part.approach : part;
    }
    return document;
  }

  /** Takes over a case that the service holds. */
  take(held) {
    this.state = blank();
    this.steps = [];
    const state = this.state;
    state.approach = held.approach ?? ''; // marks of other software do not tell it
    state.frame = { sopInstanceUid: held.frame.sopInstanceUid, frameNumber: held.frame.frameNumber ?? 1 };
    if (held.frame.scale) state.scale = structuredClone(held.frame.scale);
    state.probe = structuredClone(held.probe ?? {});
    const { target, targetKind, skin, hazards, nerves } = structuredClone(held.marks);
    state.marks = { target: target ?? null, skin: skin ?? [], hazards: hazards ?? [], nerves: nerves ?? [] };
    state.targetKind = targetKind ?? '';
    state.needle = structuredClone(held.needle ?? null);
    state.intent = structuredClone(held.intent ?? null);
    const [low, high] = held.constraints?.angleBandDeg ?? [null, null];
    state.band = { low, high };
    state.context = structuredClone(held.context ?? {});
    this.kept = held.observations ?? [];
    const { angleBandDeg, ...constraints } = held.constraints ?? {};
    this.rest = { constraints };
  }
}

export const sameFrame = (one, other) =>
  one.sopInstanceUid === other.sopInstanceUid && one.frameNumber === other.frameNumber;
