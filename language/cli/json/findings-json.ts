/** Findings for another program. Lines and columns count from one. */
import { type Escaped, forJson } from '../border.js';
import type { CheckReport, ToldFinding } from '../told-findings.js';

export function findingsAsJson({ findings }: CheckReport): Escaped {
  return forJson({ findings: findings.map(plainFinding) });
}

export function plainFinding({ code, severity, message, file, range }: ToldFinding): object {
  return { code, severity, message, file, range };
}
