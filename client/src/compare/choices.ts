import type { ComparedWith, RevisionNames } from '../../../server/src/protocol/compare';
import type { Translate } from '../text/translate';

/** What may be chosen first: done with it, or a list of names, or a file comes next. */
export type FirstChoice =
  { readonly next: 'done'; readonly with: ComparedWith } | { readonly next: 'branch' | 'tag' | 'common' | 'file' };

export interface ChoiceItem<T> {
  readonly label: string;
  readonly description: string;
  readonly choice: T;
}

/** Without a repository there are files only. */
export function firstChoices(names: RevisionNames | null, t: Translate): ChoiceItem<FirstChoice>[] {
  const revision = (name: string): FirstChoice => ({ next: 'done', with: { kind: 'revision', name } });
  const file: ChoiceItem<FirstChoice> = {
    label: t('A file …'),
    description: t('saved results, or another gloss'),
    choice: { next: 'file' },
  };
  if (names === null) return [file];
  const lists: ChoiceItem<FirstChoice>[] = [];
  if (names.branches.length > 0) {
    lists.push(
      { label: t('A branch …'), description: t('its last commit'), choice: { next: 'branch' } },
      { label: t('Where a branch parted …'), description: t('the last common commit'), choice: { next: 'common' } },
    );
  }
  if (names.tags.length > 0) {
    lists.push({ label: t('A tag …'), description: t('its commit'), choice: { next: 'tag' } });
  }
  return [
    { label: 'HEAD', description: t('the last commit here'), choice: revision('HEAD') },
    { label: t('Index'), description: t('what is staged for the next commit'), choice: revision('index') },
    ...lists,
    file,
  ];
}

/** The names of one list. */
export function nameChoices(
  of: 'branch' | 'tag' | 'common',
  names: RevisionNames,
): { readonly label: string; readonly choice: ComparedWith }[] {
  const listed = of === 'tag' ? names.tags : names.branches;
  return listed.map((name) => ({
    label: name,
    choice: { kind: 'revision', name: of === 'common' ? `${name}...` : name },
  }));
}
