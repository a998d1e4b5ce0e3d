/** Modes of a tapped blank by their nodal lines: that there are such modes, and that they belong to one plate. */
import {
  isHeard,
  modeOfWord,
  modeWord,
  MOST_LINES_ACROSS,
  MOST_LINES_ALONG,
  writeMode,
} from '../../facts/plate-mode.js';
import type { Definition } from '../../facts/facts.js';
import { oddPeak, RELATED_MODES } from '../../mechanics/wood/tap-modes.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import { isOfHalfPlate } from '../../recipes/derived/tapped.js';
import type { Written } from '../../recipes/instrument/written.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isInForce } from '../in-force.js';
import type { Rule } from '../rule.js';

export const NO_SUCH_MODE: Rule = {
  code: 'no-such-mode',
  severity: 'error',
  title: 'Nodal lines no free plate has',
  reason:
    'With fewer than two nodal lines a free plate moves or tilts as a whole and does not ring. With very many the modes lie so close together that no tap tells them apart.',
  bad: `wood spruce-12 is sitka-spruce { tap { mode (0,1): 54 Hz } }`,
  good: `wood spruce-12 is sitka-spruce { tap { mode (1,1): 54 Hz } }`,
  of: ['wood'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const written of workshop.written(definition)) {
      const mode = unheardMode(written);
      if (!mode) continue;
      const named = writeMode(mode);
      report(
        written.path.span,
        mode.linesAlong + mode.linesAcross < 2
          ? say`A free plate does not ring with nodal lines ${named}: it takes two at least. The twist is (1,1), bending along the grain (0,2), across it (2,0); the lines along the grain come first.`
          : say`Nodal lines ${named} are more than a tap tells apart: ${MOST_LINES_ALONG} along the grain and ${MOST_LINES_ACROSS} across it are read at most. The lines along the grain come first.`,
      );
    }
  },
};

export const TAPS_DISAGREE: Rule = {
  code: 'taps-disagree',
  severity: 'warning',
  title: 'Taps that do not belong to one plate',
  reason:
    'Four taps of a blank and more say the same few things about it over and over, so they can be held against one another. When they disagree, one of them is another mode than it is said to be, or the blank did not lie free.',
  bad: `wood spruce-12 is sitka-spruce {
  blank: 581 mm x 218 mm x 5 mm  mass: 272.8 g
  tap { along: 81 Hz  twist: 56.5 Hz  mode (1,2): 152 Hz  across: 162.5 Hz  mode (2,2): 293 Hz }
}`,
  good: `wood spruce-12 is sitka-spruce {
  blank: 581 mm x 218 mm x 5 mm  mass: 272.8 g
  tap { along: 81 Hz  twist: 56.5 Hz  mode (1,2): 140 Hz  across: 162.5 Hz  mode (2,2): 293 Hz }
}`,
  of: ['wood'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const wood = isInForce(definition, workshop) ? workshop.wood(definition.name.text) : undefined;
    if (!wood || !isOfHalfPlate((path) => wood.number(path))) return;
    const read = RELATED_MODES.flatMap((mode) => {
      const word = modeWord({ linesAlong: Number(mode[0]), linesAcross: Number(mode[1]) });
      const frequency = wood.number(`tap.${word}`);
      const written =
        frequency !== undefined && frequency > 0 ? writtenAt(`tap.${word}`, definition, workshop) : undefined;
      return frequency !== undefined && written ? [{ mode, frequency, written }] : [];
    });
    const odd = oddPeak(Object.fromEntries(read.map(({ mode, frequency }) => [mode, frequency])));
    const last = read.at(-1);
    if (!odd || !last) return;
    const at = read.find(({ mode }) => mode === odd.mode);
    if (at && odd.expected !== undefined) {
      const would = writeQuantity(odd.expected, DIMENSION.frequency);
      report(
        at.written.statement.span,
        say`By the other taps this one would lie near ${would}. Check which mode it is, and that the blank lay free.`,
      );
      return;
    }
    report(
      last.written.statement.span,
      say`The taps of this blank contradict one another. Check which mode each of them is, and that the blank lay free on soft supports.`,
      {
        related: read
          .filter((one) => one !== last)
          .map(({ written }) => ({
            place: { definition, span: written.statement.span },
            message: say`one of the taps`,
          })),
      },
    );
  },
};

/** A tap named by nodal lines of which there is no mode. */
export function unheardMode({ canonical, role }: Written) {
  const [part, word] = canonical.split('.');
  const mode = part === 'tap' && word !== undefined && role === 'value' ? modeOfWord(word) : undefined;
  return mode && !isHeard(mode) ? mode : undefined;
}

function writtenAt(path: string, definition: Definition, workshop: Workshop): Written | undefined {
  return workshop.written(definition).find(({ canonical, role }) => canonical === path && role === 'value');
}
