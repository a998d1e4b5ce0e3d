/** What the builds of a model say all together, for another program. Numbers are SI; builds and variables by index. */
import type { FittedResponse, Interval, ResponseEffects } from '../../recipes/builds/response-effects.js';
import type { ReadValue } from '../../recipes/builds/responses.js';
import type { ModelEffects } from '../../recipes/builds/model-effects.js';
import { tidy } from '../numbers.js';
import { type Escaped, forJson } from '../border.js';

export function modelEffectsAsJson(found: ModelEffects): Escaped {
  const { design, separation, responses, next } = found;
  const { model, base, builds, reference, variables, leftOut } = design;
  return forJson({
    model,
    base: base ?? null,
    builds: builds.map(({ label }) => label),
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

function plainResponse({ response, rows, outcome }: ResponseEffects, found: ModelEffects): object {
  const { path, reading, occasions, values, odd } = response;
  const plain = ({ row, si, occasion }: ReadValue) => ({ row, value: tidy(si), occasion });
  const read = {
    ...{ path, occasion: reading.name, occasions: occasions.map(({ name }) => name), builds: rows },
    ...{ values: values.map(plain), keptOut: odd.map(plain) },
  };
  if (outcome.kind !== 'fitted') return { ...read, fitted: false, because: outcome.kind, unknowns: outcome.unknowns };
  return { ...read, fitted: true, ...plainFit(outcome, found) };
}

function plainFit(outcome: FittedResponse, { design, nextFor }: ModelEffects): object {
  const { start, effects, tangled, scatter, repeatability, drift, predicted } = outcome;
  const indexes = (all: ModelEffects['design']['variables']) => all.map((each) => design.variables.indexOf(each));
  // A stated figure has no number of degrees of freedom.
  const freedom = (number: number) => (Number.isFinite(number) ? tidy(number) : null);
  return {
    start: tidy(start),
    predicted: predicted.map((each) => (each === undefined ? null : tidy(each))),
    scatter: { share: tidy(scatter.share), freedom: freedom(scatter.freedom), basis: scatter.basis },
    repeatability: { share: tidy(repeatability.share), freedom: freedom(repeatability.freedom) },
    drift: drift ? { ...plainInterval(drift), chance: tidy(drift.chance) } : null,
    effects: effects.map((effect) => {
      const next = nextFor(outcome, effect);
      return {
        variables: indexes(effect.variables),
        withTime: effect.withTime,
        computed: plainInterval(effect.computed),
        builds: plainInterval(effect.builds),
        together: plainInterval(effect.together),
        shareOfBuilds: effect.share === undefined ? null : tidy(effect.share),
        verdict: effect.verdict,
        beforeAndAfter: effect.beforeAndAfter,
        next: next
          ? {
              best: next.best ?? null,
              repeats: next.repeats ?? null,
              replicates: next.replicates ?? null,
              reworks: next.reworks ?? null,
            }
          : null,
      };
    }),
    tangled: tangled.map(indexes),
  };
}

function plainInterval(interval: Interval | undefined): object | null {
  return interval ? { amount: tidy(interval.amount), band: tidy(interval.band) } : null;
}
