/** What the shop has settled once for all its instruments. */
import { takenAs } from '../../catalogue/taken-as.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from './instrument.js';
import { type Tolerances, tolerancesOf } from './tolerances.js';

export interface ShopSettings {
  readonly title?: string;
  /** The system sizes are printed in; metric where the shop is silent. */
  readonly units: 'metric' | 'inch';
  readonly tolerances: Tolerances;
  /** Kelvin: as the catalogue takes it where the shop is silent; undefined where what it says cannot be used. */
  readonly temperature: number | undefined;
  /** Fraction; undefined where the shop does not say. */
  readonly humidity: number | undefined;
  /** Changes an instrument may make. One, unless the shop says otherwise. */
  readonly varyAtMost: number;
}

const TEMPERATURE = 'shop.climate.temperature';

/** How many changes a recipe may make, and who says so. */
export interface Limit {
  readonly count: number;
  readonly by: 'shop' | 'recipe';
  /** The recipe's reason for allowing more. */
  readonly reason?: string;
}

export function settingsOf(shop: Definition | undefined, stated: ReadonlyMap<string, Held>): ShopSettings {
  const value = (path: string) => stated.get(path)?.value;
  const number = (path: string) => {
    const found = value(path);
    return found?.kind === 'quantity' && found.quantity.unit ? found.quantity.si : undefined;
  };
  const title = value('title');
  const units = value('units');
  const vary = shop?.statements.find((statement) => statement.kind === 'vary');
  return {
    title: title?.kind === 'text' ? title.text : undefined,
    units: units?.kind === 'name' && units.name === 'inch' ? 'inch' : 'metric',
    tolerances: tolerancesOf(value),
    humidity: number('climate.humidity'),
    temperature: stated.has('climate.temperature') ? number('climate.temperature') : takenAs(TEMPERATURE)!.si,
    varyAtMost: vary?.count ?? 1,
  };
}

export function limitOf(recipe: Definition, settings: ShopSettings): Limit {
  const allow = recipe.statements.find((statement) => statement.kind === 'allow');
  if (allow) return { count: allow.count, by: 'recipe', reason: allow.reason?.text };
  return { count: settings.varyAtMost, by: 'shop' };
}
