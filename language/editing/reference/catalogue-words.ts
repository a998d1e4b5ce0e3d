/** Parts, properties and computed quantities as entries of the list of words. */
import type { Freeze, PlausibleRange, Property, ValueKind } from '../../catalogue/property.js';
import { stageTitle } from '../../catalogue/stage-titles.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { DerivedQuantity } from '../../recipes/evaluation/derived-quantity.js';
import type { Workshop } from '../../recipes/workshop.js';
import { cited } from '../../wording/cited.js';
import { english, type Wording } from '../../wording/wording.js';
import type { Entry } from './entry.js';

type MoreWords = (path: string) => readonly string[];

export function partsOf({ catalogue, wording: { text, say } }: Workshop, more: MoreWords): readonly Entry[] {
  return catalogue.parts.map(({ path, sentence, synonyms, members }) => ({
    section: 'part',
    word: path,
    sentence: text(sentence),
    takes: '{ … }',
    more: members ? [say`Usual names: ${members.join(', ')}.`] : [],
    also: [...new Set([...synonyms, ...more(path)])],
  }));
}

export function propertiesOf({ catalogue, wording }: Workshop, more: MoreWords): readonly Entry[] {
  return catalogue.all.map((property) => ({
    section: 'property',
    word: property.path,
    sentence: wording.text(property.sentence),
    takes: takesOf(property, wording),
    more: [...rangesOf(property, wording), ...freezeOf(property.freeze, wording), placesOf(property, wording)],
    also: [...new Set([...property.synonyms, ...more(property.path)])],
  }));
}

export function quantitiesOf(workshop: Workshop): readonly Entry[] {
  const { wording } = workshop;
  const kinds = ['recipe', 'wood', 'strings'] as const;
  return kinds.flatMap((kind) =>
    workshop.derivations(kind).all.map((quantity: DerivedQuantity): Entry => ({
      section: 'computed',
      word: quantity.path,
      sentence: wording.text(quantity.sentence),
      takes: quantity.unit,
      more: [
        wording.say`Of a ${wording.text(kind)}: ${wording.text(quantity.formula)} (${cited(quantity.source, wording)}).`,
      ],
      also: [],
    })),
  );
}

const TAKES: Readonly<Record<ValueKind, string>> = {
  quantity: english('quantity'),
  count: english('whole number'),
  ratio: english('number'),
  size: english('size'),
  point: english('point'),
  text: english('"text"'),
  choice: english('choice'),
  date: english('date'),
  list: english('list'),
  wood: english('name of a wood'),
  species: english('name of a species'),
  strings: english('name of strings'),
  rig: english('name of a rig'),
  model: english('name of a model'),
  part: english('name of a part'),
};

function takesOf({ kind, unit, choices, words }: Property, { text }: Wording): string {
  if (choices) return choices.join(' | ');
  const kindWord = kind === 'quantity' && unit !== undefined ? '' : text(TAKES[kind]);
  return [kindWord, unit ?? '', ...(words ?? []).map((word) => `| ${word}`)].filter((one) => one !== '').join(' ');
}

function rangesOf({ ranges, dimension, unit }: Property, wording: Wording): readonly string[] {
  const { say, text } = wording;
  const write = (si: number) => writeQuantity(si, dimension ?? DIMENSION.number, { unit });
  return ranges.map(({ low, high, typical, of, note, source }: PlausibleRange) => {
    const from = note === undefined ? cited(source, wording) : `${cited(source, wording)}; ${text(note)}`;
    return of === undefined
      ? say`Plausible: ${write(low)} to ${write(high)}, typically ${write(typical)} (${from}).`
      : say`Plausible for ${of.split(' ').join(', ')}: ${write(low)} to ${write(high)}, typically ${write(typical)} (${from}).`;
  });
}

function freezeOf(freeze: Freeze | undefined, wording: Wording): readonly string[] {
  const { say } = wording;
  if (!freeze) return [];
  return [
    freeze.costly && say`Re-work after: ${stageTitle(freeze.costly, wording)}.`,
    freeze.impossible && say`Fixed after: ${stageTitle(freeze.impossible, wording)}.`,
  ].filter((line) => line !== undefined);
}

function placesOf({ where }: Property, { say, text }: Wording): string {
  return say`Written in: ${where.map((kind) => text(kind)).join(', ')}.`;
}
