/** Every derived quantity of an instrument, in the order a maker reads them. */
import type { DerivedQuantity } from '../evaluation/evaluation.js';
import { BODY_QUANTITIES } from './body-quantities.js';
import { BRACE_QUANTITIES } from './brace-quantities.js';
import { CLIMATE_QUANTITIES } from './climate-quantities.js';
import { MASS_QUANTITIES } from './mass-quantities.js';
import { MODE_QUANTITIES } from './mode-quantities.js';
import { PLATE_QUANTITIES } from './plate-quantities.js';
import { WHOLE_QUANTITIES } from './whole-quantities.js';
import { SETUP_QUANTITIES } from './setup-quantities.js';
import { VOICE_QUANTITIES } from './voice-quantities.js';
import { STRING_QUANTITIES } from './string-quantities.js';

export const INSTRUMENT_QUANTITIES: readonly DerivedQuantity[] = [
  ...PLATE_QUANTITIES,
  ...BRACE_QUANTITIES,
  ...CLIMATE_QUANTITIES,
  ...BODY_QUANTITIES,
  ...STRING_QUANTITIES,
  ...SETUP_QUANTITIES,
  ...MASS_QUANTITIES,
  ...WHOLE_QUANTITIES,
  ...MODE_QUANTITIES,
  ...VOICE_QUANTITIES,
];
