/** Values and lists in a maker's words, for messages and for text a fix writes. */
import { isNumber } from '../quantities/dimension.js';
import { writeAsText, writeQuantity } from '../quantities/write.js';
import type { Effect } from '../recipes/evaluation/effects.js';
import type { DerivedQuantity } from '../recipes/evaluation/evaluation.js';
import type { DefinitionKind, QuantityValue, Value } from '../facts/facts.js';
import { valueText } from '../recipes/instrument/value-text.js';
import { english, type Wording } from '../wording/wording.js';

/** A value as recipe text: what was written, or for a computed one the figure with the digits it deserves. */
export function writeValue(value: Value): string {
  return valueText(value, writeNumber);
}

function writeNumber(value: QuantityValue): string {
  if (value.written !== '') return value.written;
  const { quantity } = value;
  return quantity.unit === undefined && isNumber(quantity.dimension)
    ? String(Number(quantity.si.toPrecision(6)))
    : quantity.tolerance === undefined
      ? writeQuantity(quantity.si, quantity.dimension, { unit: quantity.unit })
      : writeAsText(quantity);
}

/** A computed quantity in the unit it is shown in. */
export function shown(si: number, quantity: DerivedQuantity, uncertainty?: number): string {
  return writeQuantity(si, quantity.dimension, { unit: unitOf(quantity), uncertainty });
}

/** A difference with its sign: `−8.6 g`, `+0.15 mm`. */
export function shownDifference(si: number, quantity: Pick<DerivedQuantity, 'dimension' | 'unit'>): string {
  return trueMinus(writeQuantity(si, quantity.dimension, { unit: unitOf(quantity), difference: true }));
}

/** What a change does to one quantity: `top.mass −8.6 g (−5 %)`. */
export function shownEffect(effect: Effect): string {
  const share = effect.before === 0 ? 0 : effect.difference / effect.before;
  const per = Math.abs(share) < 0.0005 ? '' : ` (${percent(share)})`;
  return `${effect.path} ${shownDifference(effect.difference, effect.quantity)}${per}`;
}

/** A share with its sign: `−5 %`, `+0.4 %`. */
export function percent(share: number): string {
  const value = share * 100;
  const text = Math.abs(value) >= 9.95 ? value.toFixed(0) : value.toFixed(1).replace(/\.0$/, '');
  return trueMinus(`${value > 0 ? '+' : ''}${text} %`);
}

function trueMinus(text: string): string {
  return text.replace(/^-/, '−');
}

function unitOf(quantity: Pick<DerivedQuantity, 'unit'>): string | undefined {
  return quantity.unit === '' ? undefined : quantity.unit;
}

/** A question after near matches; nothing where there are none. */
export function suggestion(near: readonly string[], { say, or }: Wording): string {
  return near.length > 0 ? say`Did you mean ${or(near)}?` : '';
}

/** `a recipe`, `an order`, `a set of strings`. */
export function aKind(kind: DefinitionKind, { text }: Wording): string {
  return text(KIND_WORDS[kind]);
}

const KIND_WORDS: Readonly<Record<DefinitionKind, string>> = {
  shop: english('a shop'),
  species: english('a species'),
  wood: english('a wood'),
  model: english('a model'),
  recipe: english('a recipe'),
  build: english('a build'),
  rig: english('a rig'),
  strings: english('a set of strings'),
  appointments: english('a set of appointments'),
  order: english('an order'),
};
