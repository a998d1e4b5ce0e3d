/**
 * Cautions: where work can hurt someone or break a law, the tool says so once, at the place it matters, with its source,
 * and defers to local rules and licensed practice. It never says that anyone complies with anything.
 */

/** A printed or shown page. */
export type Sheet = 'bench' | 'client' | 'care' | 'species' | 'comparison';

/** What makes a caution due. */
export type CautionTrigger =
  /** A property has one of these values (any value where none is listed). `*` in the path matches one word. */
  | { readonly kind: 'value'; readonly path: string; readonly values?: readonly string[] }
  /** A species definition says something under this property (`dust`, `trade`), which is shown with the caution. */
  | { readonly kind: 'species'; readonly property: 'dust' | 'trade' }
  /** A computed quantity is shown. */
  | { readonly kind: 'quantity'; readonly path: string }
  | { readonly kind: 'sheet'; readonly sheet: Sheet };

export interface Caution {
  /** Shown once for each key on a page, however often it falls due. */
  readonly key: string;
  readonly topic: 'dust' | 'finish' | 'glue' | 'strings' | 'machines' | 'trade' | 'design-aid' | 'bone-and-shell';
  readonly text: string;
  readonly source: string;
  readonly triggers: readonly CautionTrigger[];
}

/** Closes every sheet that carries a caution. */
export const DEFERRAL =
  'This sheet gathers workshop facts. It is not legal, medical or engineering advice. Rules differ by country and change: ' +
  'ask your national CITES and customs authority, your occupational-safety body and fire authority, read the makers’ ' +
  'safety data sheets, and see a licensed professional before you rely on it. Looked up 2026-11.';

const value = (path: string, ...values: readonly string[]): CautionTrigger =>
  values.length === 0 ? { kind: 'value', path } : { kind: 'value', path, values };
const sheet = (name: Sheet): CautionTrigger => ({ kind: 'sheet', sheet: name });
const quantity = (path: string): CautionTrigger => ({ kind: 'quantity', path });

export const CAUTIONS: readonly Caution[] = [
  {
    key: 'wood-dust',
    topic: 'dust',
    text:
      'Wood dust harms the lungs and can cause cancer of the nose. Take it off at the source, wear a fitted mask, never sweep dry or blow it. ' +
      'Limits over 8 hours differ: 1 mg/m³ is advised by NIOSH; 2 mg/m³ of hardwood in the EU, 3 mg/m³ in Great Britain when last seen; check the one in force where you are.',
    source:
      'IARC Monographs vol. 62 (1995); OSHA wood-dust evaluation page; Directive 2004/37/EC Annex III; British limit as reported in January 2020',
    triggers: [sheet('bench')],
  },
  {
    key: 'redcedar-dust',
    topic: 'dust',
    text: 'Western redcedar causes asthma in some people, which stays. Its advised dust limit was half that of other woods (0.5 mg/m³ over 8 hours); check the one in force where you are.',
    source: 'ACGIH TLV list of 2007 as quoted by OSHA; IARC Monographs vol. 62 (1995)',
    triggers: [
      value('top.wood', 'western-redcedar'),
      value('back.wood', 'western-redcedar'),
      value('lining.wood', 'western-redcedar'),
    ],
  },
  {
    key: 'sensitiser',
    topic: 'dust',
    text: 'This wood can sensitise. About 2 to 5 in a hundred people become allergic to such woods; it stays, and relatives of the wood then act too. Sanding is worse than planing. See a doctor if skin, eyes or breath react.',
    source: 'American Woodturner, June 1990, chart of woods and reactions; share of people from anzlf.com',
    triggers: [{ kind: 'species', property: 'dust' }],
  },
  {
    key: 'protected-species',
    topic: 'trade',
    text: 'Trade in this wood is, or may be, regulated. Keep the papers with the set; before it or the instrument crosses a border ask your national CITES and customs authority. Listings change at every conference: this one was looked up 2026-11, without sight of what the conference of 2025 changed.',
    source: 'CITES appendices as quoted beside the species',
    triggers: [{ kind: 'species', property: 'trade' }],
  },
  {
    key: 'plant-declaration',
    topic: 'trade',
    text: 'Some countries want genus, species, country of harvest and quantity of every plant part declared at import (in the USA under the Lacey Act). “Unknown” is not accepted there. Ask the customs authority of the country it goes to.',
    source: 'US Fish and Wildlife Service, musical-instrument fact sheet; 16 U.S.C. 3371–3378',
    triggers: [sheet('species')],
  },
  {
    key: 'bone-and-shell',
    topic: 'bone-and-shell',
    text: 'Dust of bone, shell and carbon fibre harms the lungs: work it wet, with a mask. Ivory, turtle shell and some shells are protected or need wildlife papers at a border; ask first.',
    source: 'from memory; common practice',
    triggers: [
      value('saddle.material', 'bone', 'shell', 'ivory', 'mother-of-pearl', 'abalone', 'tusk'),
      value('nut.material', 'bone', 'shell', 'ivory', 'mother-of-pearl', 'abalone', 'tusk'),
      value('bridge.pins.material', 'bone', 'ivory', 'shell', 'mother-of-pearl', 'tusk'),
      value('bracing.*.cap.material', 'carbon'),
      value('neck.stiffener.material', 'carbon', 'carbon fibre'),
      value('fingerboard.inlay', 'shell', 'mother-of-pearl', 'abalone', 'pearl', 'ivory', 'tusk'),
      value('headstock.inlay', 'shell', 'mother-of-pearl', 'abalone', 'pearl', 'ivory', 'tusk'),
      value('inlay', 'shell', 'mother-of-pearl', 'abalone', 'pearl', 'ivory', 'tusk'),
      value('rosette', 'shell', 'mother-of-pearl', 'abalone', 'pearl'),
      value('purfling', 'shell', 'mother-of-pearl', 'abalone', 'pearl'),
    ],
  },
  {
    key: 'nitrocellulose',
    topic: 'finish',
    text: 'Nitrocellulose lacquer and its solvents catch fire and explode easily and harm the nerves. Spray only in a booth made for it, with the mask its data sheet names; ask your fire authority.',
    source: 'common practice; safety data sheets, from memory',
    triggers: [value('finish.system', 'nitrocellulose'), value('finish.neck-system', 'nitrocellulose')],
  },
  {
    key: 'isocyanate',
    topic: 'finish',
    text: 'Two-pack polyurethane holds isocyanates: one exposure can end a career by asthma. It needs an air-fed mask and an enclosed booth, also for those nearby (one regulator names 0.25 to 0.5 m/s of air). Leave it to a licensed finisher unless you are one.',
    source: 'WorkSafe Victoria, safely spraying isocyanate paints',
    triggers: [value('finish.system', 'polyurethane-two-pack'), value('finish.neck-system', 'polyurethane-two-pack')],
  },
  {
    key: 'catalysed-and-uv',
    topic: 'finish',
    text: 'Catalysed lacquers give off formaldehyde; UV-cured polyester holds styrene or acrylates that sensitise, and the lamp harms eyes and skin. Follow the data sheet, with the mask, gloves and shields it names.',
    source: 'safety data sheets, from memory',
    triggers: [
      value('finish.system', 'acid-catalysed', 'uv-polyester'),
      value('finish.neck-system', 'acid-catalysed', 'uv-polyester'),
    ],
  },
  {
    key: 'oily-rags',
    topic: 'finish',
    text: 'Rags wet with drying oil heat themselves and catch fire hours later. Lay them out flat outside, or keep them under water in a metal bin with a lid.',
    source: 'common practice; from memory',
    triggers: [value('finish.system', 'oil', 'oil-varnish'), value('finish.neck-system', 'oil', 'oil-varnish')],
  },
  {
    key: 'spirit',
    topic: 'finish',
    text: 'Shellac is thinned with alcohol, which catches fire easily: no flame, no sparks, air moving.',
    source: 'common practice; from memory',
    triggers: [
      value('finish.system', 'french-polish', 'shellac'),
      value('finish.neck-system', 'french-polish', 'shellac'),
    ],
  },
  {
    key: 'glue',
    topic: 'glue',
    text: 'Epoxy sensitises skin; cyanoacrylate fumes sting eyes and lungs and bond skin at once; hot hide glue burns. Gloves, air, eye protection, as the data sheet says.',
    source: 'safety data sheets, from memory',
    triggers: [value('bracing.glue'), value('bridge.glue'), value('glue.*')],
  },
  {
    key: 'machines',
    topic: 'machines',
    text: 'Bandsaw, table saw, router and sander maim; a bending iron or blanket burns and can start a fire. Guards on, ears and eyes covered, nobody working alone unseen.',
    source: 'common practice; from memory',
    triggers: [sheet('bench')],
  },
  {
    key: 'string-tension',
    topic: 'strings',
    text: 'A set of strings pulls with 350 N (nylon) to 900 N (steel), twelve strings with more, and a bridge can let go. Cover your eyes when it is first tuned up. Never fit a heavier set than the one it was made for; slacken at once if the bridge lifts.',
    source: 'string makers’ charts; common practice',
    triggers: [quantity('strings.total-tension'), sheet('care')],
  },
  {
    key: 'heavier-strings',
    topic: 'strings',
    text: 'Another set of strings changes the pull on the top: compare its tension with the set the instrument was made for before it is tuned up.',
    source: 'common practice',
    triggers: [value('strings')],
  },
  {
    key: 'design-aid',
    topic: 'design-aid',
    text: 'Computed from measured wood and simple formulas; it does not show that a top will survive. Compare only within this shop’s own instruments.',
    source: 'common practice',
    triggers: [
      quantity('bridge.rotation'),
      quantity('bridge.torque'),
      quantity('bridge.dip'),
      quantity('bridge.belly'),
      quantity('bridge.glue-shear'),
      sheet('comparison'),
    ],
  },
  {
    key: 'battery',
    topic: 'design-aid',
    text: 'Lithium batteries fall under rules of carriage by air and post; ask the carrier before the instrument is shipped with one in it.',
    source: 'from memory',
    triggers: [value('electronics.battery.kind')],
  },
  {
    key: 'care-humidity',
    topic: 'design-aid',
    text: 'Kept far from the humidity it was built at, wood splits or swells: the care card names a range, not a promise.',
    source: 'common practice',
    triggers: [sheet('care')],
  },
];

/** Cautions due where `path` has this value (a choice, a species or free words), in table order. */
export function cautionsOnValue(path: string, written: string): readonly Caution[] {
  const low = written.toLowerCase();
  return CAUTIONS.filter(({ triggers }) =>
    triggers.some(
      (trigger) =>
        trigger.kind === 'value' &&
        matches(trigger.path, path) &&
        (trigger.values === undefined || trigger.values.some((word) => hasWord(low, word))),
    ),
  );
}

/** Cautions due on a sheet. */
export function cautionsOnSheet(name: Sheet): readonly Caution[] {
  return CAUTIONS.filter(({ triggers }) =>
    triggers.some((trigger) => trigger.kind === 'sheet' && trigger.sheet === name),
  );
}

/** Cautions due where a computed quantity is shown. */
export function cautionsOnQuantity(path: string): readonly Caution[] {
  return CAUTIONS.filter(({ triggers }) =>
    triggers.some((trigger) => trigger.kind === 'quantity' && trigger.path === path),
  );
}

/** The caution that goes with what a species says of its dust or its trade. */
export function cautionOnSpecies(property: 'dust' | 'trade'): Caution | undefined {
  return CAUTIONS.find(({ triggers }) =>
    triggers.some((trigger) => trigger.kind === 'species' && trigger.property === property),
  );
}

function matches(pattern: string, path: string): boolean {
  const wanted = pattern.split('.');
  const words = path.split('.');
  return wanted.length === words.length && wanted.every((word, place) => word === '*' || word === words[place]);
}

/** Whole words only: `oil` is in `tung oil`, not in `foil`; a hyphen parts words only in free text. */
function hasWord(text: string, word: string): boolean {
  return text === word || ` ${text.replace(/[^a-z0-9-]+/g, ' ')} `.includes(` ${word} `);
}
