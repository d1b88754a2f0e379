import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { say } from '../cli/fakeTerminal';
import { readableJson, sameAsGolden } from './support/golden';
import { changes, earlier, history, type HistoryTag } from './support/history';
import type { TemporaryRepository } from './support/repository';

interface Json {
  readonly moved: boolean;
  readonly glosses: readonly {
    readonly gloss: string;
    readonly was: string | null;
    readonly status: string;
    readonly changes: readonly { readonly key: string; readonly kind: string }[];
    readonly results: readonly {
      readonly id: string;
      readonly was: string | null;
      readonly status: string;
      readonly difference: number | null;
      readonly causes: readonly { readonly change: string; readonly effect: number | null }[];
      readonly together: number | null;
    }[];
    readonly requirements: readonly { readonly status: string; readonly limitChanged: boolean }[];
  }[];
}
type Row = Json['glosses'][number]['results'][number];

const validate = new Ajv().compile(
  JSON.parse(readFileSync('server/src/presentation/diff.schema.json', 'utf8')) as object,
);

describe('diff over a history with one commit for each kind of change', function () {
  let repository: TemporaryRepository;
  before(() => (repository = history()));
  after(() => repository.remove());

  const json = async (tag: HistoryTag): Promise<{ code: number; model: Json }> => {
    const said = await say(['diff', earlier(tag), tag, '--format', 'json'], { cwd: repository.path });
    const model = JSON.parse(said.out) as Json;
    assert.ok(validate(model), JSON.stringify(validate.errors));
    return { code: said.code, model };
  };
  /** Of the one gloss with results that moved. */
  const kinds = ({ glosses }: Json): string[] => glosses.flatMap((g) => g.changes.map((c) => c.kind));
  const moved = ({ glosses }: Json): Row[] =>
    glosses.flatMap((g) => g.results.filter((r) => !['equal', 'within tolerance'].includes(r.status)));

  it('a moved window is a decision that moves its own results alone', async () => {
    const { code, model } = await json('window');
    assert.equal(code, 1);
    assert.deepEqual(kinds(model), ['decision']);
    const names = new Set(moved(model).map((r) => r.id.split('.')[0]));
    assert.deepEqual([...names], ['Rest']);
    for (const r of moved(model)) assert.deepEqual(r.causes, [{ change: 'residue Rest', effect: r.difference }]);
  });

  for (const [tag, key] of [
    ['data', 'data'],
    ['blank', 'blank blank.gloss'],
  ] as const) {
    it(`a replaced ${tag} file is the only cause of what moves`, async () => {
      const { code, model } = await json(tag);
      assert.equal(code, 1);
      assert.deepEqual(kinds(model), [tag]);
      const rows = moved(model);
      assert.ok(rows.length > 5);
      for (const r of rows) assert.deepEqual(r.causes, [{ change: key, effect: r.difference }], r.id);
    });
  }

  it('an edited method moves its results and what is reckoned from them, not the residue', async () => {
    const { code, model } = await json('method');
    assert.equal(code, 1);
    assert.deepEqual(kinds(model), ['method']);
    const names = new Set(moved(model).map((r) => r.id.split('.')[0]));
    assert.deepEqual([...names].sort(), ['First', 'ratio']);
    for (const r of moved(model))
      assert.deepEqual(
        r.causes.map((c) => c.change),
        ['method/step First'],
        r.id,
      );
  });

  it('a changed limit reads as a decision and moves no result', async () => {
    const { code, model } = await json('limit');
    assert.equal(code, 1);
    assert.deepEqual(moved(model), []);
    const { requirements } = model.glosses.find((g) => g.requirements.length > 0)!;
    assert.deepEqual(
      requirements.map((r) => ({ status: r.status, limitChanged: r.limitChanged })),
      [{ status: 'changed', limitChanged: true }],
    );
  });

  for (const tag of ['comment', 'spacing'] as const) {
    it(`a ${tag} changes nothing`, async () => {
      const { code, model } = await json(tag);
      assert.equal(code, 0);
      assert.equal(model.moved, false);
      assert.deepEqual(kinds(model), []);
      assert.deepEqual(moved(model), []);
    });
  }

  it('a renamed statement is known by its meaning', async () => {
    const { code, model } = await json('statement-renamed');
    assert.equal(code, 0);
    const rows = model.glosses.flatMap((g) => g.results.filter((r) => r.id.startsWith('Left.')));
    assert.ok(rows.length > 0);
    for (const r of rows) assert.deepEqual([r.status, r.was], ['equal', r.id.replace('Left', 'Rest')]);
  });

  it('with several changes each effect alone and what is left together make up the difference', async () => {
    const { code, model } = await json('together');
    assert.equal(code, 1);
    assert.deepEqual(kinds(model).sort(), ['blank', 'data', 'decision']);
    const row = moved(model).find((r) => r.id === 'Left.remaining')!;
    assert.deepEqual(row.causes.map((c) => c.change).sort(), ['blank blank.gloss', 'data', 'residue Left']);
    const sum = row.causes.reduce((s, c) => s + c.effect!, 0);
    assert.ok(Math.abs(sum + row.together! - row.difference!) < 1e-9);
    const first = moved(model).find((r) => r.id === 'First.loss')!;
    assert.deepEqual(first.causes.map((c) => c.change).sort(), ['blank blank.gloss', 'data'], 'not the residue');
  });

  it('a renamed gloss is compared with where it was', async () => {
    const { code, model } = await json('gloss-renamed');
    assert.equal(code, 0);
    assert.deepEqual(
      model.glosses.map((g) => [g.gloss, g.was, g.status]).filter(([gloss]) => gloss === 'b.gloss'),
      [['b.gloss', 'a.gloss', 'both']],
    );
  });

  it('a deleted gloss takes its results with it', async () => {
    const { code, model } = await json('gloss-deleted');
    assert.equal(code, 1);
    const gloss = model.glosses.find((g) => g.gloss === 'b.gloss')!;
    assert.equal(gloss.status, 'removed');
    assert.ok(gloss.results.length > 0 && gloss.results.every((r) => r.status === 'removed'));
  });

  for (const tag of changes) {
    for (const [format, extension] of [
      ['text', 'txt'],
      ['markdown', 'md.txt'],
      ['html', 'html.txt'],
      ['json', 'jsonl'],
    ]) {
      it(`${tag} as ${format} is what the golden file says`, async () => {
        const said = await say(['diff', earlier(tag), tag, '--format', format], { cwd: repository.path });
        assert.equal(said.error, '');
        sameAsGolden(`${tag}.${extension}`, format === 'json' ? readableJson(said.out) : said.out);
      });
    }
  }

  it('no change reads the same in text, Markdown and HTML, and is no move in JSON', async () => {
    for (const format of ['text', 'markdown', 'html']) {
      const said = await say(['diff', 'limit', 'comment', '--format', format], { cwd: repository.path });
      assert.equal(said.code, 0);
      assert.ok(said.out.includes('No result moved beyond tolerance.'), format);
    }
    assert.equal((await json('comment')).model.moved, false);
  });

  it('a revision or file that is not there ends with 2', async () => {
    for (const words of [['never-tagged'], ['start', 'window', '--', 'none.gloss'], ['--tolerance', 'loss=much']]) {
      assert.equal((await say(['diff', ...words], { cwd: repository.path })).code, 2, words.join(' '));
    }
  });
});
