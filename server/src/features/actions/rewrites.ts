import type { Span } from '../../base/span';
import { proposalText } from '../../engine/draft';
import type { StatementNode } from '../../language/tree';
import { quantities } from '../../language/vocabulary/quantities';
import { foundDecimals } from '../../presentation/plot/edges';
import { numberIn, writtenAt } from '../../presentation/plot/writtenNumber';
import { plural } from '../../presentation/plural';
import { usual } from '../hover/resultBlocks';
import type { GlossDocument, Results } from '../workspace';
import { atEnd, type Change } from './edits';

/** A change of the text that a person may want, though nothing is wrong; without changes, why it cannot be made. */
export interface Rewrite {
  readonly title: string;
  readonly changes: readonly Change[];
  readonly disabled: string | null;
}

/** An `around` window as the ends that it found, so that it stays where it is. */
export function freeze(results: Results, node: StatementNode): Rewrite[] {
  const { statement, tokens, name } = node;
  const place = statement !== null && 'place' in statement ? statement.place : null;
  const span = tokens.get('window');
  if (place?.window?.rule !== 'around' || span === undefined || name === null) return [];
  const result = usual(results.snapshot.results.filter((r) => r.name === name));
  const title = 'Write the ends that were found';
  const window = result?.window ?? null;
  if (window === null) return [{ title, changes: [], disabled: `no ends were found around ${place.window.at.text}` }];
  const end = (value: number): string => writtenAt(value, -foundDecimals[window.unit]);
  const heatings = results.snapshot.run?.segments.filter((s) => s.direction === 'heating') ?? [];
  const named =
    place.segment !== null || (window.unit === '°C' && heatings.length === 1 && result!.segment === 'heating 1');
  const text = `${end(window.from)}..${end(window.to)} ${window.unit}${named ? '' : ` in ${result!.segment!}`}`;
  return [{ title: `${title}: ${text}`, changes: [{ file: 'gloss', span, text }], disabled: null }];
}

/** The written ends of a window that the range touches, moved to the nearest level ground. */
export async function levelGround(document: GlossDocument, node: StatementNode, asked: Span): Promise<Rewrite[]> {
  const { tree, project, path, text } = document;
  const { tokens, name, statement } = node;
  const window = tokens.get('window');
  if (name === null || window === undefined || !touches(window, asked)) return [];
  if (statement?.kind !== 'step' && statement?.kind !== 'peak') return [];
  const edges = await project.engine.levelEdges(path, text, name);
  const near = edges.filter(({ token }) => touches(tokens.get(token) ?? window, asked));
  return (near.length > 0 ? near : edges).flatMap(({ token, word, number, text: words }): Rewrite[] => {
    const at = tokens.get(token);
    if (at === undefined) return [];
    if (number === null) return [{ title: `Move the ${word} to level ground`, changes: [], disabled: words }];
    const old = numberIn(tree.text.slice(at.start, at.end));
    if (old === null) return [];
    const span = { start: at.start + old.start, end: at.start + old.end };
    return [
      {
        title: `Move the ${word} to level ground at ${words}`,
        changes: [{ file: 'gloss', span, text: number }],
        disabled: null,
      },
    ];
  });
}

/** Statements for what the run shows, in a gloss that has none yet. */
export async function draftStatements(document: GlossDocument): Promise<Rewrite[]> {
  const { tree, project, path, text } = document;
  const kinds = tree.statements.map((s) => s.statement?.kind ?? '');
  const bare = tree.role === 'run' && !kinds.some((kind) => kind in quantities || kind === 'use method' || kind === '');
  if (!bare) return [];
  const shown = await project.engine.proposals(path, text);
  if (shown === null) return [];
  const proposals = [...shown.windows.map((w) => w.proposal), ...(shown.residue === null ? [] : [shown.residue])];
  const title = 'Draft statements from the run';
  if (proposals.length === 0)
    return [{ title, changes: [], disabled: 'the run shows no step, effect or glass transition' }];
  const counts = ['step', 'peak', 'glass', 'residue'].map((kind) =>
    plural(proposals.filter((p) => p.kind === kind).length, words[kind] ?? kind),
  );
  const statements = proposals.map(proposalText).join('\n');
  const end = atEnd(tree.text, `\n${statements}`);
  return [
    {
      title: `${title}: ${counts.filter((c) => c !== null).join(', ')}`,
      changes: [{ file: 'gloss', ...end }],
      disabled: null,
    },
  ];
}

const words: Readonly<Record<string, string>> = { glass: 'glass transition' };

function touches(a: Span, b: Span): boolean {
  return a.start <= b.end && b.start <= a.end;
}
