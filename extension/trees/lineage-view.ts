import {
  type Event,
  type TreeDataProvider,
  type TreeView,
  Disposable,
  EventEmitter,
  ThemeIcon,
  TreeItem,
  TreeItemCollapsibleState,
  commands,
  l10n,
  window,
} from 'vscode';
import type { LanguageClient } from '../language-client.js';
import { COMMANDS, type LineageEntry, ListLineage } from '../../language/server/protocol.js';
import type { Instruments } from '../folder-instruments.js';
import type { RecipeInHand } from '../recipe-in-hand.js';
import { Answered } from './answered.js';
import { drawnBelow, drawnInLine } from './single-descent.js';

/** "Lineage": models, the recipes that descend from them with their changes counted, and what was built of each. */
export function registerLineage(client: LanguageClient, instruments: Instruments, inHand: RecipeInHand): Disposable {
  const lineage = new Lineage(client, instruments);
  const view: TreeView<LineageEntry> = window.createTreeView('bookmatch.lineage', {
    treeDataProvider: lineage,
    showCollapseAll: true,
  });
  const showInHand = () => {
    const { current } = inHand;
    const here = current && view.visible ? lineage.find(current.kind, current.name) : undefined;
    // The row may have gone with the edit that brought this news.
    if (here) Promise.resolve(view.reveal(here, { select: true, focus: false })).catch(() => undefined);
  };
  return Disposable.from(
    lineage,
    view,
    inHand.onDidChange(showInHand),
    // The tree may be opened, or drawn anew, after the cursor came to rest.
    view.onDidChangeVisibility(showInHand),
    lineage.onDidChangeTreeData(() => setTimeout(showInHand, REDRAWN)),
    commands.registerCommand('bookmatch.lineage.compareWithParent', (entry?: LineageEntry) =>
      commands.executeCommand(COMMANDS.compareWithParent, entry?.name),
    ),
  );
}

/** ms after which the editor has drawn new rows, so that one can be shown. */
const REDRAWN = 150;

class Lineage implements TreeDataProvider<LineageEntry>, Disposable {
  private readonly changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData: Event<undefined> = this.changed.event;
  private readonly parts: Disposable;
  private readonly roots: Answered<readonly LineageEntry[]>;
  /** Beneath which entry each is drawn. */
  private parents: ReadonlyMap<LineageEntry, LineageEntry> = new Map<LineageEntry, LineageEntry>();
  /** What stands on the level of its parent, being the only one to go on from it. */
  private continuing: ReadonlySet<LineageEntry> = new Set<LineageEntry>();

  constructor(
    private readonly client: LanguageClient,
    instruments: Instruments,
  ) {
    this.roots = new Answered<readonly LineageEntry[]>(client, [], () => client.sendRequest(ListLineage));
    this.parts = Disposable.from(
      this.changed,
      this.roots,
      instruments.onDidChange(() => void this.roots.look()),
      this.roots.onDidChange(() => {
        const first = this.roots.value.flatMap(drawnInLine);
        this.parents = new Map(first.flatMap(withParents));
        const heads = new Set([...this.roots.value, ...[...first, ...this.parents.keys()].flatMap(headsBelow)]);
        this.continuing = new Set([...first, ...this.parents.keys()].filter((entry) => !heads.has(entry)));
        this.changed.fire(undefined);
      }),
    );
  }

  getChildren(entry?: LineageEntry): LineageEntry[] {
    return [...(entry ? drawnBelow(entry) : this.roots.value.flatMap(drawnInLine))];
  }

  find(kind: LineageEntry['kind'], name: string): LineageEntry | undefined {
    const all = [...this.roots.value.flatMap(drawnInLine), ...this.parents.keys()];
    return all.find((entry) => entry.kind === kind && entry.name === name);
  }

  getParent(entry: LineageEntry): LineageEntry | undefined {
    return this.parents.get(entry);
  }

  getTreeItem(entry: LineageEntry): TreeItem {
    const { kind, name, uri, range, parent } = entry;
    const state = drawnBelow(entry).length > 0 ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.None;
    const item = new TreeItem(name, state);
    // The same entry after an edit, so that it stays open or closed as it was.
    item.id = `${kind} ${name}`;
    const continues = parent !== undefined && this.continuing.has(entry);
    item.iconPath = new ThemeIcon(continues ? 'arrow-small-down' : ICONS[kind]);
    item.contextValue = kind === 'model' || entry.parent === undefined ? kind : `${kind}-with-parent`;
    item.description = describe(entry);
    const from = continues ? l10n.t('comes from {0}', parent) : undefined;
    item.tooltip = from;
    item.accessibilityInformation = {
      label: [KINDS[kind](), name, from, item.description].filter(Boolean).join(', '),
    };
    const place = this.client.protocol2CodeConverter;
    item.command = {
      command: 'vscode.open',
      title: l10n.t('Go to the definition'),
      arguments: [place.asUri(uri), { selection: place.asRange(range) }],
    };
    return item;
  }

  dispose(): void {
    this.parts.dispose();
  }
}

const ICONS: Readonly<Record<LineageEntry['kind'], string>> = {
  model: 'symbol-class',
  recipe: 'note',
  build: 'package',
};

const KINDS: Readonly<Record<LineageEntry['kind'], () => string>> = {
  model: () => l10n.t('model'),
  recipe: () => l10n.t('recipe'),
  build: () => l10n.t('build'),
};

function describe({ kind, count, parent, children }: LineageEntry): string | undefined {
  if (kind === 'model') return undefined;
  if (kind === 'build') return l10n.t('built');
  if (!count) return parent === undefined ? l10n.t('without a model') : l10n.t('first of its line');
  const built = children.some((child) => child.kind === 'build');
  const told = countText(count);
  return built ? l10n.t('{0}, built', told) : told;
}

function countText({ changes, limit, substitution }: NonNullable<LineageEntry['count']>): string {
  if (substitution) return l10n.t('another set of the same wood');
  if (changes === 0) return l10n.t('no change counted');
  if (changes > limit) return l10n.t('{0} changes, {1} allowed', changes, limit);
  return changes === 1 ? l10n.t('1 change') : l10n.t('{0} changes', changes);
}

function withParents(entry: LineageEntry): readonly (readonly [LineageEntry, LineageEntry])[] {
  return drawnBelow(entry).flatMap((child) => [[child, entry] as const, ...withParents(child)]);
}

/** The entries at which a level begins or forks: builds, branches, and the bases of a model. */
function headsBelow({ kind, children }: LineageEntry): readonly LineageEntry[] {
  const recipes = children.filter((child) => child.kind === 'recipe');
  return kind === 'recipe' && recipes.length === 1 ? children.filter((child) => child.kind !== 'recipe') : children;
}
