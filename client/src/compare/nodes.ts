import type { ComparedGlossRows, ComparedRow, Comparison } from '../../../server/src/protocol/compare';
import type { Translate } from '../text/translate';

/** One line of the tree of a comparison, in words. */
export interface ChangeNode {
  readonly kind: 'gloss' | 'row' | 'verdict' | 'group' | 'words' | 'curves';
  /** The same in the next comparison: what was opened stays open. */
  readonly id: string;
  readonly label: string;
  readonly description: string;
  /** Lines of plain text. */
  readonly tooltip: string;
  /** Name in the editor's own set. */
  readonly icon: string;
  readonly children: readonly ChangeNode[];
  readonly open: boolean;
  /** A row: what it opens. */
  readonly row: ComparedRow | null;
  readonly gloss: ComparedGlossRows;
}

/** What moved, a node a result; of several glosses a node each. */
export function changeNodes(comparison: Comparison, t: Translate): ChangeNode[] {
  return numbered(nodesOf(comparison, t), new Map());
}

/** Nodes of the same words get a running number: the editor takes no id twice. */
function numbered(nodes: readonly ChangeNode[], seen: Map<string, number>): ChangeNode[] {
  return nodes.map((one) => {
    const count = (seen.get(one.id) ?? 0) + 1;
    seen.set(one.id, count);
    // No label holds the sign before the number.
    const id = count === 1 ? one.id : `${one.id}\0${count}`;
    return { ...one, id, children: numbered(one.children, seen) };
  });
}

function nodesOf({ glosses }: Comparison, t: Translate): ChangeNode[] {
  if (glosses.length === 1) return glossNodes(glosses[0]!, t);
  return glosses.map((gloss) => {
    const count = gloss.rows.length + gloss.verdicts.length;
    return node('gloss', gloss, gloss.title, {
      description: count === 0 ? t('nothing moved') : t('{0} moved', count),
      icon: 'file',
      children: glossNodes(gloss, t),
      open: count > 0,
    });
  });
}

/** One line over the tree. */
export function headWords({ from, to, commit, summary }: Comparison, t: Translate): string {
  const left = commit === null || commit === from ? from : `${from} (${commit})`;
  return `${t('From {0} to {1}.', left, to)} ${summary}`;
}

function glossNodes(gloss: ComparedGlossRows, t: Translate): ChangeNode[] {
  const nodes: ChangeNode[] = gloss.remarks.map((text) => node('words', gloss, text, { icon: 'info' }));
  nodes.push(...gloss.rows.map((row) => rowNode(gloss, row, t)));
  for (const { label, old, new: now, cause } of gloss.verdicts) {
    const description = [change(old, now), cause].filter((text) => text !== '').join(' · ');
    nodes.push(node('verdict', gloss, label, { description, icon: 'law', tooltip: `${label}\n${description}` }));
  }
  if (gloss.further.length > 0) {
    const { length } = gloss.further;
    const label = length === 1 ? t('1 further quantity moved too') : t('{0} further quantities moved too', length);
    const children = gloss.further.map((row) => rowNode(gloss, row, t));
    nodes.push(node('group', gloss, label, { icon: 'list-unordered', children }));
  }
  if (gloss.quiet > 0) {
    const label =
      gloss.quiet === 1
        ? t('1 result within tolerance is not shown')
        : t('{0} results within tolerance are not shown', gloss.quiet);
    nodes.push(node('words', gloss, label, { icon: 'circle-outline' }));
  }
  if (gloss.over !== null) nodes.push(node('curves', gloss, t('Show both in the curves'), { icon: 'graph-line' }));
  return nodes;
}

function rowNode(gloss: ComparedGlossRows, row: ComparedRow, t: Translate): ChangeNode {
  const status = statusWords(row.status, t);
  const numbers = [change(row.old, row.new), row.difference].filter((text) => text !== '');
  const shown = row.status === 'changed' ? numbers : [status, ...numbers];
  const lines = [
    `${row.result}: ${status}`,
    ...(row.old === '' ? [] : [t('before: {0}', row.old)]),
    ...(row.new === '' ? [] : [t('now: {0}', row.new)]),
    ...(row.difference === '' ? [] : [t('difference: {0}', [row.difference, row.relative].filter(Boolean).join(', '))]),
    ...(row.cause === '' ? [] : [t('moved by: {0}', row.cause)]),
  ];
  return node('row', gloss, row.result, {
    description: [...shown, row.cause].filter((text) => text !== '').join(' · '),
    tooltip: lines.join('\n'),
    icon: icons[row.status],
    row,
  });
}

function change(old: string, now: string): string {
  if (old === '' || now === '') return old === '' ? now : old;
  return old === now ? now : `${old} → ${now}`;
}

export function statusWords(status: ComparedRow['status'], t: Translate): string {
  switch (status) {
    case 'added':
      return t('new');
    case 'removed':
      return t('gone');
    case 'changed':
      return t('changed');
    case 'failed':
      return t('cannot be computed');
  }
}

const icons: Readonly<Record<ComparedRow['status'], string>> = {
  added: 'diff-added',
  removed: 'diff-removed',
  changed: 'diff-modified',
  failed: 'error',
};

function node(
  kind: ChangeNode['kind'],
  gloss: ComparedGlossRows,
  label: string,
  more: Partial<Omit<ChangeNode, 'kind' | 'gloss' | 'label' | 'id'>>,
): ChangeNode {
  const id = `${kind} ${gloss.title} ${more.row?.id ?? label}`;
  return {
    kind,
    id,
    label,
    description: '',
    tooltip: label,
    icon: '',
    children: [],
    open: false,
    row: null,
    gloss,
    ...more,
  };
}
