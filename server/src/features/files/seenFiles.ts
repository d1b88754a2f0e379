import type { Results } from '../workspace';
import { fileNamesIn } from './fileNames';

const most = 1000;

/** The content that files had when results were last computed from them, so that a moved one can be told again. */
export class SeenFiles {
  private readonly identities = new Map<string, string>();

  /** `resolve`: the path a name in the gloss stands for. */
  note(results: Results, resolve: (file: string) => string, display: (path: string) => string): void {
    const { run, inputs } = results.snapshot;
    const read = new Map(inputs.map(({ display: shown, identity }) => [shown, identity]));
    if (run !== null) read.set(run.display, run.identity);
    for (const { file } of fileNamesIn(results.gloss.tree)) {
      const path = resolve(file);
      const identity = read.get(display(path));
      if (identity === undefined) continue;
      this.identities.delete(path);
      this.identities.set(path, identity);
      if (this.identities.size > most) this.identities.delete(this.identities.keys().next().value!);
    }
  }

  identityOf(path: string): string | null {
    return this.identities.get(path) ?? null;
  }
}
