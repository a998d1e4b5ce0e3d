/** Required fields and values after SARIF 2.1.0 (OASIS Standard, 27 March 2020), the clauses named beside each. */
import { describe, expect, it } from 'vitest';
import { SMALL_SHOP } from './small-shop.js';
import { bookmatch } from './terminal.js';

interface Region {
  startLine: number;
  startColumn: number;
  endLine: number;
  endColumn: number;
}

interface Location {
  message?: { text: string };
  physicalLocation: { artifactLocation: { uri: string }; region: Region };
}

interface Log {
  $schema: string;
  version: string;
  runs: {
    tool: { driver: { name: string; version: string; rules: { id: string; shortDescription: { text: string } }[] } };
    columnKind: string;
    results: {
      ruleId: string;
      ruleIndex: number;
      level: string;
      message: { text: string };
      locations: Location[];
      relatedLocations: Location[];
      partialFingerprints: Record<string, string>;
    }[];
  }[];
}

const odd = { ...SMALL_SHOP, 'a shop/odd name.bookmatch': 'wood x is nothing-known { }' };
const { out, code } = await bookmatch(odd, 'check', '--format', 'sarif', '--fail-on', 'warning');
const log = JSON.parse(out) as Log;
const run = log.runs[0]!;

describe('SARIF', () => {
  it('is a log of one run of one tool (3.13, 3.14, 3.18, 3.19)', () => {
    expect(log.version).toBe('2.1.0');
    expect(log.$schema).toContain('sarif-2.1.0');
    expect(log.runs).toHaveLength(1);
    expect(run.tool.driver.name).toBe('bookmatch');
    expect(run.tool.driver.version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(run.columnKind).toBe('utf16CodeUnits');
    expect(code).toBe(1);
  });

  it('describes each rule once (3.49)', () => {
    const ids = run.tool.driver.rules.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { shortDescription } of run.tool.driver.rules) expect(shortDescription.text).not.toBe('');
  });

  it('points each result to its rule, with a message and a level (3.27)', () => {
    expect(run.results.length).toBeGreaterThan(3);
    for (const { ruleId, ruleIndex, level, message } of run.results) {
      expect(run.tool.driver.rules[ruleIndex]!.id).toBe(ruleId);
      expect(['error', 'warning', 'note']).toContain(level);
      expect(message.text).not.toBe('');
    }
  });

  it('places each result in a region that runs forward from one (3.30)', () => {
    const places = run.results.flatMap(({ locations, relatedLocations }) => [...locations, ...relatedLocations]);
    for (const { physicalLocation } of places) {
      const { startLine, startColumn, endLine, endColumn } = physicalLocation.region;
      expect(Math.min(startLine, startColumn, endLine, endColumn)).toBeGreaterThanOrEqual(1);
      expect(endLine > startLine || (endLine === startLine && endColumn >= startColumn)).toBe(true);
    }
  });

  it('names files by valid URI references (3.4.3)', () => {
    const uris = run.results.flatMap(({ locations }) =>
      locations.map((each) => each.physicalLocation.artifactLocation.uri),
    );
    expect(uris).toContain('a%20shop/odd%20name.bookmatch');
    for (const uri of uris) expect(new URL(uri, 'file:///shop/').pathname).toBe(`/shop/${uri}`);
  });

  it('gives each result a fingerprint of its own that stays when lines above move (3.27.17)', async () => {
    const prints = (of: Log) => of.runs[0]!.results.map((one) => Object.values(one.partialFingerprints).join());
    expect(new Set(prints(log)).size).toBe(run.results.length);
    const lower = Object.fromEntries(Object.entries(odd).map(([path, text]) => [path, `// one\n\n// two\n${text}`]));
    const moved = JSON.parse((await bookmatch(lower, 'check', '--format', 'sarif')).out) as Log;
    expect(moved.runs[0]!.results[0]!.locations).not.toEqual(run.results[0]!.locations);
    expect(prints(moved).sort()).toEqual(prints(log).sort());
  });
});
