/** Every word of the language with what it means: one list made from the tables, for the terminal, the editor and the reference. */
import { wordsForChoice } from '../../catalogue/choice-words.js';
import { ELSEWHERE } from '../../catalogue/elsewhere.js';
import { STAGES } from '../../catalogue/property.js';
import { SHORTCUTS } from '../../catalogue/shortcuts.js';
import { stageTitle } from '../../catalogue/stage-titles.js';
import { wordsForSpecies } from '../../catalogue/wood-words.js';
import { rulePages } from '../../checks/manual.js';
import { DEFINITION_KINDS } from '../../facts/facts.js';
import { KIND_WORDS } from '../../facts/kind-words.js';
import { UNITS } from '../../quantities/units.js';
import type { Workshop } from '../../recipes/workshop.js';
import { KEYWORDS } from '../keywords.js';
import { partsOf, propertiesOf, quantitiesOf } from './catalogue-words.js';
import type { Entry } from './entry.js';

export function wordEntries(workshop: Workshop): readonly Entry[] {
  return [
    ...keywords(workshop),
    ...partsOf(workshop, shortcutsTo),
    ...propertiesOf(workshop, shortcutsTo),
    ...quantitiesOf(workshop),
    ...choices(workshop),
    ...units(workshop),
    ...stages(workshop),
    ...species(workshop),
    ...findings(workshop),
  ];
}

/** Words that lead to a path from elsewhere: `dome` to body.top-radius. */
function shortcutsTo(path: string): readonly string[] {
  return [...SHORTCUTS, ...ELSEWHERE].flatMap(([word, meant]) => (meant === path ? [word] : []));
}

function keywords({ wording: { text } }: Workshop): readonly Entry[] {
  return KEYWORDS.map(({ word, sentence, example }): Entry => {
    const isKind = DEFINITION_KINDS.some((kind) => kind === word);
    const also = isKind ? [...KIND_WORDS].flatMap(([other, kind]) => (kind === word ? [other] : [])) : [];
    return {
      section: isKind ? 'definition' : 'line',
      word,
      sentence: text(sentence),
      takes: '',
      more: [],
      also,
      example,
    };
  });
}

/** Each choice once, with the properties it is one of. */
function choices({ catalogue, wording: { say } }: Workshop): readonly Entry[] {
  const where = new Map<string, string[]>();
  for (const { path, choices: own } of catalogue.all)
    for (const choice of own ?? []) where.set(choice, [...(where.get(choice) ?? []), path]);
  return [...where].map(([word, paths]) => ({
    section: 'choice',
    word,
    sentence: say`A choice for ${paths.slice(0, 3).join(', ')}.`,
    takes: '',
    more: [],
    also: wordsForChoice(word),
  }));
}

function units({ wording: { text } }: Workshop): readonly Entry[] {
  return UNITS.map((unit) => ({
    section: 'unit',
    word: unit.symbol,
    sentence: text(unit.sentence),
    takes: text(unit.dimension.name),
    more: [],
    also: unit.spellings.filter((spelling) => spelling !== unit.symbol),
  }));
}

function stages({ wording }: Workshop): readonly Entry[] {
  return STAGES.map((stage, number) => ({
    section: 'stage',
    word: stage,
    sentence: stageTitle(stage, wording),
    takes: String(number),
    more: [],
    also: [],
  }));
}

function species(workshop: Workshop): readonly Entry[] {
  const { shelf } = workshop;
  return shelf.names('species').flatMap((word): Entry[] => {
    const definition = shelf.find('species', word);
    if (!definition) return [];
    const stated = workshop.stated(definition);
    const said = (path: string): readonly string[] => {
      const value = stated.get(path)?.value;
      const all = value?.kind === 'list' ? value.items : value ? [value] : [];
      return all.flatMap((one) => (one.kind === 'text' ? [one.text] : []));
    };
    const [latin = ''] = said('latin');
    return [
      {
        section: 'species',
        word,
        sentence: latin,
        takes: said('uses')
          .map((uses) => workshop.wording.text(uses))
          .join(', '),
        more: [],
        also: [...new Set([...said('also'), ...wordsForSpecies(word)])],
      },
    ];
  });
}

function findings({ wording: { text } }: Workshop): readonly Entry[] {
  return rulePages().map(({ code, severity, title, reason }) => ({
    section: 'finding',
    word: code,
    sentence: text(title),
    takes: text(severity),
    more: [text(reason)],
    also: [],
  }));
}
