/**
 * An instrument written out in full in the language itself: every value of its line, part by part, and what it computes
 * to as comments at the end of each block. Two such texts side by side differ exactly where the instruments do, so the
 * text leaves out who said what, keeps one order and one unit for each path, and one value on each line.
 */
import { writeQuantity } from '../quantities/write.js';
import { concretePaths } from '../recipes/evaluation/effects.js';
import type { Evaluation } from '../recipes/evaluation/evaluation.js';
import type { DefinitionKind, Value } from '../facts/facts.js';
import { sideOf } from '../recipes/instrument/sides.js';
import type { Workshop } from '../recipes/workshop.js';
import { blockFor, type PartBlock, partsInOrder } from './parts-in-order.js';
import { writeInShopUnit } from './shop-values.js';
import { english, type Wording } from '../wording/wording.js';

export interface ResolvedText {
  readonly title: string;
  readonly text: string;
}

/** The recipe, or else the build or the model, of this name; undefined when there is none. */
export function resolvedText(workshop: Workshop, name: string): ResolvedText | undefined {
  const side = sideOf(workshop, name);
  if (!side) return undefined;
  const values = new Map<string, Value>([...side.values].map(([path, held]) => [path, held.value]));
  const build = side.kind === 'build' ? workshop.build(name) : undefined;
  if (build) for (const [path, held] of workshop.stated(build.definition)) values.set(path, held.value);
  const tree = partsInOrder(values, KINDS);
  const page = new Page(workshop, side.evaluation, side.kind, tree);
  page.line(0, `${headOf(workshop, side.kind, name)} {`);
  page.block(tree, 1);
  for (const reading of build?.readings ?? []) {
    if (reading.name === '') continue;
    page.line(1, `reading ${reading.name} {`);
    const read = [...reading.conditions, ...reading.values].map(([path, held]) => [path, held.value] as const);
    page.values(partsInOrder(new Map(read), KINDS), 2);
    page.line(1, '}');
  }
  page.line(0, '}');
  return { title: workshop.wording.say`${name}, written out in full`, text: page.text() };
}

function headOf(workshop: Workshop, kind: 'recipe' | 'model' | 'build', name: string): string {
  if (kind === 'model') return `model ${name}`;
  if (kind === 'build')
    return `build ${name} of ${workshop.shelf.find('build', name)?.relation?.target.text ?? 'unknown'}`;
  const model = workshop.lineage(name).model?.name.text;
  return model === undefined ? `recipe ${name}` : `recipe ${name} for ${model}`;
}

/** An instrument's own paths, and those of what was read off it. */
const KINDS: readonly DefinitionKind[] = ['recipe', 'build'];

class Page {
  private readonly lines: string[] = [];
  /** Paths of derived quantities by the block they are written at the end of. */
  private readonly derived = new Map<string, string[]>();

  constructor(
    private readonly workshop: Workshop,
    private readonly evaluation: Evaluation,
    private readonly kind: DefinitionKind,
    tree: PartBlock<Value>,
  ) {
    for (const path of concretePaths(evaluation.derivations.all, evaluation)) {
      const { path: block } = blockFor(tree, path);
      this.derived.set(block, [...(this.derived.get(block) ?? []), path]);
    }
  }

  text(): string {
    return `${this.lines.join('\n')}\n`;
  }

  line(depth: number, text: string): void {
    this.lines.push('  '.repeat(depth) + text);
  }

  block(block: PartBlock<Value>, depth: number): void {
    this.values(block, depth, (inner) => this.block(inner, depth + 1));
    this.computed(block, depth);
  }

  values(
    block: PartBlock<Value>,
    depth: number,
    inside = (inner: PartBlock<Value>) => this.values(inner, depth + 1),
  ): void {
    for (const { word, value, block: inner } of block.entries) {
      const path = block.path === '' ? word : `${block.path}.${word}`;
      if (value) {
        this.line(depth, `${word}: ${writeInShopUnit(path, value, this.kind)}`);
        if (word === 'wood' && value.kind === 'name') this.wood(value.name, depth);
      }
      if (!inner) continue;
      this.line(depth, `${word} {`);
      inside(inner);
      this.line(depth, '}');
    }
  }

  private computed(block: PartBlock<Value>, depth: number): void {
    const paths = this.derived.get(block.path) ?? [];
    const label = (path: string) => path.slice(block.path === '' ? 0 : block.path.length + 1).replaceAll('.', ' ');
    for (const path of paths) {
      const number = this.number(path);
      if (number !== undefined) this.line(depth, `// ${label(path)}: ${number}`);
    }
    for (const [missing, without] of this.unknown(paths)) {
      this.line(
        depth,
        `// ${this.workshop.wording.say`not known without ${missing}: ${without.map(label).join(', ')}`}`,
      );
    }
  }

  /** A number somebody stated or weighed stands in the block already. */
  private number(path: string): string | undefined {
    const derived = this.evaluation.derived(path);
    if (!derived?.known || this.evaluation.ground.leaf(path)) return undefined;
    return writeQuantity(derived.si, derived.quantity.dimension, { unit: derived.quantity.unit });
  }

  private unknown(paths: readonly string[]): ReadonlyMap<string, readonly string[]> {
    const groups = new Map<string, string[]>();
    for (const path of paths) {
      const derived = this.evaluation.derived(path);
      if (!derived || derived.known || derived.missing.length === 0 || this.evaluation.ground.leaf(path)) continue;
      const key = someOf(derived.missing, this.workshop.wording);
      groups.set(key, [...(groups.get(key) ?? []), path]);
    }
    return groups;
  }

  private wood(name: string, depth: number): void {
    const wood = this.workshop.wood(name);
    if (!wood) return;
    for (const { path, label } of WOOD_FIGURES) {
      const si = wood.number(path);
      const quantity = wood.derivations.find(path)?.quantity;
      if (si === undefined || !quantity) continue;
      const number = writeQuantity(si, quantity.dimension, { unit: quantity.unit });
      this.line(depth, `// ${this.workshop.wording.text(label)}: ${number}`);
    }
  }
}

/** What a quantity still lacks, in the length of a line. */
function someOf(missing: readonly string[], { say }: Wording): string {
  if (missing.length <= MOST_MISSING) return missing.join(', ');
  return say`${missing.slice(0, MOST_MISSING).join(', ')} and ${missing.length - MOST_MISSING} more`;
}

const MOST_MISSING = 4;

const WOOD_FIGURES = [
  { path: 'density', label: english('wood density') },
  { path: 'modulus.along', label: english('wood stiffness along') },
  { path: 'modulus.across', label: english('wood stiffness across') },
  { path: 'modulus.twist', label: english('wood stiffness in twist') },
];
