// Writes the codes of all findings into the settings of the manifest: `npm run generate:settings`.
import { generateFile } from '../disk/generated-file.js';
import { SEVERITY_SECTION, severitySchema } from './severity-setting.js';

interface Manifest {
  contributes: { configuration: { properties: Record<string, Record<string, unknown>> } };
}

const FILE = 'package.json';
await generateFile(FILE, (now = '{}') => {
  const manifest = JSON.parse(now) as Manifest;
  const setting = manifest.contributes.configuration.properties[SEVERITY_SECTION];
  if (!setting) throw new Error(`${FILE} has no setting ${SEVERITY_SECTION}.`);
  Object.assign(setting, severitySchema());
  return `${JSON.stringify(manifest, null, 2)}\n`;
});
console.log(`  ${FILE} written`);
