import { expect, test } from 'vitest';
import { countReadings, sentence } from './derivations.js';

test('whatever the grammar allows, it allows in one way only', () => {
  let state = 20260314;
  const choose = (n: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
  const seen = new Set<string>();
  for (let i = 0; i < 4000; i++) {
    const tokens = sentence('Body', choose, 14);
    seen.add(tokens.join(' '));
    expect(countReadings('Body', tokens), tokens.join(' ')).toBe(1);
  }
  // The sentences differ and use the whole language.
  expect(seen.size).toBeGreaterThan(1000);
  const words = new Set([...seen].flatMap((one) => one.split(' ')));
  for (const word of ['change', 'hold', 'per', 'ARROW', 'TIMES', 'DOTS', 'PLUS_MINUS', '(', 'DATE', 'EOL']) {
    expect(words).toContain(word);
  }
});

test('the count notices two readings', () => {
  // Quantities are parts side by side, so a number after a number is one reading only.
  expect(countReadings('Quantity', ['NUMBER', 'UNIT', 'NUMBER', 'UNIT'])).toBe(1);
  expect(countReadings('Body', ['{', 'PATH', ':', 'below', '}'])).toBe(1);
  expect(countReadings('Body', ['{', 'PATH', ':', '}'])).toBe(0);
});
