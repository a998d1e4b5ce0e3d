/** Questions about what recipes name and lean on: wood sets and species, string sets, rigs. */
import { LIMITS } from '../../facts/limits.js';
import { nameOf } from './name-of.js';
import type { Dimension } from '../../quantities/dimension.js';
import { Derivations, Evaluation } from '../evaluation/evaluation.js';
import type { Definition } from '../../facts/facts.js';
import { elsewhereOf, type Layer, ValueGround } from '../evaluation/ground.js';
import { remembered } from '../shelf/remembered.js';
import { Traces } from '../evaluation/traces.js';
import type { Questions } from '../questions.js';

export function supplyQueries(workshop: Questions) {
  const { shelf, catalogue } = workshop;
  const { barrier } = workshop;

  const species = barrier.query(
    'species',
    (name: string): Definition | undefined => {
      const seen = new Set<string>();
      for (
        let next: string | undefined = name;
        next !== undefined && !seen.has(next) && seen.size < LIMITS.generations;
      ) {
        seen.add(next);
        const wood: Definition | undefined = shelf.find('wood', next);
        if (!wood) return shelf.find('species', next);
        next = wood.relation?.target.text;
      }
      return undefined;
    },
    { otherwise: undefined, of: nameOf('wood') },
  );

  const woodGround = barrier.query(
    'ground of the wood',
    (name: string): ValueGround | undefined => {
      const set = shelf.find('wood', name);
      const kin = workshop.speciesOf(name);
      if (!set && !kin) return undefined;
      const layers: Layer[] = [];
      if (set) {
        const values = workshop.stated(set);
        layers.push({ values, prefix: '', shared: `wood ${name}: `, basis: 'measured', spread: 'half-width' });
      }
      if (kin) {
        const values = workshop.stated(kin);
        const shared = `species ${kin.name.text}: `;
        layers.push({ values, prefix: 'species.', shared, basis: 'handbook', spread: 'standard deviation' });
      }
      const shop = shelf.shop();
      if (shop) {
        const values = workshop.stated(shop);
        layers.push({ values, prefix: 'shop.', shared: 'shop: ', basis: 'recipe', spread: 'half-width' });
      }
      const rigs = set
        ? elsewhereOf(workshop.stated(set), (part, name) => (part.endsWith('rig') ? rig.get(name) : undefined))
        : undefined;
      return new ValueGround(layers, workshop.settings().tolerances, woodDimensionOf, rigs, `wood ${name}: `);
    },
    { otherwise: undefined, of: nameOf('wood', 'species') },
  );

  const wood = barrier.query(
    'wood',
    (name: string): Evaluation | undefined => {
      const ground = woodGround.get(name);
      return ground && new Evaluation(workshop.derivations('wood'), ground);
    },
    { otherwise: undefined, of: nameOf('wood', 'species') },
  );

  const woodInFull = barrier.query(
    'woodInFull',
    (name: string): Evaluation | undefined => {
      const ground = woodGround.get(name);
      return ground && new Evaluation(workshop.derivations('wood'), ground, new Traces(), workshop.analyst);
    },
    { otherwise: undefined, of: nameOf('wood', 'species') },
  );

  const strings = barrier.query(
    'strings',
    (name: string): Evaluation | undefined => {
      const set = shelf.find('strings', name);
      return set && asStated(set, `strings ${name}: `, workshop.derivations('strings'));
    },
    { otherwise: undefined, of: nameOf('strings') },
  );

  const rig = barrier.query(
    'rig',
    (name: string): Evaluation | undefined => {
      const found = shelf.find('rig', name);
      return found && asStated(found, `rig ${name}: `, new Derivations([]));
    },
    { otherwise: undefined, of: nameOf('rig') },
  );

  function asStated(definition: Definition, shared: string, derivations: Derivations): Evaluation {
    const values = workshop.stated(definition);
    const layer: Layer = { values, prefix: '', shared, basis: 'recipe', spread: 'as stated' };
    const dimensionOf = (path: string) => catalogue.property(path, definition.kind)?.dimension;
    const { tolerances } = workshop.settings();
    return new Evaluation(derivations, new ValueGround([layer], tolerances, dimensionOf, undefined, shared));
  }

  const woodDimensionOf = remembered((path: string): Dimension | undefined => {
    for (const kind of ['species', 'shop'] as const) {
      if (path.startsWith(`${kind}.`)) return catalogue.property(path.slice(kind.length + 1), kind)?.dimension;
    }
    return catalogue.property(path, 'wood')?.dimension;
  });

  /** What a name stands for where it is the value of `part`. */
  const named = (part: string, name: string): Evaluation | undefined => {
    if (part === 'strings') return strings.get(name);
    if (part.endsWith('wood')) return wood.get(name);
    return part.endsWith('.rig') ? rig.get(name) : undefined;
  };

  return { species, wood, woodInFull, strings, named };
}
