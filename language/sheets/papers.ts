/** Species by part with Latin name, country and papers, as border authorities ask for them. */
import { cautionOnSpecies, cautionsOnSheet, cautionsOnValue, DEFERRAL } from '../catalogue/cautions.js';
import { DIMENSION } from '../quantities/dimension.js';
import { writeQuantity } from '../quantities/write.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import type { Held } from '../recipes/instrument/instrument.js';
import type { Workshop } from '../recipes/workshop.js';
import { cited } from '../wording/cited.js';
import { serialOf } from './bench-boxes.js';
import { orderText } from './order-words.js';
import { boxFor, onceEach, type Sheet, type SheetCell, WRITE } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';
import { asTitle } from './sheet-words.js';
import { speciesOf, speciesSaying } from './sheet-woods.js';

export function papersSheet(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const regulated = speciesSaying(workshop, subject, 'trade');
  const trade = regulated.length > 0 ? cautionOnSpecies('trade') : undefined;
  const materials = subject.values.flatMap(({ path, value }) =>
    cautionsOnValue(path, writeInShopUnit(path, value)).filter(({ topic }) => topic === 'bone-and-shell'),
  );
  const cautions = onceEach([...cautionsOnSheet('species'), ...(trade ? [trade] : []), ...materials]);
  const destination = subject.order && workshop.stated(subject.order).get('destination')?.value;
  return {
    kind: 'papers',
    language,
    title: say`Species and papers: ${subject.title}`,
    shop: workshop.settings().title ?? '',
    intro: destination?.kind === 'text' ? [say`It goes to: ${destination.text}`] : [],
    boxes: [
      boxFor(text('Serial number'), serialOf(workshop, subject)),
      boxFor(text('Country of destination'), subject.order && orderText(workshop, subject.order, 'destination')),
      text('Date'),
    ],
    sections: [
      {
        title: text('Woods by species'),
        columns: [text('wood'), text('Latin name'), text('parts'), text('grown in'), text('papers'), text('quantity')],
        rows: speciesOf(workshop, subject).map(
          ({ name, latin, parts, paths, sets, countries, papers }): readonly SheetCell[] => [
            sets.length === 0
              ? asTitle(name, workshop.wording)
              : `${asTitle(name, workshop.wording)} (${sets.join(', ')})`,
            latin ?? WRITE,
            parts.join(', '),
            countries.length > 0 ? countries.join(', ') : WRITE,
            papers.length > 0 ? papers.join(', ') : WRITE,
            massOfAll(workshop, subject, paths) ?? WRITE,
          ],
        ),
      },
      ...(regulated.length > 0 ? [{ title: text('What is known of the trade in them'), text: regulated }] : []),
    ],
    cautions: cautions.map((caution) => ({
      text: text(caution.text),
      source: cited(caution.source, workshop.wording),
    })),
    closing: text(DEFERRAL),
  };
}

/** What is in the instrument of one species; offcuts are not counted. Unknown as soon as one part is. */
function massOfAll(workshop: Workshop, subject: SheetSubject, parts: readonly string[]): string | undefined {
  const weighed = parts.map((part) => weighedMass(workshop, subject, part));
  const [only] = weighed;
  if (parts.length === 1 && only) return writeInShopUnit(only.path, only.value);
  const masses = parts.map((part, i) => {
    const value = weighed[i]?.value;
    return value?.kind === 'quantity' ? value.quantity.si : subject.evaluation.number(`${part}.mass`);
  });
  if (masses.some((mass) => mass === undefined)) return undefined;
  return writeQuantity(
    masses.reduce<number>((all, mass) => all + (mass ?? 0), 0),
    DIMENSION.mass,
    { unit: 'g' },
  );
}

function weighedMass(workshop: Workshop, { definition, values }: SheetSubject, part: string): Held | undefined {
  const readings = definition.kind === 'build' ? (workshop.build(definition.name.text)?.readings ?? []) : [];
  const read = readings.flatMap((reading) => reading.values.get(`${part}.mass`) ?? []).at(-1);
  return read ?? values.find(({ path }) => path === `${part}.mass`);
}
