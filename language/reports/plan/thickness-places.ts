/** How thick a plate is, and where, as far as the recipe says. */
import { takenAs } from '../../catalogue/taken-as.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import { type Held, isWithin } from '../../recipes/instrument/instrument.js';
import type { Value } from '../../facts/facts.js';
import type { ShopSettings } from '../../recipes/instrument/shop-settings.js';
import { lengthOnPaper, writeOnPaper } from '../on-paper.js';

export interface PlateThickness {
  /** Over the middle: `2.80 mm`. */
  readonly centre: string;
  /** At the outline, where it is thinned; `band`: mm over which it goes evenly from one to the other, `width` the same written out. */
  readonly edge?: {
    readonly value: string;
    readonly band: number;
    readonly width: string;
    readonly isUsualBand: boolean;
  };
  /** Thicknesses named or measured at single places; station and offset in mm. */
  readonly points: readonly { readonly name: string; readonly at: readonly [number, number]; readonly value: string }[];
}

export function thicknessOf(
  evaluation: Evaluation,
  values: ReadonlyMap<string, Held>,
  plate: 'top' | 'back',
  settings: ShopSettings,
): { readonly thickness?: PlateThickness } {
  const written = (path: string) => {
    const held = values.get(path);
    return held && writeOnPaper(path, held.value, settings);
  };
  const centre = written(`${plate}.thickness`);
  if (centre === undefined || evaluation.number(`${plate}.thickness`) === undefined) return {};
  const edge = written(`${plate}.edge-thickness`);
  const stated = evaluation.number(`${plate}.edge-width`);
  const isUsualBand = !evaluation.isSaid(`${plate}.edge-width`);
  const band = isUsualBand ? takenAs(`${plate}.edge-width`)!.si : stated;
  const isTapered = edge !== undefined && evaluation.number(`${plate}.edge-thickness`) !== undefined && edge !== centre;
  return {
    thickness: {
      centre,
      ...(isTapered && band !== undefined
        ? { edge: { value: edge, band: millimetres(band), width: lengthOnPaper(band, settings), isUsualBand } }
        : {}),
      points: pointsOf(values, `${plate}.map`, settings),
    },
  };
}

function pointsOf(values: ReadonlyMap<string, Held>, map: string, settings: ShopSettings): PlateThickness['points'] {
  const names = new Set(
    [...values.keys()].filter((path) => isWithin(path, map)).flatMap((path) => path.split('.').slice(2, 3)),
  );
  return [...names].flatMap((name) => {
    const at = pointOf(values.get(`${map}.${name}.at`)?.value);
    const path = `${map}.${name}.thickness`;
    const held = values.get(path);
    return at && held ? [{ name, at, value: writeOnPaper(path, held.value, settings) }] : [];
  });
}

function pointOf(value: Value | undefined): readonly [number, number] | undefined {
  if (value?.kind !== 'point') return undefined;
  const [station, offset] = [value.station.quantity.si, value.offset.quantity.si];
  return [millimetres(station), millimetres(offset)];
}

function millimetres(metres: number): number {
  return Math.round(metres * 1e5) / 100;
}
