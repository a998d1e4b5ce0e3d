/** The builds of a model. */
import type { Questions } from '../questions.js';
import type { BuildRecord } from './builds.js';

/** Every build whose recipe starts from the model. */
export function buildsOfModel(
  workshop: Pick<Questions, 'shelf' | 'build' | 'lineage'>,
  model: string,
): readonly BuildRecord[] {
  const { shelf } = workshop;
  return shelf
    .uris()
    .flatMap((uri) => shelf.file(uri)?.definitions ?? [])
    .filter(({ definition }) => definition.kind === 'build' && shelf.find('build', definition.name.text) === definition)
    .flatMap(({ definition }) => workshop.build(definition.name.text) ?? [])
    .filter(({ recipe }) => recipe && workshop.lineage(recipe.name).model?.name.text === model);
}
