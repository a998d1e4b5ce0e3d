/**
 * The example shop with its readings made anew from a truth that is known: what is computed for each instrument as built, off
 * by a planted error for each change, by a factor, by what instruments built alike differ by, and by what a reading repeats to.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { designOf, type Design } from '../../language/recipes/builds/design-matrix.js';
import { isReadable } from '../../language/recipes/builds/odd-readings.js';
import { Predictor } from '../../language/recipes/builds/predictor.js';
import { type Response, responsesOf } from '../../language/recipes/builds/responses.js';
import { ImmediateAnalyst } from '../../language/recipes/evaluation/immediate-analyst.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import type { Workshop } from '../../language/recipes/workshop.js';
import { openWorkshop } from '../../language/shop.js';
import { normalFrom, randomFrom } from '../recipes/builds/made-shops.js';

const FOLDER = 'examples/hollin-reach';
const BUILDS = 'vennick-builds.bookmatch';

/** What instruments built alike differ by, what one reads twice, and what reading is above computing, as shares. */
const KNOWN: Readonly<Record<string, readonly [scatter: number, repeats: number, factor: number]>> = {
  'top.mass': [0.004, 0.001, 1],
  'deflection.along': [0.01, 0.004, 1.01],
  'resonance.air': [0.008, 0.003, 0.98],
  'resonance.top': [0.008, 0.003, 1.04],
  'resonance.back': [0.008, 0.003, 1.02],
};

export interface Planted {
  readonly workshop: Workshop;
  /** The example as it stands. */
  readonly example: Workshop;
  /** `resonance.top 2`: true change of ln reading for the whole step of the variable with this index. */
  readonly truth: ReadonlyMap<string, number>;
}

export function plantedShop(seed: number): Planted {
  const normal = normalFrom(randomFrom(seed));
  const texts = new Map(readdirSync(FOLDER).filter((name) => name.endsWith('.bookmatch')).map((name) => [name, readFileSync(join(FOLDER, name), 'utf8')])); // prettier-ignore
  const first = opened(texts);
  const design = designOf(first, 'vennick')!;
  const predictor = new Predictor(first, design);
  const truth = new Map<string, number>();
  const lines = texts.get(BUILDS)!.split('\n');
  const edits: { line: number; from: number; to: number; text: string }[] = [];
  for (const response of responsesOf(design.builds, (path, held) => isReadable(first, path, held))) {
    const [scatter, repeats, factor] = KNOWN[response.path] ?? [];
    if (scatter === undefined) continue;
    const errors = design.variables.map((variable, i) => {
      const computed = predictor.effect(response, [variable]);
      if (typeof computed !== 'object') throw new Error(`${response.path} is not computed`);
      const error = computed.error * normal();
      truth.set(`${response.path} ${i}`, computed.amount + error);
      return error;
    });
    edits.push(...readingsOf(first, design, response, predictor, errors, scatter, repeats!, factor!, normal));
  }
  for (const { line, from, to, text } of edits.sort((a, b) => b.line - a.line || b.from - a.from)) {
    lines[line] = lines[line]!.slice(0, from) + text + lines[line]!.slice(to);
  }
  return { example: first, workshop: opened(new Map([...texts, [BUILDS, lines.join('\n')]])), truth };
}

function readingsOf(
  workshop: Workshop,
  { builds, variables, reference }: Design,
  response: Response,
  predictor: Predictor,
  errors: readonly number[],
  scatter: number,
  repeats: number,
  factor: number,
  normal: () => number,
) {
  const deviations = builds.map(() => scatter * normal());
  return response.values.map((value) => {
    const computed = predictor.of(response, value);
    if (typeof computed !== 'number' || value.held.value.kind !== 'quantity') throw new Error('not computed');
    const off = variables.reduce(
      (sum, { column, step }, j) => sum + (errors[j]! * (column[value.row]! - column[reference]!)) / step,
      deviations[value.row]! - 0.025 * value.occasion + repeats * normal(),
    );
    const { span, written, quantity } = value.held.value;
    const digits = /\.(\d+)/.exec(written)?.[1]!.length ?? 0;
    const number = ((computed * factor * Math.exp(off)) / (quantity.unit?.factor ?? 1)).toFixed(digits);
    const at = workshop.shelf.placement(value.held.from.definition)!.line;
    return {
      line: span.start.line + at,
      from: span.start.character,
      to: span.end.character,
      text: `${number} ${quantity.unit!.symbol}`,
    };
  });
}

function opened(texts: ReadonlyMap<string, string>): Workshop {
  const parser = createParser();
  const { shelf, workshop } = openWorkshop({ parser, analyst: () => new ImmediateAnalyst() });
  for (const [name, text] of texts) shelf.put(readFile(name, text, parser));
  return workshop;
}
