/**
 * How many ways the grammar allows to read a run of tokens, counted by brute force over the grammar itself. The parser
 * settles on one reading without a word; this tells whether there was a choice.
 */
import type { GrammarAST } from 'langium';
import { BookmatchGrammar } from '../../language/grammar/generated/grammar.js';

/** A token's type: the name of a terminal, or a keyword, which is also a `PATH`. */
export type Kind = string;

type Element = GrammarAST.AbstractElement;

const rules = new Map(BookmatchGrammar().rules.map((rule) => [rule.name, rule]));

export function countReadings(ruleName: string, tokens: readonly Kind[]): number {
  const memo = new Map<Element, Map<number, Map<number, number>>>();

  /** For each place where the element may end when it starts at `from`: in how many ways. */
  function ends(element: Element, from: number): Map<number, number> {
    const known = memo.get(element)?.get(from);
    if (known) return known;
    const found = repeated(element, from);
    memo.set(element, (memo.get(element) ?? new Map<number, Map<number, number>>()).set(from, found));
    return found;
  }

  function repeated(element: Element, from: number): Map<number, number> {
    const { cardinality } = element as { cardinality?: '?' | '*' | '+' };
    const once = single(element, from);
    if (cardinality === undefined) return once;
    const all = new Map<number, number>();
    if (cardinality !== '+') add(all, from, 1);
    for (const [end, ways] of once) {
      add(all, end, ways);
      if (cardinality === '?' || end === from) continue;
      for (const [further, more] of ends(element, end)) if (further > end) add(all, further, ways * more);
    }
    return all;
  }

  function single(element: Element, from: number): Map<number, number> {
    const found = new Map<number, number>();
    switch (element.$type) {
      case 'Keyword':
        if (tokens[from] === (element as GrammarAST.Keyword).value) found.set(from + 1, 1);
        return found;
      case 'Action':
        return found.set(from, 1);
      case 'Assignment':
        return ends((element as GrammarAST.Assignment).terminal, from);
      case 'RuleCall': {
        const rule = rules.get((element as GrammarAST.RuleCall).rule.$refText)!;
        if (rule.$type === 'ParserRule') return ends(rule.definition, from);
        const token = tokens[from];
        if (token !== undefined && matches(token, rule.name)) found.set(from + 1, 1);
        return found;
      }
      case 'Alternatives':
        for (const one of (element as GrammarAST.Alternatives).elements) {
          for (const [end, ways] of ends(one, from)) add(found, end, ways);
        }
        return found;
      case 'Group': {
        let reached = new Map([[from, 1]]);
        for (const one of (element as GrammarAST.Group).elements) {
          const next = new Map<number, number>();
          for (const [middle, ways] of reached)
            for (const [end, more] of ends(one, middle)) add(next, end, ways * more);
          reached = next;
        }
        return reached;
      }
      default:
        throw new Error(`The grammar uses ${element.$type}, which this count does not know.`);
    }
  }

  return ends((rules.get(ruleName) as GrammarAST.ParserRule).definition, 0).get(tokens.length) ?? 0;
}

/** A run of tokens the grammar allows, made by following it with `choose(n)` picking one of n. */
export function sentence(ruleName: string, choose: (n: number) => number, longest: number): Kind[] {
  const tokens: Kind[] = [];
  const keywords = allKeywords();
  const follow = (element: Element): void => {
    const { cardinality } = element as { cardinality?: '?' | '*' | '+' };
    const room = tokens.length < longest;
    let times = 1;
    if (cardinality === '?' || cardinality === '*') times = room ? choose(cardinality === '?' ? 2 : 4) : 0;
    if (cardinality === '+') times = room ? 1 + choose(2) : 1;
    for (let i = 0; i < times; i++) once(element);
  };
  const once = (element: Element): void => {
    if (element.$type === 'Keyword') tokens.push((element as GrammarAST.Keyword).value);
    if (element.$type === 'Assignment') follow((element as GrammarAST.Assignment).terminal);
    if (element.$type === 'Group') (element as GrammarAST.Group).elements.forEach(follow);
    if (element.$type === 'Alternatives') {
      const { elements } = element as GrammarAST.Alternatives;
      follow(elements[choose(elements.length)]!);
    }
    if (element.$type === 'RuleCall') {
      const rule = rules.get((element as GrammarAST.RuleCall).rule.$refText)!;
      if (rule.$type === 'ParserRule') follow(rule.definition);
      // Every second name is a word that has a meaning elsewhere.
      else tokens.push(rule.name === 'PATH' && choose(2) === 0 ? keywords[choose(keywords.length)]! : rule.name);
    }
  };
  once((rules.get(ruleName) as GrammarAST.ParserRule).definition);
  return tokens;
}

function allKeywords(): string[] {
  const found = new Set<string>();
  JSON.stringify([...rules.values()], (key, value: unknown) => {
    if (key === 'value' && typeof value === 'string' && /^[a-z]+$/.test(value)) found.add(value);
    return key.startsWith('$') && key !== '$type' ? undefined : key === 'ref' ? undefined : value;
  });
  return [...found];
}

function matches(token: Kind, terminal: string): boolean {
  return token === terminal || (terminal === 'PATH' && /^[a-z]+$/.test(token));
}

function add(to: Map<number, number>, key: number, ways: number): void {
  to.set(key, (to.get(key) ?? 0) + ways);
}
