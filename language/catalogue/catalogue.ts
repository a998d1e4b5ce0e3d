/**
 * The parts catalogue: every part and property of a guitar recipe and of what goes with it, and the questions asked of
 * it. Completion, hover, validation and the manual all read this one table. To add a property, add one entry to the
 * file of its area.
 */
import type { DefinitionKind } from '../facts/facts.js';
import { APPOINTMENT_PARTS, APPOINTMENT_PROPERTIES } from './appointments.js';
import { BACK_BRACING_PARTS, BACK_BRACING_PROPERTIES } from './back-bracing.js';
import { BODY_OPENING_PARTS, BODY_OPENING_PROPERTIES } from './body-openings.js';
import { BODY_OUTLINE_PARTS, BODY_OUTLINE_PROPERTIES } from './body-outline.js';
import { BRACING_PARTS, BRACING_PROPERTIES } from './bracing.js';
import { BRIDGE_PARTS, BRIDGE_PROPERTIES } from './bridge-entries.js';
import { BUILD_PARTS, BUILD_PROPERTIES } from './build.js';
import { Catalogue } from './questions.js';
import { ELECTRONICS_PARTS, ELECTRONICS_PROPERTIES } from './electronics.js';
import { FINGERBOARD_PARTS, FINGERBOARD_PROPERTIES } from './fingerboard.js';
import { FINISH_PARTS, FINISH_PROPERTIES } from './finish-entries.js';
import { INSTRUMENT_PROPERTIES } from './instrument-entries.js';
import { NECK_PARTS, NECK_PROPERTIES } from './neck.js';
import { otherWords } from './other-words.js';
import { ORDER_PROPERTIES } from './order.js';
import { PLATE_PARTS, PLATE_PROPERTIES } from './plates.js';
import type { Part, Property } from './property.js';
import { READING_PARTS, READING_PROPERTIES } from './reading-entries.js';
import { RIG_PARTS, RIG_PROPERTIES } from './rig.js';
import { RIM_PARTS, RIM_PROPERTIES } from './rim.js';
import { SETUP_PARTS, SETUP_PROPERTIES } from './setup-entries.js';
import { SHOP_PARTS, SHOP_PROPERTIES } from './shop.js';
import { SPECIES_PARTS, SPECIES_PROPERTIES } from './species.js';
import { STRING_PARTS, STRING_PROPERTIES } from './string-entries.js';
import { WOOD_PARTS, WOOD_PROPERTIES } from './wood-entries.js';

export { Catalogue } from './questions.js';
export type { Children } from './questions.js';

/** In the order in which a recipe is best read. */
const PROPERTIES: readonly Property[] = [
  ...INSTRUMENT_PROPERTIES,
  ...BODY_OUTLINE_PROPERTIES,
  ...BODY_OPENING_PROPERTIES,
  ...PLATE_PROPERTIES,
  ...BRACING_PROPERTIES,
  ...BACK_BRACING_PROPERTIES,
  ...RIM_PROPERTIES,
  ...BRIDGE_PROPERTIES,
  ...NECK_PROPERTIES,
  ...FINGERBOARD_PROPERTIES,
  ...SETUP_PROPERTIES,
  ...STRING_PROPERTIES,
  ...FINISH_PROPERTIES,
  ...ELECTRONICS_PROPERTIES,
  ...APPOINTMENT_PROPERTIES,
  ...SHOP_PROPERTIES,
  ...WOOD_PROPERTIES,
  ...SPECIES_PROPERTIES,
  ...RIG_PROPERTIES,
  ...BUILD_PROPERTIES,
  ...READING_PROPERTIES,
  ...ORDER_PROPERTIES,
];

const PARTS: readonly Part[] = [
  ...BODY_OUTLINE_PARTS,
  ...BODY_OPENING_PARTS,
  ...PLATE_PARTS,
  ...BRACING_PARTS,
  ...BACK_BRACING_PARTS,
  ...RIM_PARTS,
  ...BRIDGE_PARTS,
  ...NECK_PARTS,
  ...FINGERBOARD_PARTS,
  ...SETUP_PARTS,
  ...STRING_PARTS,
  ...FINISH_PARTS,
  ...ELECTRONICS_PARTS,
  ...APPOINTMENT_PARTS,
  ...SHOP_PARTS,
  ...WOOD_PARTS,
  ...SPECIES_PARTS,
  ...RIG_PARTS,
  ...BUILD_PARTS,
  ...READING_PARTS,
];

/** The kinds in which a path is looked for when nobody says which is meant, best first. */
const USUAL_KINDS: readonly DefinitionKind[] = [
  'recipe',
  'model',
  'build',
  'appointments',
  'order',
  'wood',
  'strings',
  'species',
  'rig',
  'shop',
];

export const catalogue = new Catalogue(
  PARTS.map((part) => ({ ...part, synonyms: otherWords(part) })),
  PROPERTIES.map((property) => ({ ...property, synonyms: otherWords(property) })),
  USUAL_KINDS,
);
