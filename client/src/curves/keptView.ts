import type { KeptView } from '../../../server/src/protocol/messages';
import { defaultChoices, type Abscissa } from '../../../server/src/protocol/view';

/** What a view of a gloss starts with. */
export function freshView(uri: string, pinned: boolean, abscissa: Abscissa): KeptView {
  return {
    uri,
    pinned,
    choices: { ...defaultChoices, abscissa },
    visible: null,
    ordinates: {},
    laneOrder: [],
    laneHeights: {},
    hiddenLanes: [],
    selected: null,
    sort: null,
    openRows: [],
    scroll: 0,
    allRows: false,
  };
}

/**
 * What the editor kept of a view over a reload. It may have been written by another version: what is missing or of another
 * kind is as in a fresh view; without a gloss there is nothing to show.
 */
export function keptFrom(state: unknown, abscissa: Abscissa): KeptView | null {
  if (typeof state !== 'object' || state === null) return null;
  const kept = state as Record<string, unknown>;
  if (typeof kept['uri'] !== 'string' || kept['uri'] === '') return null;
  const fresh = freshView(kept['uri'], kept['pinned'] === true, abscissa);
  const choices = alike(fresh.choices, kept['choices'], { run: 'string', against: 'string' });
  const rest = alike(fresh, kept, { visible: 'object', selected: 'string', sort: 'object' });
  return { ...rest, choices };
}

/** Values of `kept` where they are of the kind of `fresh`; where that is null, of the kind named. */
function alike<T extends object>(fresh: T, kept: unknown, nullable: Readonly<Record<string, string>>): T {
  if (typeof kept !== 'object' || kept === null) return fresh;
  const given = kept as Record<string, unknown>;
  const entries = Object.entries(fresh).map(([name, value]) => {
    const other = given[name];
    const kind = nullable[name] ?? typeof value;
    if (name in nullable && other === null) return [name, null];
    const same = typeof other === kind && other !== null && Array.isArray(other) === Array.isArray(value);
    return [name, same ? other : value];
  });
  return Object.fromEntries(entries) as T;
}

/** Views of glosses seen lately, so that one that follows finds each as it was left. */
export class KeptViews {
  private readonly views = new Map<string, KeptView>();

  constructor(private readonly most = 20) {}

  set(kept: KeptView): void {
    this.views.delete(kept.uri);
    this.views.set(kept.uri, kept);
    for (const uri of this.views.keys()) {
      if (this.views.size <= this.most) break;
      this.views.delete(uri);
    }
  }

  get(uri: string): KeptView | null {
    return this.views.get(uri) ?? null;
  }
}
