/** The catalogue against what makers write: the language's tour, and an invented shop's day with the trade's other words. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { sameDimension } from '../../language/quantities/dimension.js';
import type { Definition, Path, Statement, Value } from '../../language/facts/facts.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';

const parser = createParser();

interface Line {
  readonly definition: Definition;
  readonly path: Path;
  /** Undefined where the path names a part. */
  readonly value?: Value;
}

describe.each(['tour', 'notebook'])('the %s', (name) => {
  const text = readFileSync(new URL(`./data/${name}.bookmatch`, import.meta.url), 'utf8');
  const file = readFile(`${name}.bookmatch`, text, parser);
  const lines = file.definitions.flatMap(({ definition }) => [...linesOf(definition, definition.statements)]);

  it('is read without a problem', () => {
    const problems = [...file.problems, ...file.definitions.flatMap(({ definition }) => definition.problems)];
    expect(problems.map((problem) => problem.message)).toEqual([]);
    expect(lines.length).toBeGreaterThan(40);
  });

  it('names only properties and parts the catalogue knows', () => {
    const unknown = lines.filter(({ definition, path, value }) => {
      const canonical = catalogue.canonical(path.text, definition.kind);
      const property = catalogue.property(canonical, definition.kind);
      return value === undefined ? !property && !catalogue.part(canonical) : !property;
    });
    expect(unknown.map(({ definition, path }) => `${definition.kind} ${definition.name.text}: ${path.text}`)).toEqual(
      [],
    );
  });

  it('gives every property a value of the kind and dimension the catalogue says', () => {
    const odd = lines.filter(({ definition, path, value }) => {
      const property = catalogue.property(catalogue.canonical(path.text, definition.kind), definition.kind);
      if (!property || value === undefined) return false;
      if (value.kind === 'name') {
        const free = ['choice', 'wood', 'species', 'strings', 'rig', 'part', 'list'].includes(property.kind);
        if (property.kind === 'choice') return !property.choices?.includes(value.name);
        return !free && !property.words?.includes(value.name);
      }
      return quantitiesIn(value).some(
        (quantity) => !property.dimension || !sameDimension(quantity.dimension, property.dimension),
      );
    });
    expect(odd.map(({ path }) => path.text)).toEqual([]);
  });
});

describe('a maker’s other words', () => {
  it.each([
    ['soundboard.thick', 'top.thickness'],
    ['strutting.x-bass.tall', 'bracing.x-bass.height'],
    ['ribs.thickness', 'sides.thickness'],
    ['kerfing.width', 'lining.width'],
    ['bridge.patch.thickness', 'bridge.plate.thickness'],
    ['bridge-plate', 'bridge.plate'],
    ['fretboard.radius', 'fingerboard.radius'],
    ['action.bass', 'setup.action.bass'],
    ['scale-length', 'scale'],
    ['sound-hole.size', 'soundhole.diameter'],
  ])('%s is %s', (written, canonical) => {
    expect(catalogue.canonical(written, 'recipe')).toBe(canonical);
    expect(catalogue.canonical(written)).toBe(canonical);
  });

  it('are looked up inside the part they belong to', () => {
    expect(catalogue.synonym('soundboard', '')).toBe('top');
    expect(catalogue.synonym('strut', '')).toBe('bracing');
    expect(catalogue.synonym('patch', 'bridge')).toBe('bridge.plate');
    expect(catalogue.synonym('patch', 'top')).toBeUndefined();
    expect(catalogue.synonym('top', '')).toBeUndefined();
  });

  it('leave alone what the catalogue does not know: the maker’s own names and what is computed', () => {
    expect(catalogue.canonical('top.stiffness.along')).toBe('top.stiffness.along');
    expect(catalogue.canonical('strings.tension')).toBe('strings.tension');
    expect(catalogue.canonical('bracing.my-own-brace.height')).toBe('bracing.my-own-brace.height');
    expect(catalogue.canonical('nonsense')).toBe('nonsense');
    expect(catalogue.canonical('')).toBe('');
  });
});

describe('what fits inside a block', () => {
  const words = (path: string, kind: Definition['kind']) => {
    const { parts, properties } = catalogue.children(path, kind);
    return { parts: parts.map((part) => part.path), properties: properties.map((property) => property.path) };
  };

  it('are the parts and properties of that definition only', () => {
    const recipe = words('', 'recipe');
    expect(recipe.parts).toEqual(expect.arrayContaining(['body', 'top', 'bracing', 'bridge', 'setup', 'finish']));
    expect(recipe.parts).not.toContain('heard');
    expect(recipe.properties).toEqual(expect.arrayContaining(['scale', 'strings', 'handed', 'rosette']));
    expect(recipe.properties).not.toContain('blank');
    expect(words('', 'wood').properties).toEqual(expect.arrayContaining(['blank', 'mass', 'cut', 'country']));
    expect(words('', 'rig').properties).toEqual(expect.arrayContaining(['span', 'load', 'at', 'width']));
    expect(words('', 'build').parts).toEqual(expect.arrayContaining(['resonance', 'heard', 'top', 'mass']));
  });

  it('go by the maker’s name for a brace', () => {
    expect(words('bracing.x-bass', 'recipe').properties).toEqual(
      expect.arrayContaining(['bracing.*.from', 'bracing.*.height', 'bracing.*.profile']),
    );
    expect(words('bracing.x-bass', 'recipe').parts).toEqual(['bracing.*.scallop', 'bracing.*.taper', 'bracing.*.cap']);
    expect(words('bracing', 'recipe').parts).toEqual(['bracing.*']);
    expect(catalogue.part('bracing.x-bass')?.members).toEqual(expect.arrayContaining(['x-bass', 'tone-bar', 'fan-1']));
    expect(words('nowhere', 'recipe')).toEqual({ parts: [], properties: [] });
  });
});

describe('classes', () => {
  it.each([
    ['top.thickness', 'voicing'],
    ['bracing.finger-3.height', 'voicing'],
    ['bridge.mass', 'voicing'],
    ['soundhole.diameter', 'voicing'],
    ['body.depth.tail', 'body'],
    ['cutaway.kind', 'body'],
    ['scale', 'body'],
    ['setup.action.bass', 'setup'],
    ['strings', 'setup'],
    ['nut.width', 'option'],
    ['electronics.pickup.mass', 'option'],
    ['rosette', 'appointment'],
    ['finish.sheen', 'appointment'],
  ])('%s is %s', (path, expected) => expect(catalogue.property(path)?.class).toBe(expected));

  it.each([
    ['bracing.finger-3', 'voicing'],
    ['cutaway', 'body'],
    ['arm-bevel', 'body'],
    ['port', 'body'],
    ['electronics.pickup', 'option'],
    ['pickguard', 'appointment'],
  ])('the part %s is counted as %s', (path, expected) => expect(catalogue.classOfPart(path)).toBe(expected));
});

function* linesOf(definition: Definition, statements: readonly Statement[]): Iterable<Line> {
  for (const statement of statements) {
    switch (statement.kind) {
      case 'property':
        yield { definition, path: statement.path, value: statement.value };
        break;
      case 'change':
        yield { definition, path: statement.path, value: statement.new };
        break;
      case 'drop':
        yield { definition, path: statement.path };
        break;
      case 'block':
      case 'add':
        yield { definition, path: statement.path };
        yield* linesOf(definition, statement.statements);
        break;
      case 'together':
      case 'reading':
      case 'request':
        yield* linesOf(definition, statement.statements);
        break;
      case 'hold':
        if (statement.by) yield { definition, path: statement.by };
        break;
      default:
        break;
    }
  }
}

function quantitiesIn(value: Value): Array<{ readonly dimension: Parameters<typeof sameDimension>[0] }> {
  switch (value.kind) {
    case 'quantity':
      return [value.quantity];
    case 'size':
      return value.parts.map((part) => part.quantity);
    case 'point':
      return [value.station.quantity, value.offset.quantity];
    case 'list':
      return value.items.flatMap(quantitiesIn);
    default:
      return [];
  }
}
