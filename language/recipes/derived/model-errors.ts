/**
 * How far the formulas themselves are off, whatever goes into them: relative standard uncertainties, by quantity. What is the
 * same for all bodies computed alike (`common`) cancels when two of them are compared; `own` does not.
 *
 * Together the two of the plate solver are no less than the root mean square of its table of accuracy (a test works it out again
 * from `mechanics/plate/accuracy.md`). Bodies that are compared are mostly of one model, so `own` is what differs within a sweep
 * of one size: 0.3 % of a frequency, 0.5 to 1 % of what is read under load. Where a figure is from memory it says so.
 */
import { english } from '../../wording/wording.js';
import type { ModelError } from '../evaluation/derived-quantity.js';

const AGAINST_SOLIDS = 'eleven braced tops in CalculiX, shells and solid elements: accuracy.md';

/** The plate solver, by what it gives. */
export const PLATE_ERRORS = {
  frequency: {
    key: 'plate-frequency',
    name: english('the plate solver'),
    common: 0.012,
    own: 0.003,
    source: AGAINST_SOLIDS,
  },
  rotation: {
    key: 'plate-rotation',
    name: english('the plate solver'),
    common: 0.02,
    own: 0.015,
    source: AGAINST_SOLIDS,
  },
  /** Dip and belly are taken close to the bridge, where a thick block turns most sharply. */
  sag: {
    key: 'plate-sag',
    name: english('the plate solver'),
    common: 0.05,
    own: 0.01,
    source: 'the same, where its bridge plate ends at the legs of the X',
  },
} satisfies Record<string, ModelError>;

/**
 * Nobody has said how stiffly the rim holds the edge: between hinged, as it is computed, and clamped lie 36 % of the first
 * mode of a braced top; anything between is as likely, u = 36 %/√12. Shops build their rims alike.
 */
export const RIM_ERROR: ModelError = {
  key: 'rim',
  name: english('how stiffly the rim holds the edge'),
  common: 0.104,
  own: 0.01,
  source: 'hinged and clamped X-braced top in CalculiX; rectangular distribution (JCGM 100:2008, 4.3.7)',
};

/** Three oscillators stand for all that a body does: what lies above them is left out. */
export const COUPLED_ERROR: ModelError = {
  key: 'coupled-body',
  name: english('the three oscillators that stand for the body'),
  common: 0.03,
  own: 0.003,
  source: 'spread of computed against measured guitars in the literature of the model, from memory',
};

/**
 * The plug of air in a soundhole is between π/2·r (thin, no flange) and 16r/3π (two flanges) long: 8 % of its length, 4 % of the
 * frequency; and the air is not springy everywhere alike.
 */
export const RIGID_AIR_ERROR: ModelError = {
  key: 'rigid-air',
  name: english('the length of the plug of air in the soundhole'),
  common: 0.04,
  own: 0.003,
  source:
    'D. Politzer, Sound Hole Sound, arXiv:1505.04787; Fletcher & Rossing, The Physics of Musical Instruments (from memory)',
};

/** Plain steel is a cylinder of known density. */
export const PLAIN_STRING_ERROR: ModelError = {
  key: 'plain-strings',
  name: english('the density of plain strings'),
  common: 0.002,
  own: 0.002,
  source: 'makers’ charts of 22 plain strings',
};

/** Core and wrap of a wound string are seldom told; makers differ. */
export const WOUND_STRING_ERROR: ModelError = {
  key: 'wound-strings',
  name: english('how wound strings are made'),
  common: 0.02,
  own: 0.015,
  source: 'makers’ charts of 33 wound strings',
};

const PLATES = 'five half-plates of guitar spruce, D. G. Badiane et al., J. Acoust. Soc. Am.';

/**
 * Two boards of one species differ in the ratio of their stiffnesses as much as in the stiffnesses: scatter of the ratio over
 * measured boards. It belongs to the board.
 */
export const RATIO_ERRORS = {
  across: ratio('across', english('the ratio of stiffness across to along, which differs from board to board'), 0.26),
  twist: ratio(
    'twist',
    english('the ratio of twist stiffness to stiffness along, which differs from board to board'),
    0.28,
  ),
  throughShear: ratio(
    'through shear',
    english('the shear stiffness through the thickness, which differs from board to board'),
    0.28,
  ),
  /** Rolling shear is known to tens of per cent only: handbook ratios of two spruces differ threefold. */
  rollingShear: ratio('rolling-shear', english('the rolling shear stiffness, which differs from board to board'), 0.4),
} satisfies Record<string, ModelError>;

function ratio(key: string, name: string, own: number): ModelError {
  return { key: `ratio-${key}`, name, common: 0, own, source: PLATES };
}

/** Closed forms for taps and deflections, against twenty three-dimensional finite-element plates of the same source. */
export const READING_ERRORS = {
  along: closedForm('tap-along', 0.003),
  across: closedForm('tap-across', 0.03),
  twist: closedForm('tap-twist', 0.016),
  /** A plank bends across its width too and gives way in shear. */
  plank: closedForm('deflection', 0.02),
} satisfies Record<string, ModelError>;

function closedForm(key: string, own: number): ModelError {
  const name = english('the closed form that the reading is worked out with');
  return { key: `closed-form-${key}`, name, common: 0, own, source: `finite-element plates, ${PLATES}` };
}

/** How far the taps of a board disagree with the plate fitted to them; `own` comes from each fit. */
export const FIT_SPREAD: ModelError = {
  key: 'fit',
  name: english('the taps, which do not all belong to one plate, and the Poisson ratio, which nobody read'),
  common: 0,
  own: 0,
  source: 'least squares: misfit beyond the readings’ own (JCGM 100:2008, H.3)',
};

/**
 * The three taps worked out from other modes of the same blank: standard deviation of the square of the frequency over twenty
 * finite-element plates (a test holds them to twice as much).
 */
export const RELATION_ERRORS = {
  along: relation('along', 0.025),
  across: relation('across', 0.05),
  twist: relation('twist', 0.02),
} satisfies Record<string, ModelError>;

function relation(key: string, own: number): ModelError {
  const name = english('the rule by which one tap is worked out from others');
  return { key: `tap-relation-${key}`, name, common: 0, own, source: `finite-element plates, ${PLATES}` };
}
