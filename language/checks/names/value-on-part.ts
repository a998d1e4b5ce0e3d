/** A value written on a part, `bridge: ebony`, where only one of the part's properties could take it. */
import type { Property } from '../../catalogue/property.js';
import type { Definition, Value } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';
import { numbersIn, rangeFor } from '../amounts.js';
import { remove, replace } from '../mending.js';
import { saysNone } from '../../recipes/instrument/values.js';
import { suggestion } from '../phrases.js';
import { EVERY_KIND, type Rule } from '../rule.js';
import { isSound } from '../sound-value.js';
import { sentences } from '../../wording/wording.js';

export const VALUE_ON_PART: Rule = {
  code: 'value-on-a-part',
  severity: 'error',
  title: 'A value given to a whole part',
  reason:
    'A bout has a width and a place, a bridge a wood, a mass and more. A value given to the whole of it could be any of them, so it is not used until it says which.',
  bad: `model tarn { body.lower-bout: 390 mm }`,
  good: `model tarn { body.lower-bout.width: 390 mm }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, some } = workshop.wording;
    for (const written of workshop.written(definition)) {
      const { role, property, derived, canonical, values, path } = written;
      if (role !== 'value' || property || derived || workshop.catalogue.property(canonical)) continue;
      const below = workshop.catalogue
        .children(canonical, definition.kind)
        .properties.filter((one) => !one.path.endsWith('*'));
      if (below.length === 0) continue;
      const value = values[values.length - 1]?.value;
      if (saysNone(value)) {
        report(
          path.span,
          say`What an instrument does not have is left unwritten: take the line out, or write \`drop ${canonical}\` where the parent has it.`,
          {
            fixes: [{ title: say`Take the line out`, edits: [remove(definition, written.statement)] }],
          },
        );
        continue;
      }
      const sound = value ? below.filter((one) => couldBe(value, one, written, definition, workshop)) : [];
      // A name nobody knows is most often that of a wood not yet written down.
      const isWood = value?.kind === 'name' && value.name !== 'yes' && value.name !== 'no';
      const meant = sound.length > 0 || !isWood ? sound : below.filter(({ kind }) => kind === 'wood');
      const names = (meant.length > 0 ? meant : below).map(lastWord);
      const hint =
        meant.length > 0 && meant.length <= 3
          ? suggestion(
              names.map((name) => `${canonical}.${name}`),
              workshop.wording,
            )
          : say`It has ${some(names)}.`;
      report(path.span, sentences(say`Say what of ${canonical} this is.`, hint), {
        fixes: names.slice(0, meant.length > 3 ? 0 : meant.length).map((name, i) => ({
          title: say`Write ${`${path.text}.${name}`}`,
          edits: [replace(definition, path.span, `${writtenAs(written)}.${name}`)],
          preferred: i === 0 && meant.length === 1,
        })),
      });
    }
  },
};

/** Whether the value is sound for this property and, where it is a number, near the usual. */
function couldBe(
  value: Value,
  property: Property,
  written: Written,
  definition: Definition,
  workshop: Workshop,
): boolean {
  // Any word would do where words are wanted; that says nothing.
  if (!isSound(value, property, workshop) || (value.kind === 'name' && property.kind === 'text')) return false;
  const canonical = `${written.canonical}.${lastWord(property)}`;
  const range = rangeFor({ written: { ...written, canonical, property } }, definition, workshop);
  return [...numbersIn(value)].every(
    ({ number: { quantity } }) => !range || (quantity.si >= range.low && quantity.si <= range.high),
  );
}

function lastWord({ path }: Property): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

function writtenAs({ path }: Written): string {
  return path.segments.map(({ text }) => text).join('.');
}
