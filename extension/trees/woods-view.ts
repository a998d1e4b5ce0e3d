import { type Event, type TreeDataProvider, Disposable, EventEmitter, ThemeIcon, TreeItem, l10n, window } from 'vscode';
import type { LanguageClient } from '../language-client.js';
import { makerCommand } from '../commands/maker-command.js';
import { GetWoodChoice, GetWoodUse, type RankedSet, type WoodChoice } from '../../language/server/protocol.js';
import type { RecipeInHand } from '../recipe-in-hand.js';
import { writeEdit } from '../write-edit.js';
import { Answered } from './answered.js';
import { describeSet, explainSet, heading } from './wood-words.js';

/** "Woods": the measured sets on the shelf, ranked for the recipe in hand, and the command that takes one into it. */
export function registerWoods(client: LanguageClient, inHand: RecipeInHand): Disposable {
  const woods = new Woods(client, inHand);
  const view = window.createTreeView('bookmatch.woods', { treeDataProvider: woods });
  woods.onDidRank((choice) => {
    view.message = choice ? heading(choice) : undefined;
    view.description = choice?.recipe;
  });
  return Disposable.from(
    woods,
    view,
    makerCommand('bookmatch.woods.use', async (item?: unknown) => {
      if (item instanceof SetItem) await takeInto(client, item.recipe, item.set.wood);
    }),
  );
}

class SetItem extends TreeItem {
  constructor(
    readonly recipe: string,
    readonly set: RankedSet,
  ) {
    super(set.wood);
    this.id = set.wood;
    this.description = describeSet(set);
    this.tooltip = explainSet(set);
    this.iconPath = new ThemeIcon(set.current ? 'check' : isUsable(set) ? 'layers' : 'circle-slash');
    this.contextValue = set.current ? 'set-in-hand' : set.builtInto.length > 0 ? 'set-built' : 'set';
    this.accessibilityInformation = { label: [set.wood, ...explainSet(set).split('\n').slice(1)].join(', ') };
  }
}

class Woods implements TreeDataProvider<SetItem>, Disposable {
  private readonly changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData: Event<undefined> = this.changed.event;
  private readonly ranked = new EventEmitter<WoodChoice | undefined>();
  readonly onDidRank: Event<WoodChoice | undefined> = this.ranked.event;
  private readonly choice: Answered<WoodChoice | null>;
  private readonly parts: Disposable;

  constructor(client: LanguageClient, inHand: RecipeInHand) {
    this.choice = new Answered<WoodChoice | null>(client, null, async () => {
      const recipe = inHand.current;
      return recipe?.kind === 'recipe' ? client.sendRequest(GetWoodChoice, { recipe: recipe.name }) : null;
    });
    this.parts = Disposable.from(
      this.changed,
      this.ranked,
      this.choice,
      inHand.onDidChange(() => void this.choice.look()),
      this.choice.onDidChange(() => {
        this.ranked.fire(this.choice.value ?? undefined);
        this.changed.fire(undefined);
      }),
    );
  }

  getChildren(item?: SetItem): SetItem[] {
    const choice = item ? null : this.choice.value;
    return choice?.sets.map((set) => new SetItem(choice.recipe, set)) ?? [];
  }

  getTreeItem(item: SetItem): TreeItem {
    return item;
  }

  dispose(): void {
    this.parts.dispose();
  }
}

function isUsable({ builtInto, trouble }: RankedSet): boolean {
  return builtInto.length === 0 && (trouble === undefined || trouble === 'not-usual');
}

/** Writes the change of the wood and the hold; undone like anything else that was typed. */
async function takeInto(client: LanguageClient, recipe: string, wood: string): Promise<void> {
  const use = await client.sendRequest(GetWoodUse, { recipe, wood });
  const refused = l10n.t('{0} could not be written into {1}.', wood, recipe);
  if ((await writeEdit(client, use?.edit, refused)) && use?.thicknessLeft) {
    void window.showInformationMessage(
      l10n.t('{0} sets the thickness of its top by itself; it was left as written.', recipe),
    );
  }
}
