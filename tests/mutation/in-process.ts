/**
 * What the tests take from the test runner, in this process and as often as wanted: a test is a function in a list. Only as much
 * as the tests named in `targets.ts` use.
 */
import { expect } from 'vitest';

export { expect };

type Body = (...args: readonly unknown[]) => unknown;

export interface Listed {
  readonly name: string;
  readonly run: () => Promise<void>;
}

interface Scope {
  readonly name: string;
  readonly outer: Scope | undefined;
  readonly before: Body[];
  readonly after: Body[];
}

let scope: Scope = { name: '', outer: undefined, before: [], after: [] };
let listed: Listed[] = [];

/** Tests met since the last call. */
export function takeListed(): readonly Listed[] {
  const all = listed;
  listed = [];
  return all;
}

function scopes(): readonly Scope[] {
  const all: Scope[] = [];
  for (let each: Scope | undefined = scope; each; each = each.outer) all.unshift(each);
  return all;
}

function list(name: string, ...rest: readonly unknown[]): void {
  const body = rest.find((each): each is Body => typeof each === 'function');
  if (!body) throw new Error(`${name} does nothing`);
  const around = scopes();
  const run = async () => {
    for (const { before } of around) for (const each of before) await each();
    await body();
    for (const { after } of around) for (const each of after) await each();
  };
  listed.push({ name: [...around.map((each) => each.name), name].filter((word) => word !== '').join(' > '), run });
}

function inside(name: string, body: Body): void {
  scope = { name, outer: scope, before: [], after: [] };
  body();
  scope = scope.outer!;
}

const nothing = () => undefined;

function each(make: (name: string, body: Body) => void) {
  return (rows: readonly unknown[]) =>
    (name: string, ...rest: readonly unknown[]) => {
      const body = rest.find((one): one is Body => typeof one === 'function')!;
      rows.forEach((row, i) => {
        make(`${name} ${i}`, () => body(...(Array.isArray(row) ? (row as unknown[]) : [row])));
      });
    };
}

export const it = Object.assign(list, {
  each: each(list),
  skip: nothing,
  skipIf: (is: boolean) => (is ? nothing : list),
  runIf: (is: boolean) => (is ? list : nothing),
});
export const test = it;
export const describe = Object.assign(inside, { each: each(inside), skip: nothing });
export const beforeEach = (body: Body) => void scope.before.push(body);
export const afterEach = (body: Body) => void scope.after.push(body);
