// SPDX-License-Identifier: Apache-2.0
// What the page for marking knows, in one place: the case being marked, and what is on the screen.
import { MarkedCase, sameFrame } from './marked-case.js';

export const id = (name) => document.getElementById(name);

export const model = new MarkedCase();

export const page = {
  step: 'plan',
  tool: 'target',
  shown: null, // the frame on the screen
  counts: new Map(), // frames of each object
  pixel: null, // size of a pixel in mm, where the frame tells it
  scaleless: false,
  study: null,
  answer: null,
  refusal: null,
  needles: [],
  busy: false, // a hand holds a mark
  appending: false, // an observation is on its way
  keptOne: false, // the observation on the screen is kept
  observing: false, // a frame is being chosen for the observation
  signed: false,
  fitted: false,
  timer: 0,
  since: null, // when the hand moved that the next question follows
};

/** The frame that the marks of this step lie on. */
export const marked = () => (page.step === 'observation' && model.state.observation.frame) || model.state.frame;
export const onMarked = () => page.shown && sameFrame(page.shown, marked());

export function say(name, text) {
  id(name).textContent = text;
  id(name).hidden = text === '';
}
