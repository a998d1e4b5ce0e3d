/** Questions about one definition by itself, and about the shop. */
import { propertiesOf } from '../instrument/values.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from '../instrument/instrument.js';
import { mentionsIn } from '../shelf/mentions.js';
import { settingsOf } from '../instrument/shop-settings.js';
import type { Workshop } from '../workshop.js';
import { writtenIn } from '../instrument/written.js';

export function definitionQueries(workshop: Workshop) {
  const { shelf, catalogue } = workshop;
  const { memo } = shelf;

  const settings = memo.query(
    'settings',
    () => {
      const shop = shelf.shop();
      return settingsOf(shop, shop ? workshop.stated(shop) : new Map());
    },
    { equal: sameJson },
  );

  const stated = memo.query(
    'stated',
    (definition: Definition): ReadonlyMap<string, Held> => {
      const values = new Map<string, Held>();
      for (const { statement } of propertiesOf(definition.statements)) {
        const path = catalogue.canonical(statement.path.text, definition.kind);
        values.set(path, {
          path,
          value: statement.value,
          from: { definition, span: statement.span },
          via: 'stated',
          before: values.get(path),
        });
      }
      return values;
    },
    OF_DEFINITION,
  );

  const mentions = memo.query('mentions', (definition: Definition) => mentionsIn(definition, catalogue), OF_DEFINITION);

  const written = memo.query(
    'written',
    (definition: Definition) => writtenIn(definition, catalogue, workshop.derivations(definition.kind)),
    OF_DEFINITION,
  );

  return { settings, stated, mentions, written };
}

/** Kept while the definition is on the shelf. */
const OF_DEFINITION = { isBoundToKey: true } as const;

function sameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
