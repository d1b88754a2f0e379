import assert from 'node:assert/strict';
import { reportName } from '../../client/src/commands/reportName';
import { firstChoices, nameChoices } from '../../client/src/compare/choices';
import { changeNodes, headWords, type ChangeNode } from '../../client/src/compare/nodes';
import { oldParams, oldQuery } from '../../client/src/compare/oldAddress';
import type { Translate } from '../../client/src/text/translate';
import type { ComparedGlossRows, ComparedRow, Comparison } from '../../server/src/protocol/compare';
import { desk, turn } from './support/sessionWorld';

const english: Translate = (message, ...args) =>
  message.replace(/\{(\d)\}/g, (_, n: string) => String(args[Number(n)]));
/** Marks all that went through the translator. */
const pseudo: Translate = (message, ...args) => `⟦${english(message, ...args)}⟧`;

const row = (changed: Partial<ComparedRow>): ComparedRow => ({
  id: 'First.loss',
  result: 'First.loss',
  old: '20.02 ± 0.03 %',
  new: '20.14 ± 0.03 %',
  difference: '+0.12 %',
  relative: '+0.6 %',
  status: 'changed',
  cause: 'data changed: a.csv replaced',
  place: null,
  ...changed,
});

const gloss = (changed: Partial<ComparedGlossRows> = {}): ComparedGlossRows => ({
  title: 'a.gloss',
  uri: 'file:///lab/a.gloss',
  status: 'both',
  remarks: [],
  rows: [row({})],
  further: [],
  verdicts: [],
  quiet: 0,
  over: null,
  ...changed,
});

const comparison = (...glosses: ComparedGlossRows[]): Comparison => ({
  from: 'HEAD',
  to: 'working copy',
  commit: '3f2a91c',
  summary: '1 result moved beyond tolerance.',
  glosses,
});

const full = comparison(
  gloss({
    remarks: ['it was b.gloss'],
    rows: [
      row({}),
      row({ id: 'X.loss', result: 'X.loss', status: 'added', old: '', difference: '', relative: '', cause: '' }),
      row({ id: 'Y.loss', result: 'Y.loss', status: 'removed', new: '', difference: '', relative: '', cause: '' }),
      row({ id: 'Z.loss', result: 'Z.loss', status: 'failed', new: '', difference: '', relative: '' }),
    ],
    further: [row({ id: 'First.area' }), row({ id: 'First.start' })],
    verdicts: [{ label: 'Loss', old: 'met', new: 'not met', cause: '' }],
    quiet: 7,
    over: { kind: 'against', name: 'HEAD' },
  }),
  gloss({ title: 'c.gloss', rows: [], quiet: 1 }),
);

describe('the tree of a comparison', () => {
  it('shows of one gloss a line a result: from, to, difference and cause', () => {
    const [node, ...more] = changeNodes(comparison(gloss()), english);
    assert.deepEqual(more, []);
    assert.equal(node!.label, 'First.loss');
    assert.equal(node!.description, '20.02 ± 0.03 % → 20.14 ± 0.03 % · +0.12 % · data changed: a.csv replaced');
    assert.deepEqual(node!.tooltip.split('\n'), [
      'First.loss: changed',
      'before: 20.02 ± 0.03 %',
      'now: 20.14 ± 0.03 %',
      'difference: +0.12 %, +0.6 %',
      'moved by: data changed: a.csv replaced',
    ]);
    assert.equal(
      headWords(comparison(gloss()), english),
      'From HEAD (3f2a91c) to working copy. 1 result moved beyond tolerance.',
    );
  });

  it('says in words what came, went or cannot be computed, and how many results are not shown', () => {
    const [first] = changeNodes(full, english);
    const said = first!.children.map((n) => `${n.label}: ${n.description}`);
    assert.ok(said.includes('X.loss: new · 20.14 ± 0.03 %'), said.join('\n'));
    assert.ok(said.includes('Y.loss: gone · 20.02 ± 0.03 %'));
    assert.ok(said.includes('Z.loss: cannot be computed · 20.02 ± 0.03 % · data changed: a.csv replaced'));
    assert.ok(said.includes('Loss: met → not met'));
    assert.ok(said.includes('7 results within tolerance are not shown: '));
    const further = first!.children.find((n) => n.kind === 'group')!;
    assert.equal(further.label, '2 further quantities moved too');
    assert.deepEqual(
      further.children.map((n) => n.row!.id),
      ['First.area', 'First.start'],
    );
  });

  it('has a node a gloss where there are several, closed where nothing moved', () => {
    const [first, second] = changeNodes(full, english);
    assert.deepEqual([first!.label, first!.description, first!.open], ['a.gloss', '5 moved', true]);
    assert.deepEqual([second!.label, second!.description, second!.open], ['c.gloss', 'nothing moved', false]);
    assert.deepEqual(
      second!.children.map((n) => n.label),
      ['1 result within tolerance is not shown'],
    );
  });

  it('offers the curves only where the other side has some', () => {
    const [first, second] = changeNodes(full, english);
    assert.ok(first!.children.some((n) => n.kind === 'curves'));
    assert.ok(!second!.children.some((n) => n.kind === 'curves'));
  });

  it('has ids of its own for every node', () => {
    const ids: string[] = [];
    const walk = (nodes: readonly ChangeNode[]): void =>
      nodes.forEach((n) => {
        ids.push(n.id);
        walk(n.children);
      });
    walk(changeNodes(full, english));
    assert.equal(new Set(ids).size, ids.length);
  });

  it('keeps ids apart where two requirements, remarks or results have the same words', () => {
    const twice = { label: 'First.loss', old: 'met', new: 'not met', cause: '' };
    const [first, second, third] = changeNodes(
      comparison(gloss({ rows: [], verdicts: [twice, { ...twice, new: 'open' }, twice] })),
      english,
    );
    assert.equal(new Set([first!.id, second!.id, third!.id]).size, 3);
    const again = changeNodes(comparison(gloss({ rows: [], verdicts: [twice, twice] })), english);
    assert.deepEqual([again[0]!.id, again[1]!.id], [first!.id, second!.id], 'the same in the next comparison');
    const sides = changeNodes(comparison(gloss(), gloss()), english);
    assert.notEqual(sides[0]!.id, sides[1]!.id);
    assert.notEqual(sides[0]!.children[0]!.id, sides[1]!.children[0]!.id);
  });

  it('leaves no word to a translator that is not the server’s own (pseudo-locale)', () => {
    const sent = new Set<string>();
    const gather = (value: unknown): void => {
      if (typeof value === 'string' && value !== '') sent.add(value);
      else if (typeof value === 'object' && value !== null) Object.values(value).forEach(gather);
    };
    gather(full);
    const bare = (text: string): string => {
      let rest = text;
      for (let before = ''; before !== rest;) {
        before = rest;
        rest = rest.replace(/⟦[^⟦⟧]*⟧/g, '');
      }
      for (const known of [...sent].sort((a, b) => b.length - a.length)) rest = rest.replaceAll(known, '');
      return rest.replace(/[\s·→:,().]/g, '');
    };
    let seen = 0;
    const walk = (nodes: readonly ChangeNode[]): void =>
      nodes.forEach((n) => {
        for (const text of [n.label, n.description, n.tooltip]) {
          seen += 1;
          assert.equal(bare(text), '', text);
        }
        walk(n.children);
      });
    walk(changeNodes(full, pseudo));
    assert.ok(seen > 30);
    assert.equal(bare(headWords(full, pseudo)), '');
    assert.notEqual(bare('nothing moved'), '', 'a bare word is found');
    for (const { label, description } of firstChoices({ branches: ['main'], tags: ['v1'] }, pseudo)) {
      if (label !== 'HEAD') assert.match(label, /^⟦.*⟧$/);
      assert.match(description, /^⟦.*⟧$/);
    }
  });
});

describe('what results may be compared with', () => {
  const nexts = (...of: Parameters<typeof firstChoices>): string[] =>
    firstChoices(...of).map(({ choice: c }) =>
      c.next === 'done' && c.with.kind === 'revision' ? c.with.name : c.next,
    );

  it('is HEAD, the index, a branch, where one parted, a tag or a file; lists that are empty are not offered', () => {
    assert.deepEqual(nexts({ branches: ['main'], tags: ['v1'] }, english), [
      'HEAD',
      'index',
      'branch',
      'common',
      'tag',
      'file',
    ]);
    assert.deepEqual(nexts({ branches: [], tags: [] }, english), ['HEAD', 'index', 'file']);
    assert.deepEqual(nexts(null, english), ['file']);
  });

  it('is asked for by the name of the branch or tag, with three dots for the last common commit', () => {
    const names = { branches: ['main', 'origin/main'], tags: ['v1'] };
    const asked = (of: 'branch' | 'tag' | 'common'): unknown[] => nameChoices(of, names).map((c) => c.choice);
    assert.deepEqual(asked('tag'), [{ kind: 'revision', name: 'v1' }]);
    assert.deepEqual(asked('common'), [
      { kind: 'revision', name: 'main...' },
      { kind: 'revision', name: 'origin/main...' },
    ]);
    assert.deepEqual(asked('branch')[0], { kind: 'revision', name: 'main' });
  });
});

describe('the address of an old text', () => {
  it('comes back as it was asked for, and differs between comparisons', () => {
    const params = { uri: 'file:///lab/ä b.gloss', with: { kind: 'revision', name: 'main...' } } as const;
    assert.deepEqual(oldParams(oldQuery(params, 1)), params);
    assert.notEqual(oldQuery(params, 1), oldQuery(params, 2));
    for (const wrong of ['', '{', 'null', '{"uri":1}', '{"uri":"file:///a"}'])
      assert.equal(oldParams(wrong), null, wrong);
  });
});

describe('curves of two revisions', () => {
  it('are chosen from outside: the page takes the choice over and the server is asked to draw with it', async () => {
    const made = desk();
    await made.session.take({ type: 'ready' });
    made.session.choose({ against: 'main...' });
    await turn();
    const kept = made.posted.filter((m) => m.type === 'kept').at(-1)!;
    assert.equal(kept.kept.choices.against, 'main...');
    const watch = made.told.filter((t) => t.name === 'thermogloss/watch').at(-1)!;
    assert.equal((watch.params['choices'] as { against: string }).against, 'main...');
  });

  it('are drawn with the choice also where the page is not up yet', async () => {
    const made = desk();
    made.session.choose({ against: 'HEAD' });
    assert.equal(made.told.length, 0);
    await made.session.take({ type: 'ready' });
    const watch = made.told.find((t) => t.name === 'thermogloss/watch')!;
    assert.equal((watch.params['choices'] as { against: string }).against, 'HEAD');
  });
});

describe('the name of a report', () => {
  it('is that of its gloss, so that it lies beside it', () => {
    assert.equal(reportName('/lab/vq217-1.gloss', 'html'), 'vq217-1.report.html');
    assert.equal(reportName('/lab/vq217-1.gloss', 'markdown'), 'vq217-1.report.md');
    assert.equal(reportName('Untitled-1', 'html'), 'Untitled-1.report.html');
  });
});
