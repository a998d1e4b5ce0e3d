/** A rule that is written and not listed would never be asked, and its own examples never be run. */
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { STALE_ACCEPTANCE } from '../../language/checks/acceptance.js';
import { type Rule } from '../../language/checks/rule.js';
import { PROBLEM_RULES, RULES } from '../../language/checks/rules.js';

/** Every value any file of the checks exports that looks like a rule, by code. */
async function written(): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  for (const name of readdirSync('language/checks', { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.ts')) continue;
    const path = resolve('language/checks', name);
    const file = (await import(/* @vite-ignore */ path)) as Record<string, unknown>;
    for (const value of Object.values(file)) if (isRule(value)) found.set(value.code, join('language/checks', name));
  }
  return found;
}

function isRule(value: unknown): value is Rule {
  return typeof value === 'object' && value !== null && 'code' in value && 'bad' in value && 'reason' in value;
}

test('every rule that is written is listed', async () => {
  const listed = new Set<string>([
    ...[...RULES, STALE_ACCEPTANCE].map(({ code }) => code),
    ...Object.keys(PROBLEM_RULES),
  ]);
  const rules = await written();
  expect(rules.size).toBeGreaterThan(50);
  const left = [...rules].filter(([code]) => !listed.has(code));
  expect(left.map(([code, path]) => `${code}, in ${path}, is not listed in language/checks/rules.ts`)).toEqual([]);
});
