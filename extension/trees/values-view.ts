import {
  type Event,
  type TreeDataProvider,
  Disposable,
  EventEmitter,
  ThemeIcon,
  TreeItem,
  TreeItemCollapsibleState,
  commands,
  l10n,
  window,
} from 'vscode';
import { makerCommand } from '../commands/maker-command.js';
import type { LanguageClient } from '../language-client.js';
import { goTo } from '../panels/go-to.js';
import { GetValues, type ListedValue, type PartOfValues, type ValuesList } from '../../language/server/protocol.js';
import type { RecipeInHand } from '../recipe-in-hand.js';
import { Answered } from './answered.js';
import { describeValue, explainValue } from './value-words.js';

type Row = PartOfValues | ListedValue;

/** "Values": every value of the instrument at the cursor, where it comes from, and what is not known. */
export function registerValues(client: LanguageClient, inHand: RecipeInHand): Disposable {
  const values = new Values(client, inHand);
  const view = window.createTreeView<Row>('bookmatch.values', { treeDataProvider: values, showCollapseAll: true });
  const filter = (wanted: string) => {
    values.filter = wanted;
    void commands.executeCommand('setContext', 'bookmatch.values.filtered', wanted !== '');
  };
  return Disposable.from(
    values,
    view,
    values.onDidChangeTreeData(() => {
      view.description = values.name;
      view.message = values.filter === '' ? undefined : l10n.t('Only what has “{0}” in it.', values.filter);
    }),
    makerCommand('bookmatch.values.filter', async () => {
      const wanted = await window.showInputBox({
        prompt: l10n.t('Part of a name or value: thick, mm, changed here'),
        value: values.filter,
      });
      if (wanted !== undefined) filter(wanted.trim());
    }),
    commands.registerCommand('bookmatch.values.showAll', () => filter('')),
    makerCommand('bookmatch.values.goTo', async (value?: unknown) => {
      const { source } = (value ?? {}) as Partial<ListedValue>;
      if (source) await goTo(client, source);
    }),
  );
}

class Values implements TreeDataProvider<Row>, Disposable {
  private readonly changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData: Event<undefined> = this.changed.event;
  private readonly list: Answered<ValuesList | null>;
  private readonly parts: Disposable;
  private wanted = '';

  constructor(client: LanguageClient, inHand: RecipeInHand) {
    this.list = new Answered<ValuesList | null>(client, null, async () => {
      const { current } = inHand;
      return current ? client.sendRequest(GetValues, { name: current.name }) : null;
    });
    this.parts = Disposable.from(
      this.changed,
      this.list,
      inHand.onDidChange(() => void this.list.look()),
      this.list.onDidChange(() => this.changed.fire(undefined)),
    );
  }

  get name(): string | undefined {
    return this.list.value?.name;
  }

  get filter(): string {
    return this.wanted;
  }

  set filter(wanted: string) {
    this.wanted = wanted;
    this.changed.fire(undefined);
  }

  getChildren(row?: Row): Row[] {
    if (row && !isPart(row)) return [];
    if (row) return row.values.filter((value) => this.isWanted(value));
    return this.list.value?.parts.filter(({ values }) => values.some((value) => this.isWanted(value))) ?? [];
  }

  getTreeItem(row: Row): TreeItem {
    return isPart(row) ? this.partItem(row) : valueItem(row);
  }

  dispose(): void {
    this.parts.dispose();
  }

  /** Open where something was done to the part here, or while looking for something. */
  private partItem({ part, title, values }: PartOfValues): TreeItem {
    const here = values.filter((value) => value.here !== undefined).length;
    const isOpen = here > 0 || this.wanted !== '';
    const item = new TreeItem(title, isOpen ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.Collapsed);
    item.id = `${this.name ?? ''} ${part} ${this.wanted === '' ? '' : 'filtered'}`;
    if (here > 0) item.description = l10n.t('{0} written here', here);
    return item;
  }

  private isWanted(value: ListedValue): boolean {
    const text = `${value.path} ${value.name} ${describeValue(value)}`.toLowerCase();
    return this.wanted === '' || text.includes(this.wanted.toLowerCase());
  }
}

function isPart(row: Row): row is PartOfValues {
  return 'values' in row;
}

const ICONS: Readonly<Record<ListedValue['sort'], string>> = {
  written: 'note',
  computed: 'symbol-ruler',
  unknown: 'question',
  pending: 'watch',
};

function valueItem(value: ListedValue): TreeItem {
  const item = new TreeItem(value.name);
  item.id = value.path;
  item.description = describeValue(value);
  item.tooltip = explainValue(value);
  item.iconPath = new ThemeIcon(value.here === undefined ? ICONS[value.sort] : 'edit');
  item.accessibilityInformation = { label: `${value.name}, ${item.description}` };
  if (value.source) {
    const title = l10n.t('Go to where it is written');
    item.command = { command: 'bookmatch.values.goTo', title, arguments: [value] };
  }
  return item;
}
