/**
 * The recipes of a made-up shop once more, written in YAML, with a JSON schema of what may stand in them: for a server that
 * checks words and the form of numbers, and computes nothing.
 */
import { catalogue } from '../../../language/catalogue/catalogue.js';

/** The same recipe: its head, its reason, and its changes as lists. */
export function asYaml(recipe: string): string {
  const [, name, relation, parent] = /^recipe (\S+) (for|from) (\S+) \{/.exec(recipe)!;
  const lines = [`recipe: ${name}`, `${relation}: ${parent}`];
  const lists = { changes: [] as string[], holds: [] as string[], expects: [] as string[] };
  let group: string | undefined;
  for (const line of recipe.split('\n').slice(1)) {
    const because = /^ {2}because (".*")/.exec(line);
    const top = /^ {2}top \{ wood: (\S+) {3}thickness: (.*) {3}rig: (\S+) \}/.exec(line);
    const together = /^ {2}together (".*") \{/.exec(line);
    const step = /^ *change (\S+): by (.*)/.exec(line);
    const change = /^ *change (\S+): (\S+) -> (\S+)/.exec(line);
    const hold = /^ {2}hold (\S+) by (\S+)/.exec(line);
    const expected = /^ {2}expect (\S+): (below|above) (.*)/.exec(line);
    if (because) lines.push(`because: ${because[1]}`);
    else if (top) lines.push('top:', `  wood: ${top[1]}`, `  thickness: ${top[2]}`, `  rig: ${top[3]}`);
    else if (together) group = together[1];
    else if (step) lists.changes.push(...entry([`path: ${step[1]}`, `by: ${step[2]}`, ...inGroup(group)]));
    else if (change)
      lists.changes.push(...entry([`path: ${change[1]}`, `from: ${change[2]}`, `to: ${change[3]}`, ...inGroup(group)]));
    else if (hold) lists.holds.push(...entry([`path: ${hold[1]}`, `by: ${hold[2]}`]));
    else if (expected) lists.expects.push(...entry([`path: ${expected[1]}`, `${expected[2]}: ${expected[3]}`]));
    else if (!/^ *\}$/.test(line)) throw new Error(`this line is not known in YAML: ${line}`);
  }
  for (const [word, entries] of Object.entries(lists)) if (entries.length > 0) lines.push(`${word}:`, ...entries);
  return `${lines.join('\n')}\n`;
}

function inGroup(group: string | undefined): readonly string[] {
  return group === undefined ? [] : [`together: ${group}`];
}

function entry([first, ...others]: readonly string[]): readonly string[] {
  return [`  - ${first}`, ...others.map((line) => `    ${line}`)];
}

const WORD = { type: 'string', pattern: '^[A-Za-z][A-Za-z0-9-]*$' };
const QUANTITY = { type: 'string', pattern: '^-?\\d+(\\.\\d+)? (mm|g|N|%)$' };

/** What may stand in a recipe: the words of the parts catalogue, each with its sentence. */
export function recipeSchema(): object {
  const words = catalogue.all.map(({ path }) => path.replace('*', '[a-z0-9-]+').replaceAll('.', '\\.'));
  const path = { type: 'string', pattern: `^(${words.join('|')}|top\\.stiffness\\.along|top\\.mass)$` };
  const record = (properties: object, required: readonly string[]) => ({
    ...{ type: 'object', additionalProperties: false, properties, required },
  });
  const forms = new Map<string, object>([
    ['wood', WORD],
    ['thickness', QUANTITY],
    ['rig', WORD],
  ]);
  const top = catalogue.all.filter(({ path: each }) => /^top\.[a-z-]+$/.test(each));
  const ofTop = top.map(({ path: each, sentence }) => {
    const word = each.slice(4);
    return [word, { ...forms.get(word), description: sentence }];
  });
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    ...record(
      {
        recipe: { ...WORD, description: 'What the recipe is called.' },
        ...{ for: WORD, from: WORD, because: { type: 'string', description: 'Why it was done.' } },
        top: { type: 'object', properties: Object.fromEntries(ofTop) as object },
        changes: list(record({ path, by: QUANTITY, from: WORD, to: WORD, together: { type: 'string' } }, ['path'])),
        holds: list(record({ path, by: path }, ['path', 'by'])),
        expects: list(record({ path, below: QUANTITY, above: QUANTITY }, ['path'])),
      },
      ['recipe', 'because'],
    ),
  };
}

function list(items: object): object {
  return { type: 'array', items };
}
