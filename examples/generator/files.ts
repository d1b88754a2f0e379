import { limestoneRuns } from './limestoneScenario';
import { limestoneText } from './limestoneText';
import { preformText } from './preformText';
import { limestoneTruth } from './limestoneTruth';
import { preformTruth } from './preformTruth';

/** Every file the generator makes: path below `examples/` and text. */
export function generatedFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const run of limestoneRuns) files.set(`limestone/${run.name}.csv`, limestoneText(run));
  files.set('preform/pet-07.txt', preformText());
  files.set('limestone/truth.json', `${JSON.stringify(limestoneTruth(), null, 2)}\n`);
  files.set('preform/truth.json', `${JSON.stringify(preformTruth(), null, 2)}\n`);
  return files;
}
