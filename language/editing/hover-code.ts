/** Hover on the code of a finding: what the rule is about, and why it matters. */
import { RULES } from '../checks/rules.js';
import { paragraphs, plain } from './markdown.js';

export function codeHover(code: string): string | undefined {
  const rule = RULES.find((each) => each.code === code);
  return rule && paragraphs(`**${plain(rule.code)}**: ${plain(rule.title)}`, plain(rule.reason));
}
