/** What can be worked out about a set of strings by itself: weight and pitch of each, counted from the highest. */
import { type StringKind, stringWeight } from '../../mechanics/strings/string-weight.js';
import { stringLoss } from '../../mechanics/voice/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { frequencyOf } from '../../quantities/pitch.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { PLAIN_STRING_ERROR, WOUND_STRING_ERROR } from './model-errors.js';

export const STRING_SET_QUANTITIES: readonly DerivedQuantity[] = [
  {
    path: 'count',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'How many strings the set has.',
    formula: 'the length of `gauges`, or the strings named one by one',
    source: 'counting',
    compute: (ask) => stringsOf(ask).length || ask.missing('gauges'),
  },
  {
    path: '*.unit-weight',
    dimension: DIMENSION.lineDensity,
    unit: 'g/m',
    sentence: 'Mass per length of one string, counted from the highest.',
    formula: 'plain: ρ·π·d²/4; wound: core and wrap with round-wire packing π/4',
    source: 'geometry; core rule fitted to published unit weights',
    compute: (ask) => {
      const charted = ask.numberIf(`unit-weights.${ask.member}`) ?? ask.numberIf(`string.${nameOf(ask)}.unit-weight`);
      if (charted !== undefined) return charted;
      ask.doubt(UNWOUND.has(kindOf(ask)) ? PLAIN_STRING_ERROR : WOUND_STRING_ERROR);
      return weightOf(ask).massPerLength;
    },
  },
  {
    path: '*.gauge',
    dimension: DIMENSION.length,
    unit: 'mm',
    sentence: 'Diameter of one string, counted from the highest.',
    formula: 'as the set gives it',
    source: 'the set',
    compute: gauge,
  },
  {
    path: '*.core',
    dimension: DIMENSION.length,
    unit: 'mm',
    sentence: 'Diameter of the part of one string that carries the tension: the core of a wound one.',
    formula: 'as given, or d of a plain string, or 0.4 d of a wound one of steel',
    source: 'common practice: cores of 0.36 to 0.45 of the gauge',
    compute: carryingCore,
  },
  {
    path: '*.core-modulus',
    dimension: DIMENSION.pressure,
    unit: 'GPa',
    sentence: 'Stiffness of the material that carries the tension of one string.',
    formula: 'by what the core is made of',
    source: 'handbook values for music wire and nylon (from memory)',
    compute: (ask) => weightOf(ask).coreModulus,
  },
  {
    path: '*.loss',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'Share of its swing (1/Q) that one open string loses by itself, to the air and inside.',
    formula: 'η + (2πη_air + 2πd·√(π·η_air·ρ·f))/(2πf·μ), η by what it is made of',
    source: 'G. G. Stokes 1851; C. Valette 1995; J. Woodhouse 2004 (from memory); within a factor of two',
    compute: (ask) =>
      ask.numberIf(`losses.${ask.member}`) ??
      ask.numberIf(`string.${nameOf(ask)}.loss`) ??
      stringLoss(
        { kind: kindOf(ask), gauge: gauge(ask), massPerLength: ask.number(`${ask.member}.unit-weight`) },
        ask.number(`${ask.member}.pitch`),
      ),
  },
  {
    path: '*.pitch',
    dimension: DIMENSION.frequency,
    unit: 'Hz',
    sentence: 'Pitch of one open string, counted from the highest.',
    formula: '440·2^(n/12)',
    source: 'ISO 16 (A4 = 440 Hz), equal temperament',
    compute: (ask) => {
      const note = noteOf(ask);
      const frequency = note === undefined ? undefined : frequencyOf(note);
      return frequency ?? ask.missing('tuning');
    },
  },
];

/** Standard tuning, from the highest string, for a set of six that does not say otherwise. */
const STANDARD_TUNING = ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'];

function stringsOf(ask: Ask): readonly string[] {
  const listed = ask.members('gauges');
  return listed.length > 0 ? listed : ask.members('string');
}

/** What weighs as the chart says is a thicker core than the one that pulls: for that the winding counts too. */
function carryingCore(ask: Ask): number {
  const { core, coreModulus } = weightOf(ask);
  const stated = ask.numberIf(`string.${nameOf(ask)}.core`);
  if (stated !== undefined || core === gauge(ask) || coreModulus < STEEL) return core;
  ask.assume('the core of a wound string is taken as 0.4 of its gauge');
  return 0.4 * gauge(ask);
}

/** Pa: anything as stiff is a metal. */
const STEEL = 1e11;

function weightOf(ask: Ask) {
  return stringWeight(kindOf(ask), gauge(ask), ask.numberIf(`string.${nameOf(ask)}.core`));
}

function place(ask: Ask): number {
  return Number(ask.member);
}

/** The maker's own name for a string of a set that lists them one by one. */
function nameOf(ask: Ask): string {
  return ask.members('string')[place(ask) - 1] ?? '';
}

function gauge(ask: Ask): number {
  return ask.numberIf(`gauges.${ask.member}`) ?? ask.numberIf(`string.${nameOf(ask)}.gauge`) ?? ask.missing('gauges');
}

function listed(ask: Ask, list: string): string | undefined {
  const value = ask.value(list);
  const item = value?.kind === 'list' ? value.items[place(ask) - 1] : undefined;
  return item?.kind === 'name' ? item.name : item?.kind === 'text' ? item.text : undefined;
}

function noteOf(ask: Ask): string | undefined {
  const own = ask.word(`string.${nameOf(ask)}.note`) ?? listed(ask, 'tuning');
  if (own !== undefined) return own;
  if (ask.value('tuning') !== undefined || stringsOf(ask).length !== 6) return undefined;
  ask.assume('the strings are taken to be tuned E A D G B E');
  return STANDARD_TUNING[place(ask) - 1];
}

/** Kinds of one material all through. */
const UNWOUND: ReadonlySet<StringKind> = new Set(['plain steel', 'nylon', 'fluorocarbon']);

/** The catalogue's words for what a string is made of, as the mechanics knows them. */
const WRAPS: ReadonlyMap<string, StringKind> = new Map(
  Object.entries<StringKind>({
    'phosphor-bronze': 'phosphor bronze',
    'bronze-80-20': '80/20 bronze',
    'nickel-plated-steel': 'nickel-plated steel',
    'pure-nickel': 'nickel-plated steel',
    'stainless-steel': 'stainless steel',
    'silk-and-steel': 'silver-plated on nylon',
    'silver-plated-copper': 'silver-plated on nylon',
    nylon: 'silver-plated on nylon',
    'titanium-nylon': 'silver-plated on nylon',
    fluorocarbon: 'silver-plated on nylon',
  }),
);

function kindOf(ask: Ask): StringKind {
  const material = ask.word(`string.${nameOf(ask)}.material`) ?? ask.word('material');
  const soft = ['nylon', 'gut'].includes(ask.word('kind') ?? '') || material === 'nylon' || material === 'fluorocarbon';
  if (!isWound(ask, soft)) return !soft ? 'plain steel' : material === 'fluorocarbon' ? 'fluorocarbon' : 'nylon';
  if (material === undefined && !soft) ask.assume('the wound strings are taken to be phosphor bronze');
  return WRAPS.get(material ?? (soft ? 'silver-plated-copper' : 'phosphor-bronze')) ?? 'phosphor bronze';
}

/** A third string of .020 in or more is usually wound; the soft trebles of a classical set never are. (common practice) */
function isWound(ask: Ask, soft: boolean): boolean {
  const said = ask.word(`string.${nameOf(ask)}.winding`) ?? listed(ask, 'wound');
  if (said !== undefined) return said === 'wound';
  return soft ? place(ask) > 3 : gauge(ask) >= 0.02 * 0.0254;
}
