/**
 * A shop to start from: three short files in which every line is valid and says why it is there. Sizes are common ones of
 * the trade, from memory, inside the plausible ranges of the catalogue; they are a beginning, not a design.
 */
import type { BookmatchParser } from '../../recipes/shelf/reader.js';
import { formatted } from '../formatting/formatting.js';
import { sizesOf, type Sizes } from './starter-sizes.js';

export interface StarterAnswers {
  /** As people write it: `Hollin Reach Instruments`. */
  readonly shop: string;
  readonly units: 'metric' | 'inch';
  readonly kind: 'steel-string' | 'classical';
  /** As people write it: `Concert No. 1`. */
  readonly model: string;
}

export interface StarterFile {
  readonly name: string;
  readonly text: string;
}

/** The files in the order in which they are best read; the last is the one to open. */
export function starterShop(answers: StarterAnswers, parser: BookmatchParser): readonly StarterFile[] {
  const model = nameFor(answers.model, 'first-model');
  const sizes = sizesOf(answers.kind, answers.units);
  const last = model === 'shop' || model === 'woods' ? `model-${model}` : model;
  const files = [
    { name: 'shop.bookmatch', text: shopText(answers, sizes) },
    { name: 'woods.bookmatch', text: woodsText(sizes) },
    { name: `${last}.bookmatch`, text: modelText(model, answers, sizes) },
  ];
  // Inches are wider than millimetres: columns are set here as they are for anybody's text.
  return files.map(({ name, text }) => ({ name, text: formatted(text, parser) }));
}

/** A name of the language from words as people write them: small letters and digits of any alphabet, hyphens between. */
export function nameFor(words: string, otherwise: string): string {
  const name = words
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{Nd}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  if (name === '') return otherwise;
  // A name may be any word; these four are left to what they join.
  return /^(\d|(is|for|from|of)$)/.test(name) ? `no-${name}` : name;
}

function shopText({ shop, units }: StarterAnswers, { strings, tolerance }: Sizes): string {
  return `// What holds for everything made here. Whatever does not fit your shop: change it.

shop ${nameFor(shop, 'my-shop')} {
  title: ${quoted(shop.trim() || 'My shop')}
  units: ${units}   // sheets are printed so; you may write either, with its unit
  climate { humidity: 45 %RH   temperature: 20 °C }   // what the shop is kept at
  tolerance { ${tolerance} }   // how closely you make and weigh things
  vary at most 1   // one change an instrument, or nobody can say which did what
}

// Diameters from the highest string to the lowest, from the packet.
strings first-set {
${strings.map((line) => `  ${line}`).join('\n')}
}
`;
}

function woodsText({ top, blank, moreBlank, braces }: Sizes): string {
  return `// The wood on the shelf. A set is measured once, as a free blank: size, mass, and the notes it gives when tapped.
// The numbers here are examples: put your own in their place. What is not measured comes from the species library.

wood first-top is ${top} {
  use: top
${blank.map((line) => `  ${line}`).join('\n')}
}

wood second-top is ${top} {
  use: top
${moreBlank.map((line) => `  ${line}`).join('\n')}
}

wood brace-stock is sitka-spruce {
  use: brace
  ${braces}
}
`;
}

function modelText(model: string, { kind }: StarterAnswers, sizes: Sizes): string {
  const { body, bracing, backBracing, bridge, rest, thickness, thinner, mass } = sizes;
  const indented = (lines: readonly string[], by: string) => lines.map((line) => `${by}${line}`).join('\n');
  return `// What every ${model} has in common.

model ${model} {
  kind: ${kind}
${indented(body, '  ')}

  // Places on the top: distance from the tail, then from the centre line, the bass side negative.
  bracing {
${indented(bracing, '    ')}
  }
  back-bracing {
${indented(backBracing, '    ')}
  }

${indented(bridge, '  ')}
${indented(rest, '  ')}
  strings: first-set
}

// The first one. Everything after it is written as a difference.
recipe ${model}-1 for ${model} {
  because "The first of its line."
  top { wood: first-top   thickness: ${thickness} }
  expect top.mass: below ${mass}   // checked as you type
}

// The next: another set of the same wood, kept as stiff as the last. That counts as no change.
recipe ${model}-2 from ${model}-1 {
  because "The same again, from the next set."
  change top.wood: first-top -> second-top
  hold top.stiffness.along by top.thickness   // the thickness is worked out
}

// One thing changed, so that afterwards you know what did it.
recipe ${model}-3 from ${model}-1 {
  because "A thinner top, to learn what that does."
  change top.thickness: ${thickness} -> ${thinner}
}
`;
}

function quoted(text: string): string {
  return `"${text.replace(/[\r\n]+/g, ' ').replace(/["\\]/g, '\\$&')}"`;
}
