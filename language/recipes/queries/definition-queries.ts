/** Questions about one definition by itself, and about the shop. */
import { propertiesOf } from '../instrument/values.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from '../instrument/instrument.js';
import { mentionsIn } from '../shelf/mentions.js';
import { settingsOf, type ShopSettings } from '../instrument/shop-settings.js';
import type { Questions } from '../questions.js';
import { writtenIn } from '../instrument/written.js';

export function definitionQueries(workshop: Questions) {
  const { shelf, catalogue } = workshop;
  const { barrier } = workshop;

  const settings = barrier.query(
    'settings',
    (): ShopSettings => {
      const shop = shelf.shop();
      return settingsOf(shop, shop ? workshop.stated(shop) : new Map());
    },
    { otherwise: settingsOf(undefined, new Map()), of: inShop, equal: sameJson },
  );

  const stated = barrier.query(
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
    { otherwise: new Map(), of: itself, isBoundToKey: true },
  );

  const mentions = barrier.query('mentions', (definition: Definition) => mentionsIn(definition, catalogue), {
    otherwise: [],
    of: itself,
    isBoundToKey: true,
  });

  const written = barrier.query(
    'written',
    (definition: Definition) => writtenIn(definition, catalogue, workshop.derivations(definition.kind)),
    { otherwise: [], of: itself, isBoundToKey: true },
  );

  return { settings, stated, mentions, written };
}

function itself(definition: Definition): Definition {
  return definition;
}

function inShop({ kind }: Definition): string | undefined {
  return kind === 'shop' ? '' : undefined;
}

function sameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
