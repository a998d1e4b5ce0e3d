/** The number at any path of an evaluation, written in its own unit, with what it rests on. */
import type { Catalogue } from '../catalogue/catalogue.js';
import { percent } from '../checks/phrases.js';
import type { Dimension } from '../quantities/dimension.js';
import { writeQuantity } from '../quantities/write.js';
import type { Basis, Evaluated } from '../recipes/evaluation/evaluation.js';
import type { DefinitionKind } from '../facts/facts.js';
import { english, type Wording } from '../wording/wording.js';

export interface Figure {
  readonly text: string;
  /** Weakest first. */
  readonly basis: readonly Basis[];
}

/** Writes an SI number as the thing at `path` is written; `kind` is what the evaluation is of. */
export function figureAt(
  path: string,
  si: number,
  evaluation: Evaluated,
  catalogue: Catalogue,
  kind: DefinitionKind,
): Figure {
  const measure = measureOf(path, evaluation, catalogue, kind);
  const text = measure
    ? writeQuantity(si, measure.dimension, measure.unit === '' ? {} : { unit: measure.unit })
    : String(Number(si.toPrecision(4)));
  return { text, basis: basisOf(path, evaluation) };
}

const WEAKEST_FIRST: readonly Basis[] = ['assumed', 'handbook', 'recipe', 'measured'];

export function basisOf(path: string, evaluation: Evaluated): readonly Basis[] {
  const leaf = evaluation.ground.leaf(path);
  if (leaf) return [leaf.basis];
  const other = evaluation.ground.elsewhere(path);
  if (other) return basisOf(other.path, other.evaluation);
  const derived = evaluation.derived(path);
  return derived?.known ? WEAKEST_FIRST.filter((basis) => derived.basis.has(basis)) : [];
}

/** A share with its sign, or that it is next to nothing. */
export function shareOf(share: number, { text }: Wording): string {
  const written = percent(share);
  return /[1-9]/.test(written) ? written : text('under 0.1 %');
}

/** A basis in a maker's words. */
export function inPlainWords(basis: readonly Basis[], { text }: Wording): string {
  return basis.map((each) => text(WORDS[each])).join(` ${text('and')} `);
}

const WORDS: Readonly<Record<Basis, string>> = {
  measured: english('measured'),
  recipe: english('written down'),
  handbook: english('handbook'),
  assumed: english('assumed'),
};

interface Measure {
  readonly dimension: Dimension;
  readonly unit: string;
}

function measureOf(
  path: string,
  evaluation: Evaluated,
  catalogue: Catalogue,
  kind: DefinitionKind,
): Measure | undefined {
  const own = evaluation.ground.leaf(path) ? undefined : evaluation.ground.elsewhere(path);
  if (own) return measureOf(own.path, own.evaluation, catalogue, kindBehind(path, own.path));
  const derived = evaluation.derivations.find(path)?.quantity;
  if (derived) return derived;
  const property = propertyOf(path, catalogue, kind);
  return property?.dimension && { dimension: property.dimension, unit: property.unit ?? '' };
}

/** A part of a point, size or list (`from.station`, `blank.length`) is measured like the whole. */
function propertyOf(path: string, catalogue: Catalogue, kind: DefinitionKind) {
  for (const [prefix, of] of [
    ['species.', 'species'],
    ['shop.', 'shop'],
  ] as const) {
    if (path.startsWith(prefix)) return catalogue.property(path.slice(prefix.length), of);
  }
  const whole = path.slice(0, Math.max(path.lastIndexOf('.'), 0));
  return catalogue.property(path, kind) ?? catalogue.property(path) ?? catalogue.property(whole, kind);
}

function kindBehind(path: string, inner: string): DefinitionKind {
  const part = path.slice(0, -inner.length - 1);
  return part === 'strings' ? 'strings' : part.endsWith('rig') ? 'rig' : 'wood';
}
