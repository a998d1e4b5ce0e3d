/**
 * What is computed for a reading: the same quantity, for the very same instrument, in the state it was read in: the rig of a
 * deflection, a weight put on the bridge, no finish yet. A reading and its own prediction are one thing.
 */
import type { Held } from '../instrument/instrument.js';
import { computed } from '../instrument/instrument.js';
import type { Derived, Evaluation } from '../evaluation/evaluation.js';
import type { Workshop } from '../workshop.js';
import type { Reading } from './builds.js';

/** The computed quantity that stands for a reading, and what of the instrument is otherwise while it is read. */
export interface Counterpart {
  readonly quantity: string;
  readonly as: (values: ReadonlyMap<string, Held>) => ReadonlyMap<string, Held>;
  /** Counterparts of one key see the instrument alike. */
  readonly key: string;
}

/** Undefined where nothing of the kind is computed. */
export function counterpartOf(workshop: Workshop, path: string, reading: Reading): Counterpart | undefined {
  const stage = wordOf(reading.conditions.get('stage'));
  const special = SPECIAL.get(path);
  if (special) return special(reading, stage, workshop);
  if (!workshop.derivedAt(path)) return undefined;
  if (path.startsWith('resonance.') || path.startsWith('bridge.')) return ofTheBox(path, stage);
  return { quantity: path, as: (values) => values, key: '' };
}

type Special = (reading: Reading, stage: string | undefined, workshop: Workshop) => Counterpart | undefined;

const SPECIAL: ReadonlyMap<string, Special> = new Map(
  Object.entries<Special>({
    'deflection.along': (reading, stage, workshop) => inRig(reading, stage, 'along', workshop),
    'deflection.across': (reading, stage, workshop) => inRig(reading, stage, 'across', workshop),
    'mass.braced-top': () => ({ quantity: 'top.braced-mass', as: (values) => values, key: '' }),
    'mass.braced-back': () => ({ quantity: 'back.braced-mass', as: (values) => values, key: '' }),
    'resonance.top-loaded': (reading, stage) => loaded(reading, stage),
  }),
);

/** The sag of the bare plate in the rig that the reading names. */
function inRig(reading: Reading, stage: string | undefined, way: string, workshop: Workshop): Counterpart | undefined {
  const rig = reading.conditions.get('rig');
  if (rig?.value.kind !== 'name' || (stage !== undefined && stage !== 'free-plate')) return undefined;
  const definition = workshop.shelf.find('rig', rig.value.name);
  const direction = definition && wordOf(workshop.stated(definition).get('direction'));
  if ((direction ?? 'along') !== way) return undefined;
  return {
    quantity: 'top.sag',
    as: (values) => new Map([...values, ['top.rig', { ...rig, path: 'top.rig' }]]),
    key: `rig ${rig.value.name}`,
  };
}

/** The box with its bridge and strings. Before the finish it is lighter; a box without its bridge is another instrument. */
function ofTheBox(quantity: string, stage: string | undefined): Counterpart | undefined {
  if (stage === undefined || stage === 'strung') return { quantity, as: (values) => values, key: '' };
  if (stage !== 'in-the-white') return undefined;
  return { quantity, as: (values) => without(values, 'finish'), key: 'white' };
}

/** A known weight stuck to the bridge. */
function loaded(reading: Reading, stage: string | undefined): Counterpart | undefined {
  const added = reading.values.get('added-mass')?.value;
  const box = ofTheBox('resonance.top', stage);
  if (!box || added?.kind !== 'quantity') return undefined;
  return {
    ...box,
    key: `${box.key} + ${added.quantity.si}`,
    as: (values) => {
      const bridge = values.get('bridge.mass');
      if (bridge?.value.kind !== 'quantity') return without(values, 'bridge');
      const { quantity, span } = bridge.value;
      const heavier = computed({ ...quantity, si: quantity.si + added.quantity.si }, span);
      return new Map([...box.as(values), ['bridge.mass', { ...bridge, value: heavier }]]);
    },
  };
}

function without(values: ReadonlyMap<string, Held>, part: string): ReadonlyMap<string, Held> {
  return new Map([...values].filter(([path]) => path !== part && !path.startsWith(`${part}.`)));
}

function wordOf(held: Held | undefined): string | undefined {
  return held?.value.kind === 'name' ? held.value.name : undefined;
}

/** Evaluations of instruments as they were read, each worked out once. */
export class Predictions {
  private readonly found = new Map<ReadonlyMap<string, Held>, Map<string, Evaluation>>();

  constructor(private readonly workshop: Workshop) {}

  evaluation(values: ReadonlyMap<string, Held>, { as, key }: Counterpart): Evaluation {
    const own = this.found.get(values) ?? new Map<string, Evaluation>();
    this.found.set(values, own);
    const evaluation = own.get(key) ?? this.workshop.evaluateInFull(as(values));
    own.set(key, evaluation);
    return evaluation;
  }

  /** SI; `pending` while the solver is at it. */
  number(values: ReadonlyMap<string, Held>, counterpart: Counterpart): number | 'pending' | undefined {
    return numberOf(this.evaluation(values, counterpart).derived(counterpart.quantity));
  }
}

function numberOf(derived: Derived | undefined): number | 'pending' | undefined {
  if (!derived) return undefined;
  if (derived.known) return derived.si > 0 ? derived.si : undefined;
  return derived.pending === true ? 'pending' : undefined;
}
