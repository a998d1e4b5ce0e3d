/** Species by part with Latin name, country and papers, as border authorities ask for them. */
import { cautionOnSpecies, cautionsOnSheet, cautionsOnValue, DEFERRAL } from '../catalogue/cautions.js';
import { shown } from '../checks/phrases.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import type { Workshop } from '../recipes/workshop.js';
import { cited } from '../wording/cited.js';
import { onceEach, type Sheet, type SheetCell, WRITE } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';
import { asTitle } from './sheet-words.js';
import { speciesSaying, woodsOf } from './sheet-woods.js';

export function papersSheet(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const woods = woodsOf(workshop, subject);
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
    boxes: [text('Serial number'), text('Country of destination'), text('Date')],
    sections: [
      {
        title: text('Woods by part'),
        columns: [text('part'), text('wood'), text('Latin name'), text('grown in'), text('papers'), text('quantity')],
        rows: woods.map(({ part, species, set, latin, country, papers }): readonly SheetCell[] => [
          asTitle(part, workshop.wording),
          species === undefined || species === set
            ? asTitle(set, workshop.wording)
            : `${asTitle(species, workshop.wording)} (${set})`,
          latin ?? WRITE,
          country ?? WRITE,
          papers ?? WRITE,
          massOf(workshop, subject, part) ?? WRITE,
        ]),
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

/** What is in the instrument, weighed or computed; offcuts are not counted. */
function massOf(
  workshop: Workshop,
  { definition, evaluation, values }: SheetSubject,
  part: string,
): string | undefined {
  const readings = definition.kind === 'build' ? (workshop.build(definition.name.text)?.readings ?? []) : [];
  const read = readings.flatMap((reading) => reading.values.get(`${part}.mass`) ?? []).at(-1);
  const weighed = read ?? values.find(({ path }) => path === `${part}.mass`);
  if (weighed) return writeInShopUnit(weighed.path, weighed.value);
  const computed = evaluation.derived(`${part}.mass`);
  return computed?.known ? shown(computed.si, computed.quantity) : undefined;
}
