/** Findings as SARIF 2.1.0 (OASIS Standard, 2020), which code hosts and editors read. */
import { createHash } from 'node:crypto';
import { version } from '../../../package.json';
import type { Severity } from '../../checks/finding.js';
import { rulePages } from '../../checks/manual.js';
import type { CheckReport, ToldFinding, ToldRange } from '../told-findings.js';
import type { Wording } from '../../wording/wording.js';
import { type Escaped, forJson, inSarif } from '../border.js';

export function findingsAsSarif({ findings }: CheckReport, { say, text }: Wording): Escaped {
  const pages = rulePages();
  const rules = pages.map(({ code, severity, title, reason }) => ({
    id: code,
    shortDescription: { text: inSarif(text(title)) },
    fullDescription: { text: inSarif(text(reason)) },
    help: { text: inSarif(`${text(reason)}\n\n${say`For examples: bookmatch rules ${code}`}`) },
    defaultConfiguration: { level: LEVELS[severity] },
  }));
  const fingerprint = fingerprints();
  const results = findings.map((finding) => ({
    ruleId: finding.code,
    ruleIndex: pages.findIndex(({ code }) => code === finding.code),
    level: LEVELS[finding.severity],
    message: { text: inSarif(finding.message) },
    partialFingerprints: { 'bookmatchLine/v1': fingerprint(finding) },
    locations: [{ physicalLocation: physical(finding.file, finding.range) }],
    relatedLocations: finding.related.map(({ file, range, message }, id) => ({
      id,
      message: { text: inSarif(message) },
      physicalLocation: physical(file, range),
    })),
  }));
  return forJson({
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [{ tool: { driver: { name: 'bookmatch', version, rules } }, columnKind: 'utf16CodeUnits', results }],
  });
}

/**
 * What stays the same when lines above move (3.27.17): of the code, the file and the line's own text, counted where the same
 * is said of the same line again.
 */
function fingerprints(): (finding: Pick<ToldFinding, 'code' | 'file' | 'line'>) => string {
  const seen = new Map<string, number>();
  return ({ code, file, line }) => {
    const words = `${code}\n${file}\n${line.replace(/\s+/g, ' ').trim()}`;
    const nth = (seen.get(words) ?? 0) + 1;
    seen.set(words, nth);
    return `${createHash('sha256').update(words).digest('hex').slice(0, 16)}:${nth}`;
  };
}

const LEVELS: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = {
  error: 'error',
  warning: 'warning',
  information: 'note',
  hint: 'note',
};

function physical(file: string, { start, end }: ToldRange) {
  return {
    artifactLocation: { uri: file.split('/').map(encodeURIComponent).join('/') },
    region: { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column },
  };
}
