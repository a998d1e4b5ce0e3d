/** A fast sample of the made-up shops; the whole is `node esbuild.config.mjs run tests/recipes/builds/simulate.ts`. */
import { describe, expect, it } from 'vitest';
import { median, tallyOf } from './simulation.js';

/** Two standard errors of a share of so many, beside what is asked for. (binomial) */
const slack = (share: number, of: number) => 2.6 * Math.sqrt((share * (1 - share)) / of);

describe('sixteen shops in which mechanics are right', () => {
  const tally = tallyOf('computed right', 16);

  it('hold the truth nineteen times in twenty', () => {
    expect(tally.builds / tally.effects).toBeGreaterThan(0.95 - slack(0.95, tally.effects));
    expect(tally.both / tally.effects).toBeGreaterThan(0.95 - slack(0.95, tally.effects));
  });

  it('are told together within less than what builds alone can say, and no false disagreement', () => {
    expect(median(tally.ratios)).toBeLessThan(0.65);
    expect(tally.falseAlarms / tally.effects).toBeLessThan(0.05);
  });
});

describe('sixteen shops in which every computed effect is half of what it should be', () => {
  const tally = tallyOf('computed half', 16);

  it('have it told in at least eight of ten where it can be seen', () => {
    expect(tally.wrong).toBeGreaterThan(10);
    expect(tally.wrongTold / tally.wrong).toBeGreaterThan(0.8 - slack(0.8, tally.wrong));
  });
});

describe('forty shops in which nothing matters', () => {
  it('raise no more false alarms than stated', () => {
    const tally = tallyOf('nothing', 40);
    expect(tally.shopsWithAlarm / 40).toBeLessThan(0.05 + slack(0.05, 40));
    expect(tally.builds / tally.effects).toBeGreaterThan(0.95 - slack(0.95, tally.effects));
  });
});
