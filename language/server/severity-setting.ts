/** The setting `bookmatch.severity`: how grave each finding is to the person, by its code. */
import { type Finding, SEVERITIES, type Severity } from '../checks/finding.js';
import { CODES } from '../checks/rules.js';

export const SEVERITY_SECTION = 'bookmatch.severity';

/** What a person set, by code. `off`: not to be shown at all. */
export type Severities = ReadonlyMap<string, Severity | 'off'>;

const LEVELS: readonly (Severity | 'off')[] = [...SEVERITIES, 'off'];

/** From whatever stands in the settings; what is no code or no severity is left out. */
export function readSeverities(setting: unknown): Severities {
  if (typeof setting !== 'object' || setting === null || Array.isArray(setting)) return new Map();
  return new Map(
    Object.entries(setting).flatMap(([code, level]) => {
      const known = LEVELS.find((one) => one === level);
      return known !== undefined && CODES.includes(code) ? [[code, known] as const] : [];
    }),
  );
}

/** The findings as the person wants them. */
export function graded(findings: readonly Finding[], severities: Severities): readonly Finding[] {
  if (severities.size === 0) return findings;
  return findings.flatMap((finding) => {
    const severity = severities.get(finding.code) ?? finding.severity;
    return severity === 'off' ? [] : [severity === finding.severity ? finding : { ...finding, severity }];
  });
}

/** The setting as the manifest declares it (JSON Schema, draft 7). Written into it by `npm run generate:settings`. */
export function severitySchema(): Readonly<Record<string, unknown>> {
  return {
    propertyNames: { enum: [...CODES].sort() },
    additionalProperties: { type: 'string', enum: [...LEVELS] },
  };
}
