/** The stages in words, as they head a page. */
import { english, type Wording } from '../wording/wording.js';
import type { Stage } from './property.js';

const TITLES: Readonly<Record<Stage, string>> = {
  commission: english('Commission'),
  wood: english('Wood'),
  joining: english('Joining'),
  rosette: english('Rosette'),
  thicknessing: english('Thicknessing'),
  outline: english('Outline'),
  bracing: english('Bracing'),
  rim: english('Rim'),
  closing: english('Closing'),
  binding: english('Binding'),
  neck: english('Neck'),
  'neck-angle': english('Neck angle and bridge place'),
  finish: english('Finish'),
  setup: english('Bridge and setup'),
  'first-tests': english('First tests'),
  settling: english('Settling'),
  delivery: english('Delivery'),
  returns: english('Returns'),
};

export function stageTitle(stage: Stage, { text }: Wording): string {
  return text(TITLES[stage]);
}
