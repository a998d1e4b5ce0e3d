/** What stands in while the solver is at work. */
import { expect, it } from 'vitest';
import { LastKnown } from '../../extension/panels/last-known.js';

interface Answer {
  readonly state: 'known' | 'waiting' | 'unknown';
  readonly what: string;
}
const answer = (state: Answer['state'], what = ''): Answer => ({ state, what });

it('the last known answer stands in while the next is worked out, marked as waiting', () => {
  const last = new LastKnown<Answer>();
  expect(last.of(['tarn-1', 'top'], answer('waiting'))).toEqual(answer('waiting'));
  expect(last.of(['tarn-1', 'top'], answer('known', 'first'))).toEqual(answer('known', 'first'));
  expect(last.of(['tarn-1', 'top'], answer('waiting'))).toEqual(answer('waiting', 'first'));
  expect(last.of(['tarn-1', 'top'], answer('known', 'second'))).toEqual(answer('known', 'second'));
});

it('not for another question, and not where the answer is that there is none', () => {
  const last = new LastKnown<Answer>();
  last.of(['tarn-1', 'top'], answer('known', 'first'));
  expect(last.of(['tarn-1', 'back'], answer('waiting'))).toEqual(answer('waiting'));
  expect(last.of(['tarn-1', 'top'], answer('unknown', 'no wood'))).toEqual(answer('unknown', 'no wood'));
  expect(last.of(['tarn-1', 'top'], null)).toBeNull();
});
