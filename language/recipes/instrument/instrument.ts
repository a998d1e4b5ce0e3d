/**
 * An instrument as a recipe describes it: every path with its value and where that value comes from, and the list of
 * what this recipe changed in its parent.
 *
 * `applyRecipe` is a pure function of the parent's instrument and one recipe's statements. It judges nothing: whether
 * a change is stale, silent or one too many is for `checks` to say, from the facts recorded here.
 */
import type { Quantity } from '../../quantities/quantity.js';
import type {
  AddStatement,
  ChangeStatement,
  Definition,
  DropStatement,
  HoldStatement,
  PropertyStatement,
  RequestStatement,
  Span,
  Statement,
  TogetherStatement,
  Value,
  WithStatement,
} from '../../facts/facts.js';
import { broughtBy } from './packages.js';
import { propertiesOf, sameValue } from './values.js';

/** Where something was said. */
export interface Provenance {
  readonly definition: Definition;
  readonly span: Span;
}

export interface Held {
  /** Canonical path. */
  readonly path: string;
  readonly value: Value;
  readonly from: Provenance;
  /** `solved`: found by a `hold`. `package`: brought by appointments. */
  readonly via: 'stated' | 'changed' | 'added' | 'package' | 'solved' | 'built';
  /** The value it replaced, one step back along the chain. */
  readonly before?: Held;
}

/** One difference a recipe makes to its parent, before anybody counts it. */
export interface Change {
  readonly kind: 'value' | 'add' | 'drop';
  /** Canonical path; for `add` and `drop` the member's. */
  readonly path: string;
  readonly before?: Held;
  readonly after?: Held;
  /** For `add` and `drop`: the values that came or went. For a value that says a part is not there: what went with it. */
  readonly members: readonly Held[];
  /** What `change` says the parent had. */
  readonly stated?: Value;
  /** `plain`: written as a bare property. */
  readonly written: 'change' | 'plain' | 'add' | 'drop' | 'with';
  readonly statement: ChangeStatement | PropertyStatement | AddStatement | DropStatement | WithStatement;
  readonly group?: TogetherStatement;
  readonly from: Provenance;
}

export interface HoldRequest {
  readonly statement: HoldStatement;
  /** Canonical paths. */
  readonly quantity: string;
  readonly by: string;
  /** Sizes that go along with `by`, each in the proportion it has to it. */
  readonly along: readonly string[];
  readonly from: Provenance;
}

/** Every size a hold moves. */
export function movedBy({ by, along }: HoldRequest): readonly string[] {
  return [by, ...along];
}

export interface Instrument {
  readonly name: string;
  readonly definition: Definition;
  /** The model it is built on, at the end of its line. */
  readonly model?: Definition;
  readonly values: ReadonlyMap<string, Held>;
  /** What the recipe itself changes, in the order written. Empty for a model. */
  readonly changes: readonly Change[];
  readonly holds: readonly HoldRequest[];
}

export interface RecipeContext {
  /** The catalogue's word for a path a maker wrote. */
  readonly canonical: (path: string) => string;
  readonly appointments: (name: string) => Definition | undefined;
  /** Whether what a package says at this path is said of the instrument: not its own title, nor what is not read there. */
  readonly isPackaged: (path: string) => boolean;
  /** The part a value does without: `cutaway` of `cutaway.kind: none`, `pickguard` of `pickguard: no`. */
  readonly partWithout: (path: string, value: Value) => string | undefined;
  readonly model: (name: string) => Instrument | undefined;
}

/** The instrument a definition of its own makes: a model, or a recipe whose parent cannot be found. */
export function applyModel(model: Definition, context: RecipeContext): Instrument {
  const draft = new Draft(model, new Map(), model, context);
  draft.apply(model.statements);
  return { ...draft.finish(), changes: [] };
}

/** The parent's instrument with one recipe's statements applied. */
export function applyRecipe(parent: Instrument | undefined, recipe: Definition, context: RecipeContext): Instrument {
  const draft = new Draft(recipe, parent?.values ?? new Map(), parent?.model, context);
  draft.apply(recipe.statements);
  return draft.finish();
}

/** An instrument with some of a definition's statements applied: what was done to it later on. */
export function applyRework(
  start: Instrument,
  definition: Definition,
  statements: readonly Statement[],
  context: RecipeContext,
): Instrument {
  const draft = new Draft(definition, start.values, start.model, context);
  draft.apply(statements);
  return draft.finish();
}

/** Only the values: what the numbers of an instrument depend on. */
export function sameValues(a: ReadonlyMap<string, Held>, b: ReadonlyMap<string, Held>): boolean {
  if (a.size !== b.size) return false;
  for (const [path, held] of a) {
    const other = b.get(path);
    if (!other || !sameValue(held.value, other.value)) return false;
  }
  return true;
}

class Draft {
  private readonly values: Map<string, Held>;
  private readonly changes: Change[] = [];
  private readonly holds: HoldRequest[] = [];

  constructor(
    private readonly definition: Definition,
    private readonly inherited: ReadonlyMap<string, Held>,
    private model: Definition | undefined,
    private readonly context: RecipeContext,
  ) {
    this.values = new Map(inherited);
  }

  apply(statements: readonly Statement[], group?: TogetherStatement): void {
    for (const statement of statements) {
      switch (statement.kind) {
        case 'property':
          this.plain(statement, group);
          break;
        case 'block':
          this.apply(statement.statements, group);
          break;
        case 'change':
          this.change(statement, group);
          break;
        case 'add':
          this.add(statement, group);
          break;
        case 'drop':
          this.drop(statement, group);
          break;
        case 'together':
          this.apply(statement.statements, statement);
          break;
        case 'with':
          this.package(statement);
          break;
        case 'hold':
          this.hold(statement);
          break;
        case 'request':
          if (isAccepted(statement)) this.apply(statement.statements, group);
          break;
        default:
          break;
      }
    }
  }

  finish(): Instrument {
    return {
      name: this.definition.name.text,
      definition: this.definition,
      model: this.model,
      values: this.values,
      changes: this.changes,
      holds: this.holds,
    };
  }

  private plain(statement: PropertyStatement, group?: TogetherStatement): void {
    const path = this.context.canonical(statement.path.text);
    if (path === 'model') {
      this.otherModel(statement, statement.value, undefined, group);
      return;
    }
    const after = this.set(path, statement.value, 'stated', statement.span);
    const members = this.without(after);
    this.record({ kind: 'value', path, after, members, written: 'plain', statement, group });
  }

  private change(statement: ChangeStatement, group?: TogetherStatement): void {
    const path = this.context.canonical(statement.path.text);
    if (path === 'model') {
      this.otherModel(statement, statement.new, statement.old, group);
      return;
    }
    const value = statement.by ? stepped(this.values.get(path)?.value, statement) : statement.new;
    const after = value && this.set(path, value, 'changed', statement.span);
    const members = after && this.without(after);
    this.record({ kind: 'value', path, after, members, stated: statement.old, written: 'change', statement, group });
  }

  /** Another model under the same recipes: what they say themselves stays, what they leave to the model is the new one's. */
  private otherModel(
    statement: ChangeStatement | PropertyStatement,
    value: Value | undefined,
    stated: Value | undefined,
    group?: TogetherStatement,
  ): void {
    // A model is the start of every line and stands on no other.
    if (this.definition.kind === 'model') return;
    const written = statement.kind === 'change' ? 'change' : 'plain';
    const old = this.model;
    const next = value?.kind === 'name' ? this.context.model(value.name) : undefined;
    const named = (model: Definition): Held => ({
      path: 'model',
      value: { kind: 'name', name: model.name.text, span: model.name.span },
      from: { definition: model, span: model.name.span },
      via: 'stated',
    });
    this.changes.push({
      kind: 'value',
      path: 'model',
      before: old && named(old),
      after: next && named(next.definition),
      members: [],
      stated,
      written,
      statement,
      group,
      from: { definition: this.definition, span: statement.span },
    });
    if (!next) return;
    const paths = new Set([
      ...next.values.keys(),
      ...[...this.values.values()].filter(isFrom(old)).map(({ path }) => path),
    ]);
    for (const path of paths) {
      const before = this.values.get(path);
      if (before && !isFrom(old)(before)) continue;
      const after = next.values.get(path);
      if (sameValue(before?.value, after?.value)) continue;
      if (after) {
        this.values.set(path, { ...after, before });
        this.record({ kind: 'value', path, after, written, statement, group });
      } else if (before) {
        this.values.delete(path);
        this.record({ kind: 'drop', path, members: [before], written, statement, group });
      }
    }
    this.model = next.definition;
  }

  private add(statement: AddStatement, group?: TogetherStatement): void {
    const path = this.context.canonical(statement.path.text);
    const members = [...propertiesOf(statement.statements)].map(({ statement: property }) =>
      this.set(this.context.canonical(property.path.text), property.value, 'added', property.span),
    );
    this.record({ kind: 'add', path, members, written: 'add', statement, group });
  }

  private drop(statement: DropStatement, group?: TogetherStatement): void {
    const path = this.context.canonical(statement.path.text);
    const members = [...this.values.values()].filter((held) => isWithin(held.path, path));
    for (const held of members) this.values.delete(held.path);
    this.record({ kind: 'drop', path, members, written: 'drop', statement, group });
  }

  private package(statement: WithStatement): void {
    for (const { statement: inner, definition } of broughtBy(statement.name.text, this.context.appointments)) {
      const path = this.context.canonical(inner.path.text);
      if (!this.context.isPackaged(path)) continue;
      const before = this.values.get(path);
      const from = { definition, span: inner.span };
      const after: Held = { path, value: inner.value, from, via: 'package', before };
      this.values.set(path, after);
      const members = this.without(after);
      this.record({ kind: 'value', path, after, members, written: 'with', statement });
    }
  }

  /** What a part no longer has once it is said that there is none: its size and mass go with it. */
  private without({ path, value }: Held): readonly Held[] {
    const part = this.context.partWithout(path, value);
    if (part === undefined) return [];
    const gone = [...this.values.values()].filter((held) => held.path !== path && isWithin(held.path, part));
    for (const held of gone) this.values.delete(held.path);
    return gone;
  }

  private hold(statement: HoldStatement): void {
    if (!statement.by) return;
    this.holds.push({
      statement,
      quantity: this.context.canonical(statement.quantity.text),
      by: this.context.canonical(statement.by.text),
      along: (statement.along ?? []).map(({ text }) => this.context.canonical(text)),
      from: { definition: this.definition, span: statement.span },
    });
  }

  private set(path: string, value: Value, via: Held['via'], span: Span): Held {
    const held: Held = {
      path,
      value,
      from: { definition: this.definition, span },
      via,
      before: this.values.get(path),
    };
    this.values.set(path, held);
    return held;
  }

  private record({
    members = [],
    ...change
  }: Omit<Change, 'from' | 'members' | 'before'> & { readonly members?: readonly Held[] | undefined }): void {
    this.changes.push({
      members,
      // What the parent says, even where this recipe sets the same path twice.
      before: this.inherited.get(change.path),
      ...change,
      from: { definition: this.definition, span: change.statement.span },
    });
  }
}

/** What a client asked for later counts once the maker has said yes. */
function isAccepted({ statements }: RequestStatement): boolean {
  return [...propertiesOf(statements)].some(
    ({ statement: { path, value } }) => path.text === 'answer' && value.kind === 'name' && value.name === 'accepted',
  );
}

/** Whether a value was said by that model. */
function isFrom(model: Definition | undefined): (held: Held) => boolean {
  return (held) => held.from.definition === model;
}

/** `bracing.x-bass` holds `bracing.x-bass.height` and itself. */
export function isWithin(path: string, part: string): boolean {
  return path === part || path.startsWith(`${part}.`);
}

/** The parent's value moved by `by`: a step in its own dimension, or per cent of itself. */
function stepped(before: Value | undefined, { by, span }: ChangeStatement): Value | undefined {
  if (!by || before?.kind !== 'quantity') return undefined;
  const { quantity } = before;
  if (by.quantity.unit?.symbol === '%') return computed({ ...quantity, si: quantity.si * (1 + by.quantity.si) }, span);
  if (by.quantity.dimension.name !== quantity.dimension.name) return undefined;
  return computed({ ...quantity, si: quantity.si + by.quantity.si }, span);
}

/** A value nobody wrote as a text. */
export function computed(quantity: Quantity, span: Span): Value {
  return { kind: 'quantity', quantity, written: '', span };
}
