/** What the builds of a model say all together, for another program. Numbers are SI; builds and variables by index. */
import type { Fitted, ResponseEffects } from '../../recipes/builds/estimated-effects.js';
import type { ModelEffects } from '../../recipes/builds/model-effects.js';
import { tidy } from '../numbers.js';
import { asJson } from './findings-json.js';

export function modelEffectsAsJson(found: ModelEffects): string {
  const { design, separation, responses, next } = found;
  const { model, base, builds, reference, variables, leftOut } = design;
  return asJson({
    model,
    base: base ?? null,
    builds: builds.map(({ definition }) => definition.name.text),
    reference,
    leftOut,
    variables: variables.map(({ kind, paths, declared, column, to, step, species }) => ({
      kind,
      paths,
      declared,
      column: column.map(tidy),
      to,
      step: tidy(step),
      ...(species ? { species } : {}),
    })),
    unknowns: separation.groups.length + 1,
    movedTogether: separation.groups.filter((group) => group.length > 1),
    toldApart: separation.clear,
    tangled: separation.tangled.map((knot) => knot.flat()),
    responses: responses.map((each) => plainResponse(each, found)),
    next: next
      ? {
          from: next.from,
          paths: next.paths,
          as: next.to,
          separates: next.separates.map((each) => variables.indexOf(each)),
          narrows: tidy(next.narrows),
        }
      : null,
  });
}

function plainResponse({ response, builds, outcome }: ResponseEffects, found: ModelEffects): object {
  const { path, reading, values } = response;
  const read = { path, occasion: reading.name, builds, values: [...values.values()].map(tidy) };
  if (outcome.kind !== 'fitted') return { ...read, fitted: false, because: outcome.kind, unknowns: outcome.unknowns };
  return { ...read, fitted: true, ...plainFit(path, outcome, found) };
}

function plainFit(
  path: string,
  { start, effects, tangled, floor }: Fitted,
  { design, predicted }: ModelEffects,
): object {
  const indexes = (all: ModelEffects['design']['variables']) => all.map((each) => design.variables.indexOf(each));
  return {
    start: tidy(start),
    scatter: {
      share: tidy(floor.share),
      // A stated figure has no number of degrees of freedom.
      freedom: Number.isFinite(floor.freedom) ? floor.freedom : null,
      basis: floor.basis,
      builds: floor.builds,
    },
    effects: effects.map(({ variables, amount, band, distinguishable }) => {
      const computed = predicted(path, variables);
      return {
        variables: indexes(variables),
        effect: tidy(amount),
        band: tidy(band),
        distinguishable,
        predicted: typeof computed === 'number' ? tidy(computed) : null,
      };
    }),
    tangled: tangled.map(indexes),
  };
}
