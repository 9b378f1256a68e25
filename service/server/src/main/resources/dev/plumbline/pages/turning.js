// SPDX-License-Identifier: Apache-2.0
// Turning from frame to frame: one at a time, the newest wish wins, the neighbours are fetched ahead.
import { id, marked, page } from './desk.js';
import { decoded } from './frames.js';
import { sameFrame } from './marked-case.js';

export class Turning {
  /** @param {{show: Function}} stage @param {{turned: () => void, guarded: Function}} told */
  constructor(stage, told) {
    this.stage = stage;
    this.told = told;
    this.work = Promise.resolve();
    this.wanted = 0;
  }

  /** Shows a frame once its picture is there. */
  async to(uid, number) {
    const address = rendered(uid, number);
    const size = await decoded(address);
    page.shown = { sopInstanceUid: uid, frameNumber: number };
    this.stage.show(address, size);
    const count = page.counts.get(uid) ?? 1;
    id('cine').hidden = count < 2 && sameFrame(page.shown, marked());
    id('cine-number').max = count;
    id('cine-number').value = number;
    id('cine-text').textContent = `frame ${number} of ${count}`;
    for (const other of [number + 1, number - 1]) {
      if (other >= 1 && other <= count) new Image().src = rendered(uid, other);
    }
    this.told.turned();
  }

  /** Another frame of the same run; those that a hand has passed by are left out. */
  within(number) {
    const uid = page.shown.sopInstanceUid;
    if (number < 1 || number > page.counts.get(uid)) return;
    this.wanted = number;
    this.work = this.work.then(() =>
      this.wanted === number ? this.told.guarded(() => this.to(uid, number)) : undefined,
    );
  }
}

const rendered = (uid, number) => `../v1/frames/${encodeURIComponent(uid)}/${number}/rendered`;
