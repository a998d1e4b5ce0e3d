/** What a model or recipe lays out, and which of it is written in the definition under check. */
import type { Definition, Span } from '../../facts/facts.js';
import { PLATE_LIMITS } from '../../mechanics/plate/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { madeOf, type SharedPart } from '../../recipes/evaluation/shared-part.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Edit, Fix, Related } from '../finding.js';
import { isInForce } from '../in-force.js';
import { placeOf, replace } from '../mending.js';
import type { Wording } from '../../wording/wording.js';

export class LaidOut {
  constructor(
    readonly definition: Definition,
    readonly values: ReadonlyMap<string, Held>,
    readonly evaluation: Evaluation,
    /** What a recipe starts from, where it is laid out too; asked for only when something was found. */
    private readonly start?: () => LaidOut,
  ) {}

  /** Whether the start does not already have what was found here, to the last number: then it is told there. */
  isNew<T>(found: T, find: (laid: LaidOut) => T): boolean {
    return !this.start || JSON.stringify(find(this.start())) !== JSON.stringify(found);
  }

  /** The first of these paths that is written in this definition: that is the line a finding belongs to. */
  own(paths: readonly string[]): Held | undefined {
    for (const path of paths) {
      const held = this.values.get(path);
      if (held?.from.definition === this.definition) return held;
    }
    return undefined;
  }

  /** As many braces as are looked at; those beyond have a finding (`too-many-parts`). */
  braces(root: 'bracing' | 'back-bracing'): readonly string[] {
    return this.evaluation.ground.members(root).slice(0, PLATE_LIMITS.braces);
  }

  /** A length somebody wrote or the engine knows, m. */
  number(path: string): number | undefined {
    return this.evaluation.number(path);
  }

  /** Undefined where something it needs is missing or cannot be: other findings say so. */
  made<T>(part: SharedPart<T>): T | undefined {
    return madeOf(this.evaluation, part).made;
  }

  /** The places that have to do with it and are not the line of the finding. */
  related(paths: readonly string[], line: Held | undefined, { say }: Wording): readonly Related[] {
    return paths.flatMap((path) => {
      const held = this.values.get(path);
      return held && held !== line ? [{ place: placeOf(held.from), message: say`${held.path} is given here` }] : [];
    });
  }
}

/** What the definition lays out, if it says anything of what `about` tells; a definition that does not is told nothing. */
export function laidOut(definition: Definition, workshop: Workshop, about: RegExp): LaidOut | undefined {
  if (!isInForce(definition, workshop)) return undefined;
  const { kind, name } = definition;
  const isModel = kind === 'model';
  const values = isModel ? workshop.model(name.text)?.values : workshop.instrument(name.text)?.values;
  if (!values || ![...values.values()].some(({ path, from }) => from.definition === definition && about.test(path))) {
    return undefined;
  }
  const evaluation = isModel ? workshop.evaluate(values) : workshop.evaluation(name.text);
  const start = isModel ? undefined : workshop.startOf(name.text);
  const before = start && (() => new LaidOut(start.definition, start.values, workshop.evaluate(start.values)));
  return evaluation && new LaidOut(definition, values, evaluation, before);
}

/** The line of a finding, or the name of the definition where what is wrong came with something else it says. */
export function lineOf(definition: Definition, held: Held | undefined): Span {
  return held?.from.definition === definition ? held.from.span : definition.name.span;
}

/** Another length in place of a value written here, in whole units of what it is written in; none where it is written elsewhere. */
export function anotherLength(
  held: Held | undefined,
  si: number,
  definition: Definition,
  { say }: Wording,
): readonly Fix[] {
  if (held?.value.kind !== 'quantity' || held.from.definition !== definition || held.value.written === '') return [];
  const text = writeQuantity(si, DIMENSION.length, { unit: held.value.quantity.unit });
  return [{ title: say`Write ${text}`, edits: [replace(definition, held.value.span, text)] }];
}

/** Another point in place of one written here. */
export function anotherPoint(
  held: Held | undefined,
  [x, y]: readonly [number, number],
  definition: Definition,
): readonly Edit[] {
  if (held?.value.kind !== 'point' || held.from.definition !== definition) return [];
  const { station, offset, span } = held.value;
  const write = (si: number, unit: typeof station) => writeQuantity(si, DIMENSION.length, { unit: unit.quantity.unit });
  return [replace(definition, span, `(${write(x, station)}, ${write(y, offset)})`)];
}

export function length(si: number): string {
  return writeQuantity(si, DIMENSION.length);
}

/** How much something is off, to what can be drawn: `3.1 mm`, `47 mm`. */
export function roughly(si: number): string {
  const step = Math.abs(si) < 0.01 ? 1e-4 : 1e-3;
  return writeQuantity(Math.round(si / step) * step, DIMENSION.length);
}
