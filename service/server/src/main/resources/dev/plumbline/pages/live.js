// SPDX-License-Identifier: Apache-2.0
// Questions that follow a hand: one is under way at a time, the newest waits, those between are left out. The answer that
// is drawn is always of the newest marks that were asked about.
import { NoAnswer, post, Problem } from './service.js';

const STALE_MS = 400; // an older question is given up for a newer one; a design choice
const AGAIN_MS = 2_000;

export class Live {
  /**
   * @param {(outcome: {answer?: object, problem?: Problem, silent?: boolean, asked: object}) => void} told
   * @param {(yes: boolean) => void} asking whether an answer is still to come
   */
  constructor(told, asking) {
    this.told = told;
    this.asking = asking;
    this.running = null;
    this.waiting = null;
    this.retry = 0;
  }

  /** @param {{path: string, body: object, since: number}} question since: when the hand moved, on the page's clock */
  ask(question) {
    clearTimeout(this.retry);
    this.waiting = question;
    this.asking(true);
    if (!this.running) this.next();
    else if (performance.now() - this.running.began > STALE_MS) this.running.control.abort();
  }

  /** Nothing that was asked matters any more. */
  forget() {
    clearTimeout(this.retry);
    this.waiting = null;
    this.running?.control.abort();
  }

  async next() {
    const question = this.waiting;
    this.asking(Boolean(question));
    if (!question) return;
    this.waiting = null;
    const control = new AbortController();
    this.running = { control, began: performance.now() };
    try {
      const { body } = await post(question.path, question.body, { signal: control.signal });
      if (!control.signal.aborted) this.told({ answer: body, asked: question });
    } catch (problem) {
      this.failed(problem, question);
    }
    this.running = null;
    this.next();
  }

  failed(problem, question) {
    if (problem instanceof Problem) {
      this.told({ problem, asked: question });
    } else if (problem instanceof NoAnswer) {
      this.told({ silent: true, asked: question });
      if (!this.waiting) this.retry = setTimeout(() => this.ask(question), AGAIN_MS);
    } else if (problem.name !== 'AbortError') {
      throw problem;
    }
  }
}
