/** What a definition speaks of: the values in force for it, what can be computed from them, and which ranges fit. */
import type { Property } from '../catalogue/property.js';
import type { Evaluation } from '../recipes/evaluation/evaluation.js';
import type { Definition } from '../facts/facts.js';
import type { Held, Instrument } from '../recipes/instrument/instrument.js';
import type { Desk } from '../checks/desk.js';

export interface Subject {
  readonly definition: Definition;
  readonly values: ReadonlyMap<string, Held>;
  readonly evaluation?: Evaluation;
  /** What it is compared with: the parent, the model of a base recipe, the recipe a build was made after. */
  readonly before?: { readonly name: string; readonly evaluation: Evaluation };
}

export function subjectOf(desk: Desk, definition: Definition): Subject {
  const { workshop, shelf } = desk;
  const name = definition.name.text;
  const alone: Subject = { definition, values: workshop.stated(definition) };
  // Of two of the same name only the first is in force; the other speaks for itself alone.
  if (name === '' || shelf.find(definition.kind, name) !== definition) return alone;
  switch (definition.kind) {
    case 'recipe': {
      const start = workshop.startOf(name);
      const values = workshop.instrument(name)?.values ?? alone.values;
      return {
        definition,
        values,
        evaluation: workshop.inFull(name),
        before: start && evaluated(desk, start),
      };
    }
    case 'model': {
      const model = workshop.model(name);
      return model ? { definition, values: model.values, evaluation: workshop.evaluate(model.values) } : alone;
    }
    case 'build': {
      const build = workshop.build(name);
      if (!build) return alone;
      const { recipe } = build;
      return {
        definition,
        // What was weighed or read stands beside what the instrument is made of.
        values: new Map([...alone.values, ...build.values]),
        evaluation: workshop.evaluateInFull(build.values),
        before: recipe && evaluated(desk, recipe),
      };
    }
    case 'order': {
      const recipe = workshop.instrument(definition.relation?.target.text ?? '');
      const values = workshop.ordered(name)?.values;
      if (!recipe || !values) return alone;
      return { definition, values, evaluation: workshop.evaluateInFull(values), before: evaluated(desk, recipe) };
    }
    case 'wood':
    case 'species':
      return { ...alone, evaluation: workshop.woodInFull(name) };
    case 'strings':
      return { ...alone, evaluation: workshop.strings(name) };
    default:
      return alone;
  }
}

/** A recipe's numbers are remembered; a model's are worked out from what its recipes have in common with it. */
function evaluated({ workshop }: Desk, { name, definition, values }: Instrument): Subject['before'] {
  const known = definition.kind === 'recipe' ? workshop.inFull(name) : undefined;
  return { name, evaluation: known ?? workshop.evaluate(values) };
}

/** What the catalogue knows of a path in such a definition, or, failing that, in an instrument. */
export function propertyAt(desk: Desk, definition: Definition, path: string): Property | undefined {
  const { catalogue } = desk.workshop;
  return catalogue.property(path, definition.kind) ?? catalogue.property(path);
}

/** The words that choose plausible ranges: kind and form of the instrument, the species of the wood it is about. */
export function tagsAt(desk: Desk, subject: Subject, path: string): readonly string[] {
  const { definition, values } = subject;
  const nameAt = (at: string) => {
    const value = values.get(at)?.value;
    return value?.kind === 'name' ? value.name : undefined;
  };
  const isWood = definition.kind === 'wood' || definition.kind === 'species';
  const wood = isWood ? definition.name.text : nameAt(`${path.slice(0, Math.max(path.lastIndexOf('.'), 0))}.wood`);
  const species = wood === undefined ? undefined : desk.workshop.speciesOf(wood)?.name.text;
  return [nameAt('kind'), nameAt('form'), species].filter((tag) => tag !== undefined);
}
