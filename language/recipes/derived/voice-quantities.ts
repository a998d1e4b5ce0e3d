/**
 * What is heard, in a maker's terms: how loud a note starts, how long it lasts, how even the notes are. Decibels and seconds by
 * themselves are approximate; differences between two recipes are what they are for. Nothing here claims beauty.
 */
import type { Summary } from '../../mechanics/voice/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { DerivedQuantity } from '../evaluation/evaluation.js';
import { type FigureOf, type Voice, voiceOf, voiceSlopes } from './voice-board.js';

const CHAIN =
  'J. Woodhouse, Acta Acustica 90 (2004) 928; C. E. Gough, Acustica 49 (1981) 124; O. Christensen 1980–1984 (from memory); below 400 Hz only';
const PLUCK = 'one pluck: 5 N straight up, 120 mm from the saddle, every note to the twelfth fret up to 400 Hz';

/** Instruments built alike differ by about 1 dB in level and a sixth in decay, as their resonances do by 2 %. (from memory) */
const LEVEL_SCATTER = 0.0125;
const SUSTAIN_SCATTER = 0.15;

export const VOICE_QUANTITIES: readonly DerivedQuantity[] = [
  voice({
    path: 'voice.loudness',
    dimension: DIMENSION.level,
    unit: 'dB',
    voicing: true,
    scatter: LEVEL_SCATTER,
    sentence: 'How loud a note starts, one metre away, over the whole fingerboard.',
    formula: `p = ρω|U|/4πr, mean of the first ⅛ s; ${PLUCK}`,
    figure: ({ whole }) => whole.level,
  }),
  voice({
    path: 'voice.sustain',
    dimension: DIMENSION.time,
    unit: 's',
    voicing: true,
    scatter: SUSTAIN_SCATTER,
    sentence: 'How long a note takes to fall by 60 dB, over the whole fingerboard.',
    formula: 'T60 = 6.91/α, (ω − ω_s)(ω − p) = g² for string and body; geometric mean of the lowest partials',
    figure: ({ whole }) => whole.sustain,
  }),
  voice({
    path: 'voice.unevenness',
    dimension: DIMENSION.level,
    unit: 'dB',
    scatter: 0.25,
    sentence: 'How far a note starts louder or softer than its neighbours on the string: the lower, the more even.',
    formula: '√(mean of (L_n − (L_n−1 + L_n+1)/2)²)',
    figure: ({ whole }) => whole.unevenness,
  }),
  sharpness('air', 'Sharpness (Q) of the main air resonance.'),
  sharpness('top', 'Sharpness (Q) of the main top resonance.'),
  sharpness('back', 'Sharpness (Q) of the main back resonance.'),
  stringFigure({
    path: 'strings.*.loudness',
    dimension: DIMENSION.level,
    unit: 'dB',
    scatter: LEVEL_SCATTER,
    sentence: 'How loud a note on one string starts, counted from the highest.',
    formula: `p = ρω|U|/4πr; ${PLUCK}`,
    figure: (summary) => summary.level,
  }),
  stringFigure({
    path: 'strings.*.sustain',
    dimension: DIMENSION.time,
    unit: 's',
    scatter: SUSTAIN_SCATTER,
    sentence: 'How long a note on one string takes to fall by 60 dB, counted from the highest.',
    formula: 'T60 = 6.91/α of the lowest partials, geometric mean',
    figure: (summary) => summary.sustain,
  }),
];

type Row = Pick<DerivedQuantity, 'path' | 'dimension' | 'unit' | 'sentence' | 'formula' | 'voicing' | 'scatter'>;

function voice({ figure, ...row }: Row & { readonly figure: FigureOf }): DerivedQuantity {
  return {
    ...row,
    slow: true,
    source: CHAIN,
    compute: (ask) => figure(voiceOf(ask)) ?? ask.missing('strings'),
    slopes: (ask) => voiceSlopes(ask, figure),
  };
}

function stringFigure({ figure, ...row }: Row & { readonly figure: (summary: Summary) => number }): DerivedQuantity {
  const of =
    (member: string): FigureOf =>
    (heard) => {
      const summary = heard.strings[Number(member) - 1];
      return summary && figure(summary);
    };
  return {
    ...row,
    slow: true,
    source: CHAIN,
    compute: (ask) => of(ask.member)(voiceOf(ask)) ?? ask.missing(`strings.${ask.member}.pitch`),
    slopes: (ask) => voiceSlopes(ask, of(ask.member)),
  };
}

function sharpness(of: 'air' | 'top' | 'back', sentence: string): DerivedQuantity {
  return voice({
    path: `voice.q.${of}`,
    dimension: DIMENSION.number,
    unit: '',
    scatter: 0.2,
    sentence,
    formula: '1/Q = Σ share of the strain energy × loss of the wood + rim + ρω·A²/(4πc·M)',
    figure: ({ board }) => {
      const mode = mainMode(board, of);
      return mode && (2 * Math.PI * mode.frequency) / mode.damping;
    },
  });
}

/** The mode of the body in which the main mode of a part moves most. */
function mainMode({ body, modes }: Voice['board'], of: 'air' | 'top' | 'back') {
  return modes
    .filter(({ mostly }) => body.modes[mostly]!.of === of && body.modes[mostly]!.main)
    .sort((a, b) => b.share - a.share)[0];
}
