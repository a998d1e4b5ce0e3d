/** Figures of a drawing: millimetres without their unit, as ISO 129-1 has them, or inches with theirs. */
import type { ShopSettings } from '../../recipes/instrument/shop-settings.js';
import type { Wording } from '../../wording/wording.js';
import type { DimensionWords } from './plan-dimensions.js';

export function dimensionWords({ units }: Pick<ShopSettings, 'units'>, { text }: Wording): DimensionWords {
  return {
    length: (mm) => (units === 'inch' ? `${(mm / 25.4).toFixed(3)} in` : String(Math.round(mm * 100) / 100)),
    angle: (rad) => `${Math.round((rad * 1800) / Math.PI) / 10}°`,
    text,
  };
}
