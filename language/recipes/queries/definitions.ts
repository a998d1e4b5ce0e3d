/** Questions about one definition by itself, and about the shop. */
import { propertiesOf } from '../values.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from '../instrument.js';
import { mentionsIn } from '../mentions.js';
import { settingsOf } from '../settings.js';
import type { Workshop } from '../workshop.js';
import { writtenIn } from '../written.js';

export function definitionQueries(workshop: Workshop) {
  const { shelf, catalogue } = workshop;
  const { memo } = shelf;

  const settings = memo.query(
    () => {
      const shop = shelf.shop();
      return settingsOf(shop, shop ? workshop.stated(shop) : new Map());
    },
    { equal: sameJson },
  );

  const stated = memo.query((definition: Definition): ReadonlyMap<string, Held> => {
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
  });

  const mentions = memo.query((definition: Definition) => mentionsIn(definition, catalogue));

  const written = memo.query((definition: Definition) =>
    writtenIn(definition, catalogue, workshop.derivations(definition.kind)),
  );

  return { settings, stated, mentions, written };
}

function sameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
