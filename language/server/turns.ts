/**
 * Who comes first: a request that is waiting, or work nobody has asked for yet. Messages are taken in one by one, each in a
 * turn of the event loop of its own, and a timer that is due comes before them; so work that is only put off by a timer would
 * be done between a keystroke and the hover sent right behind it.
 */

/** However many requests come, findings wait no longer than this, ms. */
const PATIENCE = 60;

export class Turns {
  private answered = 0;

  /** To be called at each request. */
  note(): void {
    this.answered++;
  }

  /** Does a piece of work once a turn has gone by in which no request came. */
  whenQuiet(work: () => void): void {
    const start = performance.now();
    const look = (before: number) => {
      setTimeout(() => {
        const isQuiet = this.answered === before || performance.now() - start > PATIENCE;
        if (isQuiet) work();
        else look(this.answered);
      }, 0);
    };
    // What was read together with the keystroke has its turn only after the first timer.
    look(NEVER);
  }
}

const NEVER = -1;
