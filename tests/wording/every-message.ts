/**
 * What the mechanics, and what is computed with it, tell in English and `Wording.told` recognises: messages of errors
 * and findings, troubles, assumptions, and the names of quantities that stand in them.
 */
import ts from 'typescript';
import { collected, inPlaces, nameOf, type Sentences, textsIn } from './every-sentence.js';

export function messagesInCode(): Sentences {
  return new Map([
    ...collected('language/mechanics', (node) => [...anySentence(node), ...names(node).flatMap(bareAndWithArticle)]),
    ...collected('language/recipes', told),
    ...collected('language/recipes/derived', (node) =>
      isNamed(node, 'name') ? inWords(node.initializer).flatMap(bareAndWithArticle) : [],
    ),
    // The key of a size, told as its name.
    ['force', 'language/mechanics/plate/fit/deflection-fit.ts'],
    ['the force', 'language/mechanics/plate/fit/deflection-fit.ts'],
    // Names of names: of a part, and what of it.
    ['the {0} of the {1}', 'language/mechanics'],
    ...collected('language/server', (node) => (isNamed(node, 'message') ? sentencesOf(node.initializer) : [])),
  ]);
}

/** A name begins many a sentence, and there it has its article. */
function bareAndWithArticle(name: string): readonly string[] {
  return [name, `the ${name}`];
}

/** Whatever is written as a sentence in the mechanics is a message. */
function anySentence(node: ts.Node): readonly string[] {
  return isText(node) ? inWords(node).filter((text) => /^([A-Z]|\{0\} ).* .*\.$/s.test(text)) : [];
}

/** Calls that are given the name of a quantity, and which of the arguments it is. */
const NAMING: Readonly<Record<string, number>> = {
  positive: 0,
  notNegative: 0,
  finite: 0,
  between: 0,
  computed: 0,
  checkCut: 0,
  checkPlace: 0,
  onSpan: 0,
  inverse: 1,
  scaled: 1,
  above: 2,
  validateWood: 2,
  validateOutline: 2,
};

function names(node: ts.Node): readonly string[] {
  if (ts.isVariableDeclaration(node) && nameOf(node.name as ts.Expression) === 'MODULI') return pairedWith(node);
  if (ts.isVariableDeclaration(node) && nameOf(node.name as ts.Expression) === 'what') return inWords(node.initializer);
  if (!ts.isCallExpression(node)) return [];
  const which = NAMING[nameOf(node.expression)];
  return which === undefined ? [] : inWords(node.arguments[which]);
}

/** The second of each pair in a table. */
function pairedWith(table: ts.Node): readonly string[] {
  if (ts.isArrayLiteralExpression(table) && table.elements[1] && ts.isStringLiteral(table.elements[1])) {
    return [table.elements[1].text];
  }
  const found: string[] = [];
  ts.forEachChild(table, (child) => void found.push(...pairedWith(child)));
  return found;
}

const ASSUMING = /^(assume|assumed|numberOr)$/;

function told(node: ts.Node): readonly string[] {
  if (isNamed(node, 'trouble')) return inWords(node.initializer);
  if (ts.isNewExpression(node)) {
    return nameOf(node.expression) === 'MechanicsError' ? inWords(node.arguments?.[1]) : [];
  }
  return ts.isCallExpression(node) && ASSUMING.test(nameOf(node.expression)) ? inWords(node.arguments.at(-1)) : [];
}

function sentencesOf(node: ts.Expression): readonly string[] {
  return inWords(node).filter((text) => text.endsWith('.'));
}

function isNamed(node: ts.Node, name: string): node is ts.PropertyAssignment {
  return ts.isPropertyAssignment(node) && ts.isIdentifier(node.name) && node.name.text === name;
}

function isText(node: ts.Node): node is ts.StringLiteralLike | ts.TemplateExpression {
  return ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);
}

/** The text itself, its parts in their places, or each of those a condition or a fallback chooses from. */
function inWords(node: ts.Expression | undefined): readonly string[] {
  if (!node) return [];
  if (ts.isTemplateExpression(node)) return [inPlaces(node)];
  if (ts.isConditionalExpression(node)) return [...inWords(node.whenTrue), ...inWords(node.whenFalse)];
  return ts.isBinaryExpression(node) ? inWords(node.right) : textsIn(node);
}
