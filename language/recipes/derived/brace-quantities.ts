/** Braces of top and back: length, mass, stiffness alone and glued to their strip of plate. */
import { taken } from './taken.js';
import { braceMass, braceShareAt, halfWaveStiffness, type Brace } from '../../mechanics/braces/carved-brace.js';
import type { Profile } from '../../mechanics/braces/sections.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { braceLineOf } from './layout/brace-line.js';

export const BRACE_QUANTITIES: readonly DerivedQuantity[] = [
  ...quantitiesOf('bracing', 'top'),
  ...quantitiesOf('back-bracing', 'back'),
];

function quantitiesOf(root: string, plate: 'top' | 'back'): readonly DerivedQuantity[] {
  return [
    {
      path: `${root}.*.length`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: 'Length of the brace between its two ends.',
      formula: 'Σ √(Δx² + Δy²)',
      source: 'geometry',
      compute: (ask) => braceLineOf(ask, root, ask.member).length,
    },
    {
      path: `${root}.*.mass`,
      dimension: DIMENSION.mass,
      unit: 'g',
      sentence: 'Mass of the brace as carved.',
      formula: 'm = ρ·∫ A dx',
      source: 'geometry and density',
      compute: (ask) => braceMass(braceOf(ask, root), ask.number(`${woodPath(ask, root, plate)}.density`)),
    },
    {
      path: `${root}.*.stiffness`,
      dimension: DIMENSION.beamStiffness,
      unit: 'N·m²',
      voicing: true,
      sentence: 'Bending stiffness of the brace by itself, as one half-wave along it feels it.',
      formula: 'EI = (2/L)·∫ E·I(x)·sin²(πx/L) dx',
      source: 'Rayleigh quotient of a beam; I of each profile about its centroid',
      compute: (ask) =>
        halfWaveStiffness(braceOf(ask, root), ask.number(`${woodPath(ask, root, plate)}.modulus.along`)),
    },
    {
      path: `${root}.*.glued-stiffness`,
      dimension: DIMENSION.beamStiffness,
      unit: 'N·m²',
      sentence: `Bending stiffness of the brace glued to its strip of the ${plate}.`,
      formula: 'Σ E·I + Σ E·A·(z − z₀)², strip as wide as the brace plus 20 thicknesses',
      source: 'transformed section, parallel axis (textbook); strip width: common practice',
      compute: (ask) => {
        const { brace, modulus, strip } = gluedTo(ask, root, plate);
        return halfWaveStiffness(brace, modulus, strip);
      },
    },
    {
      path: `${root}.*.share`,
      dimension: DIMENSION.number,
      unit: '%',
      sentence: `Share of the stiffness in the middle of the brace that the brace adds to its strip of the ${plate}.`,
      formula: '1 − E·w·h³/12 of the strip alone / EI of the two glued',
      source: 'transformed section, parallel axis (textbook); strip width: common practice',
      compute: (ask) => {
        const { brace, modulus, strip } = gluedTo(ask, root, plate);
        return braceShareAt(brace, modulus, strip, brace.length / 2);
      },
    },
    {
      path: `${root}.mass`,
      dimension: DIMENSION.mass,
      unit: 'g',
      voicing: true,
      sentence: `Mass of all braces of the ${plate}.`,
      formula: 'Σ m of the braces',
      source: 'sum',
      compute: (ask) => {
        const members = ask.members(root);
        if (members.length === 0) return ask.missing(root);
        return members.reduce((sum, member) => sum + ask.number(`${root}.${member}.mass`), 0);
      },
    },
  ];
}

/** The brace's own billet, or the wood named for all braces of the plate, or the plate's own. */
export function woodPath(ask: Ask, root: string, plate: 'top' | 'back', member = ask.member): string {
  const own = `${root}.${member}.wood`;
  if (ask.word(own) !== undefined) return own;
  if (ask.word(`${root}.wood`) !== undefined) return `${root}.wood`;
  ask.assume(`brace ${member} is taken to be of the ${plate}’s wood`);
  return `${plate}.wood`;
}

const PROFILES: readonly Profile[] = ['rectangular', 'triangular', 'parabolic', 'gabled'];

export function braceOf(ask: Ask, root: string, member = ask.member): Brace {
  const at = (word: string) => `${root}.${member}.${word}`;
  const profile = PROFILES.find((name) => name === ask.word(at('profile')));
  if (!profile) ask.assume(`brace ${member} is taken to be rectangular`);
  const length = ask.number(at('length'));
  const height = ask.number(at('height'));
  const width = ask.number(at('width'));
  const endHeight = ask.numberIf(at('end-height'));
  const shoulder = ask.numberIf(at('shoulder'));
  return {
    length,
    height,
    width,
    profile: profile ?? 'rectangular',
    gable: shoulder === undefined ? undefined : { crestShare: shoulder / width },
    ends:
      endHeight === undefined
        ? undefined
        : { height: endHeight, length: ask.numberIf(at('taper.length')) ?? usualTaper(ask, length, member) },
    scallops: scallopsOf(ask, at, length, height),
    stations: stationsOf(ask, at, length),
  };
}

/** Ends are usually run down over 50 mm, or a quarter of a short brace. (common practice) */
function usualTaper(ask: Ask, length: number, member: string): number {
  ask.assume(`brace ${member} is taken to run down to its ends over 50 mm`);
  return Math.min(0.05, length / 4);
}

function scallopsOf(ask: Ask, at: (word: string) => string, length: number, height: number): Brace['scallops'] {
  const depth = ask.numberIf(at('scallop.depth'));
  const left = ask.numberIf(at('scallop.height')) ?? (depth === undefined ? undefined : height - depth);
  if (left === undefined) return undefined;
  const place = ask.numberIf(at('scallop.at')) ?? length / 4;
  const hollow = taken(ask, at('scallop.length'));
  const ends = ask.word(at('scallop.ends'));
  const places = ends === 'both' ? [place, length - place] : ends === 'to' ? [length - place] : [place];
  return places.map((where) => ({ at: where, height: left, length: hollow }));
}

function stationsOf(ask: Ask, at: (word: string) => string, length: number): Brace['stations'] {
  const heights = ask.members(at('heights'));
  if (heights.length < 2) return undefined;
  return heights.map((index, i) => ({
    height: ask.number(`${at('heights')}.${index}`),
    distance: ask.numberIf(`${at('stations')}.${index}`) ?? (length * i) / (heights.length - 1),
  }));
}

function gluedTo(ask: Ask, root: string, plate: 'top' | 'back') {
  const brace = braceOf(ask, root);
  const thickness = ask.number(`${plate}.thickness`);
  const strip = { width: brace.width + 20 * thickness, thickness, modulus: stripModulus(ask, root, plate) };
  return { brace, modulus: ask.number(`${woodPath(ask, root, plate)}.modulus.along`), strip };
}

/**
 * Stiffness of the plate in the direction of the brace, at angle θ to the grain:
 * 1/E = cos⁴θ/E_L + sin⁴θ/E_R + sin²θ·cos²θ·(1/G − 2ν/E_L). Source: R. M. Jones, Mechanics of Composite Materials, Eq. 2.97.
 */
export function stripModulus(ask: Ask, root: string, plate: 'top' | 'back'): number {
  const angle = stripAngle(ask, root, plate);
  const [c, s] = [Math.cos(angle) ** 2, Math.sin(angle) ** 2];
  const along = ask.number(`${plate}.wood.modulus.along`);
  const across = ask.number(`${plate}.wood.modulus.across`);
  const shear = ask.number(`${plate}.wood.modulus.twist`);
  const poisson = ask.number(`${plate}.wood.poisson`);
  return 1 / ((c * c) / along + (s * s) / across + c * s * (1 / shear - (2 * poisson) / along));
}

/** rad, of the brace to the grain of its plate. */
export function stripAngle(ask: Ask, root: string, plate: 'top' | 'back'): number {
  const dx = ask.number(`${root}.${ask.member}.to.station`) - ask.number(`${root}.${ask.member}.from.station`);
  const dy = ask.number(`${root}.${ask.member}.to.offset`) - ask.number(`${root}.${ask.member}.from.offset`);
  return Math.atan2(dy, dx) - taken(ask, `${plate}.grain-angle`);
}
