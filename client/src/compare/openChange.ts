import { commands, l10n, Uri, window, type Range } from 'vscode';
import type { ComparedPlace } from '../../../server/src/protocol/compare';
import { vscodeRange } from '../curves/edgeWorld';
import { lastPart } from '../text/fileName';
import { oldUri } from './oldTexts';

/** Opens the changed line: both texts side by side, or the one there is. */
export async function openChange(place: ComparedPlace, from: string, comparison: number): Promise<void> {
  const now = place.uri === null ? null : Uri.parse(place.uri);
  const before = place.old === null ? null : oldAddress(place, comparison);
  const selection = range(place.range) ?? range(place.oldRange);
  if (now !== null && before !== null) {
    const name = lastPart(now.path);
    const title = l10n.t('{0} ({1}) and as it stands', name, from);
    await commands.executeCommand('vscode.diff', before, now, title, selection === null ? {} : { selection });
    return;
  }
  const only = now ?? before;
  if (only !== null) await window.showTextDocument(only, selection === null ? {} : { selection });
}

/** Another gloss is shown itself, a revision as a text that cannot be edited. */
function oldAddress({ old }: ComparedPlace, comparison: number): Uri {
  return old!.with.kind === 'file' ? Uri.parse(old!.uri) : oldUri(old!, comparison);
}

function range(of: ComparedPlace['range']): Range | null {
  return of === null ? null : vscodeRange(of);
}
