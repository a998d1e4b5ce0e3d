/** What can be wrong with the text itself; found while it is read, explained here. */
import type { ProblemCode } from '../../facts/facts.js';
import type { Severity } from '../finding.js';

export interface TextRule {
  readonly severity: Severity;
  readonly title: string;
  readonly reason: string;
  readonly bad: string;
  readonly good: string;
}

export const PROBLEM_RULES: Readonly<Record<ProblemCode, TextRule>> = {
  'unreadable-line': {
    severity: 'error',
    title: 'A line that does not read',
    reason: 'The line is left out, and everything around it is read as if it were not there. Nothing in it is guessed.',
    bad: `model tarn { top thickness 2.8 mm }`,
    good: `model tarn { top.thickness: 2.8 mm }`,
  },
  'unclosed-block': {
    severity: 'error',
    title: 'A block without its closing brace',
    reason: 'It is read as if the brace stood before the next definition, which may not be where it was meant.',
    bad: `model tarn { top { thickness: 2.8 mm }
recipe tarn-1 for tarn { }`,
    good: `model tarn { top { thickness: 2.8 mm } }
recipe tarn-1 for tarn { }`,
  },
  'stray-brace': {
    severity: 'error',
    title: 'A closing brace too many',
    reason: 'Each closing brace ends the block opened last; one more ends nothing.',
    bad: `model tarn { scale: 645 mm } }`,
    good: `model tarn { scale: 645 mm }`,
  },
  'unclosed-text': {
    severity: 'error',
    title: 'A text without its closing quote',
    reason: 'The text is read up to the end of the line.',
    bad: `model tarn {
  title: "Tarn
}`,
    good: `model tarn {
  title: "Tarn"
}`,
  },
  'missing-name': {
    severity: 'error',
    title: 'A definition without a name',
    reason: 'What has no name cannot be named by anything else.',
    bad: `model { scale: 645 mm }`,
    good: `model tarn { scale: 645 mm }`,
  },
  'unknown-unit': {
    severity: 'error',
    title: 'A unit that is not known',
    reason: 'The number is not used until its unit is understood.',
    bad: `model tarn { top.thickness: 2.8 mmm }`,
    good: `model tarn { top.thickness: 2.8 mm }`,
  },
  'bad-number': {
    severity: 'error',
    title: 'A number that does not read',
    reason:
      'Some write one and a half as 1,5 and others as 1.5; here decimals have a point, and a comma is asked about.',
    bad: `model tarn { top.thickness: 2,8 mm }`,
    good: `model tarn { top.thickness: 2.8 mm }`,
  },
  'bad-date': {
    severity: 'error',
    title: 'A date that is none, or could be two',
    reason: 'A date is written year first, which means the same day everywhere.',
    bad: `order c-07 { agreed: 2026-02-30 }`,
    good: `order c-07 { agreed: 2026-02-28 }`,
  },
  'bad-character': {
    severity: 'error',
    title: 'A character that means nothing here',
    reason: 'It is left out. It may have come along when text was pasted.',
    bad: 'model tarn { scale: 645 mm }\u0000',
    good: `model tarn { scale: 645 mm }`,
  },
  'too-large': {
    severity: 'error',
    title: 'A file too large to be a recipe',
    reason: 'Files are read while they are typed. One this long is left unread rather than making every key slow.',
    bad: '',
    good: `model tarn { scale: 645 mm }`,
  },
  'too-long': {
    severity: 'error',
    title: 'More than is read',
    reason:
      'What is far longer than anything a maker writes is left out, so that everything else is answered at once. Nothing around it suffers.',
    bad: '',
    good: `model tarn { scale: 645 mm }`,
  },
  'left-out': {
    severity: 'warning',
    title: 'A file that could not be read',
    reason:
      'It is named like a recipe file, and yet it is none that can be read: too large, a link to nothing, or not for you to open. Names it may hold are not known until it can be.',
    // It has no text.
    bad: '',
    good: `model tarn { scale: 645 mm }`,
  },
  'own-fault': {
    severity: 'error',
    title: 'A fault of Bookmatch’s own',
    reason:
      'Something went wrong in Bookmatch itself, not in your recipe. What depends on it is left out here and nowhere else. Please report it with the words of the finding.',
    // No text should bring it about.
    bad: '',
    good: `model tarn { scale: 645 mm }`,
  },
};
