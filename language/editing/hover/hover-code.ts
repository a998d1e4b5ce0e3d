/** Hover on the code of a finding: what the rule is about, and why it matters. */
import { RULES } from '../../checks/rules.js';
import { paragraphs, plain } from '../markdown.js';
import { type Wording } from '../../wording/wording.js';

export function codeHover(code: string, { text }: Wording): string | undefined {
  const rule = RULES.find((each) => each.code === code);
  return rule && paragraphs(`**${plain(rule.code)}**: ${plain(text(rule.title))}`, plain(text(rule.reason)));
}
