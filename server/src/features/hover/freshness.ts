import { isCurrent, type GlossDocument, type Results, type Workspace } from '../workspace';

/** How fresh what is shown is, in words: of which revision of the results, and why it is not of this text. */
export function freshnessWords(
  workspace: Pick<Workspace, 'settings'>,
  document: GlossDocument,
  results: Results | null,
): string {
  const { refresh } = workspace.settings(document.uri);
  const next =
    refresh === 'onSave'
      ? 'new numbers are computed when the text is saved'
      : refresh === 'manual'
        ? 'new numbers are computed when they are asked for'
        : 'new numbers are being computed';
  if (results === null) return `Nothing is computed yet: ${next.replace('new numbers', 'numbers')}.`;
  if (isCurrent(document, results)) return `Current (revision ${results.revision}).`;
  return `Of an older text (revision ${results.revision}): ${next}.`;
}
