/** What is heard: how loud a note starts, how long it lasts, how even the notes are, and which is a wolf. */
export { energyShare, USUAL_LOSS_RATIOS } from './energy-shares.js';
export {
  type Fingerboard,
  fingerboard,
  type FingerboardInput,
  LAST_FRET,
  mobilityUnder,
  type Summary,
  summaryOf,
  withString,
  type Wolf,
  wolvesOf,
} from './fingerboard.js';
export {
  type CoupledBodyMode,
  coupledBodyModes,
  type ModeOf,
  type PartMode,
  response,
  type SoundingBody,
} from './sounding-body.js';
export { BAND_TOP, type NoteSplit, type SoundingNote, type SoundingString } from './sounding-note.js';
export { STANDARD_PLUCK } from './standard-pluck.js';
export { type StringMake, stringLoss } from './string-loss.js';
