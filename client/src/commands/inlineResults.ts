import type { Memento } from 'vscode';
import type { InlineSwitch } from '../server/middleware';

const key = 'inlineShown';

/** All inline results on or off for this workspace, whatever the settings of their kinds say. */
export class InlineResults implements InlineSwitch {
  shown: boolean;

  constructor(private readonly memory: Memento) {
    this.shown = memory.get(key, true);
  }

  async toggle(): Promise<void> {
    this.shown = !this.shown;
    await this.memory.update(key, this.shown);
  }
}
