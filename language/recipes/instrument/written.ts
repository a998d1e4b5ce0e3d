/** Everything a definition writes, path by path, with what the catalogue and the engine know of it. */
import type { Catalogue } from '../../catalogue/catalogue.js';
import type { Property } from '../../catalogue/property.js';
import type { Derivations, DerivedQuantity } from '../evaluation/evaluation.js';
import type {
  AddStatement,
  BlockStatement,
  ChangeStatement,
  Definition,
  DropStatement,
  ExpectStatement,
  HoldStatement,
  Path,
  PropertyStatement,
  ReadingStatement,
  RequestStatement,
  ReworkStatement,
  Statement,
  TogetherStatement,
  Value,
} from '../../facts/facts.js';

export interface Written {
  readonly path: Path;
  /** The catalogue's spelling of the whole path. */
  readonly canonical: string;
  /** The catalogue's spelling of the block it stands in; empty at the top. */
  readonly within: string;
  readonly statement:
    | PropertyStatement
    | BlockStatement
    | ChangeStatement
    | AddStatement
    | DropStatement
    | HoldStatement
    | ExpectStatement;
  /** `part`: names a part or member; `quantity`: what a hold or an expectation is about; `by`: what a hold adjusts. */
  readonly role: 'value' | 'part' | 'quantity' | 'by';
  readonly values: readonly { readonly as: 'value' | 'old' | 'new' | 'step'; readonly value: Value }[];
  /** What the catalogue knows by this path in such a definition. */
  readonly property?: Property;
  /** What the engine computes under this path. */
  readonly derived?: DerivedQuantity;
  /** The occasion, the rework or the request it stands in. */
  readonly occasion?: ReadingStatement | ReworkStatement | RequestStatement;
  readonly group?: TogetherStatement;
}

interface Around {
  readonly within: string;
  readonly occasion?: ReadingStatement | ReworkStatement | RequestStatement;
  readonly group?: TogetherStatement;
}

export function writtenIn(definition: Definition, catalogue: Catalogue, derivations: Derivations): readonly Written[] {
  const written: Written[] = [];
  // An instrument's paths are read as `instrument.ts` reads them: in whichever definition knows them.
  const kind = definition.kind === 'recipe' || definition.kind === 'model' ? undefined : definition.kind;

  const note = (
    statement: Written['statement'],
    path: Path,
    role: Written['role'],
    around: Around,
    values: Written['values'] = [],
  ): string => {
    const canonical = catalogue.canonical(path.text, kind);
    written.push({
      path,
      canonical,
      statement,
      role,
      values,
      property: catalogue.property(canonical, definition.kind),
      derived: derivations.find(canonical)?.quantity,
      ...around,
    });
    return canonical;
  };

  const walk = (statements: readonly Statement[], around: Around): void => {
    for (const statement of statements) {
      switch (statement.kind) {
        case 'property':
          note(statement, statement.path, 'value', around, [{ as: 'value', value: statement.value }]);
          break;
        case 'block':
        case 'add': {
          const within = note(statement, statement.path, 'part', around);
          walk(statement.statements, { ...around, within });
          break;
        }
        case 'change':
          note(statement, statement.path, 'value', around, valuesOfChange(statement));
          break;
        case 'drop':
          note(statement, statement.path, 'part', around);
          break;
        case 'hold':
          note(statement, statement.quantity, 'quantity', around, one(statement.at));
          for (const by of [statement.by, ...(statement.along ?? [])]) if (by) note(statement, by, 'by', around);
          break;
        case 'expect':
          note(statement, statement.quantity, 'quantity', around, one(statement.value));
          break;
        case 'together':
          walk(statement.statements, { ...around, group: statement });
          break;
        case 'reading':
        case 'rework':
        case 'request':
          walk(statement.statements, { ...around, occasion: statement });
          break;
        default:
          break;
      }
    }
  };
  walk(definition.statements, { within: '' });
  return written;
}

function valuesOfChange(statement: ChangeStatement): Written['values'] {
  const values: { as: 'old' | 'new' | 'step'; value: Value }[] = [];
  if (statement.old) values.push({ as: 'old', value: statement.old });
  if (statement.new) values.push({ as: 'new', value: statement.new });
  if (statement.by) values.push({ as: 'step', value: statement.by });
  return values;
}

function one(value: Value | undefined): Written['values'] {
  return value ? [{ as: 'value', value }] : [];
}
