/** Every English sentence that is said somewhere, taken from the code itself and from the tables it speaks of. */
import { globSync, readFileSync } from 'node:fs';
import ts from 'typescript';

/** Each sentence with the file it stands in. */
export type Sentences = ReadonlyMap<string, string>;

/** say`…`, text('…') and english('…') anywhere under a folder. */
export function sentencesInCode(folder: string): Sentences {
  return collected(folder, said);
}

/** l10n.t('…') anywhere under a folder. */
export function sentencesForEditor(folder: string): Sentences {
  return collected(folder, (node) => {
    if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return [];
    const { expression, name } = node.expression;
    const [first] = node.arguments;
    return nameOf(expression) === 'l10n' && name.text === 't' && first ? textsIn(first) : [];
  });
}

/** Words written out in the markup of pages, between tags or in what is read aloud of them. */
export function wordsInTemplates(folder: string): Sentences {
  return collected(folder, (node) => {
    if (!ts.isTaggedTemplateExpression(node) || !['html', 'svg'].includes(nameOf(node.tag))) return [];
    const markup = inPlaces(node.template).replace(/\{\d+\}/g, '·');
    const spoken = [...markup.matchAll(/(?:aria-label|title|alt|placeholder)="([^"]*)"/g)].map(([, text]) => text!);
    const between = markup.replace(/<[^>]*>?|^[^<]*>/g, '\n').split('\n');
    return [...spoken, ...between]
      .map((text) => text.trim())
      .filter((text) => /[a-z]{2}/i.test(text.replace(/^\d+ mm$/, '')));
  });
}

export function collected(folder: string, said: (node: ts.Node) => readonly string[]): Sentences {
  const found = new Map<string, string>();
  for (const file of globSync(`${folder}/**/*.ts`).sort()) {
    if (file.includes('/generated/')) continue;
    const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      for (const sentence of said(node)) if (sentence !== '' && !found.has(sentence)) found.set(sentence, file);
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

function said(node: ts.Node): readonly string[] {
  if (ts.isTaggedTemplateExpression(node)) return nameOf(node.tag) === 'say' ? [inPlaces(node.template)] : [];
  if (!ts.isCallExpression(node) || node.arguments.length !== 1) return [];
  return ['text', 'english'].includes(nameOf(node.expression)) ? textsIn(node.arguments[0]!) : [];
}

/** The text itself, or each of those a condition or a fallback chooses from. */
export function textsIn(node: ts.Expression): readonly string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isConditionalExpression(node)) return [...textsIn(node.whenTrue), ...textsIn(node.whenFalse)];
  if (ts.isParenthesizedExpression(node)) return textsIn(node.expression);
  return ts.isBinaryExpression(node) ? textsIn(node.right) : [];
}

export function nameOf(expression: ts.Expression): string {
  if (ts.isIdentifier(expression)) return expression.text;
  return ts.isPropertyAccessExpression(expression) ? expression.name.text : '';
}

/** `{0} is thinner than {1}`, as the wording looks it up. */
export function inPlaces(template: ts.TemplateLiteral): string {
  if (ts.isNoSubstitutionTemplateLiteral(template)) return template.text;
  return template.templateSpans.reduce((text, { literal }, i) => `${text}{${i}}${literal.text}`, template.head.text);
}
