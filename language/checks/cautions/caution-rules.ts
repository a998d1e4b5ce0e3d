/**
 * Cautions, each once at the place it matters: what can hurt someone or break a law. They advise; they certify nothing.
 * Nothing is wrong with the line they stand at, so they are hints; hovers and sheets say them as well.
 */
import { cautionsOnQuantity, cautionsOnValue } from '../../catalogue/cautions.js';
import type { Definition, Span, Value } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import { EVERY_KIND, type Rule } from '../rule.js';

export const SENSITISED: Rule = {
  code: 'sensitised',
  severity: 'warning',
  title: 'A wood someone in this shop no longer tolerates',
  reason:
    'Becoming allergic to a wood stays, and its relatives then act too. The shop has listed this wood or material; think twice before it is cut here.',
  bad: `shop marram { sensitised: cocobolo, rosewood }
model tarn { back.wood: indian-rosewood }`,
  good: `shop marram { sensitised: cocobolo, rosewood }
model tarn { back.wood: black-walnut }`,
  of: ['model', 'recipe', 'appointments', 'order', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const shop = workshop.shelf.shop();
    const listed = shop ? wordsOf(workshop.stated(shop).get('sensitised')?.value) : [];
    if (!shop || listed.length === 0) return;
    for (const { property, values } of workshop.written(definition)) {
      for (const { as, value } of values) {
        if (as === 'old') continue;
        for (const word of wordsOf(value)) {
          const species = property?.kind === 'wood' ? (workshop.speciesOf(word)?.name.text ?? word) : word;
          const item = listed.find((one) => isOrHolds(species, one));
          if (item === undefined) continue;
          const what = species === word ? word : `${word} (${species})`;
          report(
            value.span,
            say`${what}: ${shop.name.text} lists ${item} among what someone there no longer tolerates. Use another, or let someone else cut and sand it under extraction.`,
            {
              related: [{ place: { definition: shop, span: shop.name.span }, message: say`the shop’s list` }],
            },
          );
        }
      }
    }
  },
};

export const DUST_CAUTION: Rule = {
  code: 'dust-caution',
  severity: 'hint',
  title: 'A wood whose dust can make people ill',
  reason:
    'Some woods sensitise skin, eyes or lungs, a few people for life. It is said once for each species in a folder. Ask a doctor, and follow the rules on dust where you are.',
  bad: `wood walnut-22 is black-walnut { use: back }`,
  good: `wood fir-2 is douglas-fir { use: brace }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, text } = workshop.wording;
    for (const { species, span } of speciesMet(definition, workshop)) {
      const dust = textOf(species, 'dust', workshop);
      if (dust === undefined) continue;
      report(
        span,
        say`${species.name.text}: ${sentence(text(dust))} Take its dust off at the source and wear a mask.`,
        { related: [{ place: { definition: species, span: species.name.span }, message: say`with its source` }] },
      );
    }
  },
};

export const TRADE_CAUTION: Rule = {
  code: 'trade-caution',
  severity: 'hint',
  title: 'A wood whose trade is regulated',
  reason:
    'Some woods need papers before they, or the guitar, cross a border. It is said once for each species in a folder, with the day it was looked up. Listings change: ask your national authority.',
  bad: `wood rosewood-4 is indian-rosewood { use: back }`,
  good: `wood walnut-22 is black-walnut { use: back }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { species, span } of speciesMet(definition, workshop)) {
      const trade = textOf(species, 'trade', workshop);
      if (trade === undefined || /^not listed\b/i.test(trade)) continue;
      report(span, `${species.name.text}: ${sentence(workshop.wording.text(trade))}`, {
        related: [{ place: { definition: species, span: species.name.span }, message: say`with its source` }],
      });
    }
  },
};

export const MATERIAL_CAUTION: Rule = {
  code: 'material-caution',
  severity: 'hint',
  title: 'A material to handle with care',
  reason:
    'Finishes burn or harm the lungs, some glues sensitise, bone and shell make sharp dust. One short word where the material is chosen; the maker’s data sheet says the rest.',
  bad: `model tarn { finish { system: nitrocellulose } }`,
  good: `model tarn { finish { system: wax } }`,
  of: ['model', 'recipe', 'appointments', 'order', 'build'],
  check(definition, workshop, report) {
    const said = new Set<string>();
    for (const { canonical, property, values, statement, role } of workshop.written(definition)) {
      if (role !== 'value' || property?.kind === 'wood') continue;
      for (const { as, value } of values) {
        // A model's own strings are no other set.
        if (as === 'old' || (canonical === 'strings' && statement.kind !== 'change')) continue;
        for (const word of wordsOf(value)) {
          for (const { key, text } of cautionsOnValue(canonical, word)) {
            if (said.has(key)) continue;
            said.add(key);
            report(value.span, sentence(workshop.wording.text(text)));
          }
        }
      }
    }
  },
};

export const DESIGN_AID: Rule = {
  code: 'design-aid',
  severity: 'hint',
  title: 'A figure that is an aid, not a promise',
  reason:
    'Strength, tension and rotation are computed from simple formulas. They help to compare one guitar with another; none shows that a top will survive.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { expect bridge.torque: below 20 N·m }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { expect top.mass: below 190 g }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const said = new Set<string>();
    for (const { canonical, role, path } of workshop.written(definition)) {
      if (role !== 'quantity') continue;
      for (const { key, text } of cautionsOnQuantity(canonical)) {
        if (said.has(key)) continue;
        said.add(key);
        report(path.span, sentence(workshop.wording.text(text)));
      }
    }
  },
};

/** Species this definition is the first of the folder to bring in: a set of it, or the bare species in a plate. */
function* speciesMet(definition: Definition, workshop: Workshop): Iterable<{ species: Definition; span: Span }> {
  const { relation, kind } = definition;
  if (kind === 'wood' && relation) {
    const species = workshop.shelf.find('species', relation.target.text);
    const first = workshop.shelf.targeting('wood', relation.target.text)[0];
    if (species && first === definition) yield { species, span: relation.target.span };
    return;
  }
  if (kind !== 'recipe' && kind !== 'model') return;
  const met = new Set<Definition>();
  for (const { property, values } of workshop.written(definition)) {
    if (property?.kind !== 'wood') continue;
    for (const { as, value } of values) {
      if (as === 'old' || value.kind !== 'name' || workshop.shelf.find('wood', value.name)) continue;
      const species = workshop.shelf.find('species', value.name);
      // Where a set of the species is defined, it is said there.
      if (!species || met.has(species) || workshop.shelf.targeting('wood', value.name).length > 0) continue;
      met.add(species);
      yield { species, span: value.span };
    }
  }
}

function textOf(species: Definition, path: string, workshop: Workshop): string | undefined {
  const value = workshop.stated(species).get(path)?.value;
  return value?.kind === 'text' && value.text.trim() !== '' ? value.text.trim() : undefined;
}

function wordsOf(value: Value | undefined): readonly string[] {
  if (value?.kind === 'list') return value.items.flatMap(wordsOf);
  if (value?.kind === 'name') return [value.name];
  return value?.kind === 'text' ? [value.text] : [];
}

/** `indian-rosewood` is a `rosewood`; "epoxy, fast" holds `epoxy`. */
function isOrHolds(text: string, item: string): boolean {
  const parts = (one: string) =>
    ` ${one
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, ' ')
      .trim()} `;
  return parts(text).includes(parts(item));
}

function sentence(text: string): string {
  return /[.?!]$/.test(text) ? text : `${text}.`;
}

/** The codes of what advises care. */
export const CAUTION_CODES: ReadonlySet<string> = new Set(
  [SENSITISED, DUST_CAUTION, TRADE_CAUTION, MATERIAL_CAUTION, DESIGN_AID].map(({ code }) => code),
);
