/** The help of the command line in the language of the terminal: its maker knows the titles and remarks in English only. */
import type { Argument, Help, Option } from 'commander';
import type { Wording } from '../wording/wording.js';

export function helpIn({ text, say }: Wording): Partial<Help> {
  const titles = new Map([
    ['Usage:', text('Usage:')],
    ['Arguments:', text('Arguments:')],
    ['Options:', text('Options:')],
    ['Commands:', text('Commands:')],
  ]);
  const inBrackets = (term: string) =>
    term.replace('[options]', `[${text('options')}]`).replace('[command]', `[${text('command')}]`);

  /** What may be given, and what is taken where nothing is. */
  function described({ description, argChoices, defaultValue }: Described): string {
    const choices = argChoices ? [say`one of ${argChoices.join(', ')}`] : [];
    const usual = typeof defaultValue === 'string' ? [say`otherwise ${defaultValue}`] : [];
    const remarks = [...choices, ...usual];
    return remarks.length === 0 ? description : `${description} (${remarks.join('; ')})`;
  }

  return {
    styleTitle: (title) => titles.get(title) ?? title,
    styleUsage: inBrackets,
    styleSubcommandTerm: inBrackets,
    optionDescription: described,
    argumentDescription: described,
  };
}

type Described = Pick<Option & Argument, 'description' | 'argChoices' | 'defaultValue'>;
