/** What edits did, as Markdown for a pull request. Every text is escaped. */
import { plain, table } from '../../editing/markdown.js';
import type {
  EffectOfEdit,
  FolderChanges,
  InstrumentChange,
  OtherChange,
  Range,
  ValueChange,
} from '../../reports/history/folder-changes.js';
import type { Wording } from '../../wording/wording.js';
import { alikeInWords, rangeInWords, smallInWords, usedInWords, whatInWords } from './changes-text.js';

export function changesAsMarkdown(found: FolderChanges, range: Range, wording: Wording): string {
  const blocks = [
    `## ${plain(rangeInWords(range, wording))}`,
    ...(found.instruments.length + found.others.length === 0
      ? [wording.text('No instrument, wood or anything else has changed.')]
      : []),
    ...found.instruments.flatMap((each) => instrument(each, wording)),
    ...found.others.flatMap((each) => other(each, wording)),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function instrument(each: InstrumentChange, wording: Wording): readonly string[] {
  const nothing = each.values.length > 0 && each.effects.length === 0;
  return [
    heading(each, wording, alikeInWords(each.alike, wording)),
    ...valueTable(each.values, wording),
    ...(nothing ? [wording.text('nothing that could be told apart')] : effectTable(each.effects, wording)),
    ...(!nothing && each.small > 0 ? [smallInWords(each.small, wording)] : []),
  ];
}

function other(each: OtherChange, wording: Wording): readonly string[] {
  return [
    heading(each, wording, ''),
    ...valueTable(each.values, wording),
    ...(each.usedBy.length > 0 ? [plain(usedInWords(each.usedBy, wording))] : []),
    ...effectTable(each.effects, wording),
  ];
}

function heading(each: Pick<OtherChange, 'kind' | 'name' | 'what'>, wording: Wording, more: string): string {
  return `### ${plain(whatInWords(each, wording))}${more === '' ? '' : `, ${plain(more)}`}`;
}

function valueTable(values: readonly ValueChange[], { text }: Wording): readonly string[] {
  if (values.length === 0) return [];
  const rows = values.map(({ path, before = '–', after = '–' }) => [plain(path), plain(before), plain(after)]);
  return [table([text('what differs'), text('before'), text('after')], rows)];
}

function effectTable(effects: readonly EffectOfEdit[], { text }: Wording): readonly string[] {
  if (effects.length === 0) return [];
  const rows = effects.map(({ path, before, after, difference, share = '' }) =>
    [path, before, after, difference, share].map(plain),
  );
  return [table([text('what that does'), text('before'), text('after'), text('difference'), ''], rows)];
}
