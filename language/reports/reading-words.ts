/** The conditions of a reading as a maker would jot them down: `strung, strings damped, day 30, 44 %RH`. */
import type { Condition, Reading } from '../recipes/builds/builds.js';
import { daysStrung } from '../recipes/builds/evidence.js';
import type { Held } from '../recipes/instrument/instrument.js';
import type { Wording } from '../wording/wording.js';
import { writeInShopUnit } from './shop-values.js';

export function conditionsInWords(reading: Reading, wording: Wording): string {
  const days = daysStrung(reading);
  const words = ORDER.flatMap((condition) => {
    const held = reading.conditions.get(condition);
    return held ? [inWords(condition, held, wording)] : [];
  });
  if (days !== undefined) words.push(wording.say`day ${Math.round(days)}`);
  return words.filter((word) => word !== '').join(', ');
}

const ORDER: readonly Condition[] = [
  'stage',
  'strings-damped',
  'rig',
  'humidity',
  'temperature',
  'moisture',
  'method',
  'held',
];

function inWords(condition: Condition, held: Held, { say, text }: Wording): string {
  const value = writeInShopUnit(condition, held.value, 'build');
  if (condition === 'strings-damped') return value === 'no' ? text('strings ringing') : text('strings damped');
  if (condition === 'rig') return say`rig ${value}`;
  return condition === 'stage' ? text(value.replaceAll('-', ' ')) : value;
}
