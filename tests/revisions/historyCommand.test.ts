import assert from 'node:assert/strict';
import { say } from '../cli/fakeTerminal';
import { sameAsGolden } from './support/golden';
import { changes, history } from './support/history';
import { historyJson, historySaid } from './support/historySaid';
import type { TemporaryRepository } from './support/repository';

describe('thermogloss history over one commit for each kind of change', () => {
  let repository: TemporaryRepository;
  before(() => {
    repository = history();
    repository.git('checkout', '-q', 'gloss-renamed');
  });
  after(() => repository.remove());

  const commitOf = (tag: string): string => repository.git('rev-parse', tag);

  it('lists the revisions that git log lists for the files that take part, newest first, with author and date', async () => {
    const model = await historyJson(repository.path, 'Left.remaining', 'b.gloss');
    // What git itself says (`git log` with the paths named) is the reference.
    const listed = repository.git(
      'log',
      '--format=%H %an %aI',
      '--',
      ...['a.gloss', 'b.gloss', 'method.gloss', 'a.csv', 'blank.gloss', 'blank.csv'],
    );
    assert.deepEqual(
      model.rows.map(({ revision: r }) => `${r!.commit} ${r!.author} ${r!.date}`),
      listed.split('\n'),
    );
    assert.equal(model.end, 'begins');
  });

  it('gives at each revision the value that results gives with that revision checked out', async () => {
    const { rows } = await historyJson(repository.path, 'First.loss', 'b.gloss');
    try {
      for (const row of rows) {
        repository.git('checkout', '-q', row.revision!.commit);
        const said = await say(['results', row.gloss, '--all', '--format', 'json'], { cwd: repository.path });
        const { results } = JSON.parse(said.out) as {
          results: { id: string; value: number; uncertainty: number; unit: string }[];
        };
        const { value, uncertainty, unit } = results.find((r) => r.id === row.id)!;
        assert.deepEqual({ value, uncertainty, unit }, pick(row.result!), row.revision!.commit);
      }
    } finally {
      repository.git('checkout', '-q', 'gloss-renamed');
    }
  });

  it('says of each revision what diff says of it and the one before', async () => {
    const { rows } = await historyJson(repository.path, 'Left.remaining', 'b.gloss');
    assert.equal(rows.length, changes.length);
    for (const [k, tag] of [...changes.slice(0, -1)].reverse().entries()) {
      const row = rows[k];
      assert.equal(row.revision!.commit, commitOf(tag), tag);
      const said = await say(['diff', rows[k + 1].revision!.commit, tag, '--format', 'json'], {
        cwd: repository.path,
      });
      const { glosses } = JSON.parse(said.out) as {
        glosses: {
          gloss: string;
          results: { id: string; status: string; difference: number | null; causes: object[] }[];
        }[];
      };
      const same = glosses.find((g) => g.gloss === row.gloss)!.results.find((r) => r.id === row.id);
      // Where nothing that takes part changed, diff computes nothing.
      if (same === undefined) continue;
      assert.deepEqual(
        [row.status, row.difference, row.causes],
        [same.status, same.difference, same.causes],
        `${tag} ${row.id}`,
      );
    }
    assert.deepEqual(
      rows.filter((r) => r.moved).map((r) => r.revision!.commit),
      ['together', 'blank', 'data', 'window'].map(commitOf),
    );
  });

  it('follows a renamed gloss and a renamed statement', async () => {
    const { rows } = await historyJson(repository.path, 'Left.remaining');
    const of = (tag: string): (typeof rows)[number] => rows.find((r) => r.revision!.commit === commitOf(tag))!;
    assert.deepEqual([of('gloss-renamed').gloss, of('gloss-renamed').was], ['b.gloss', 'a.gloss']);
    assert.deepEqual([of('together').gloss, of('together').was], ['a.gloss', null]);
    assert.deepEqual([of('statement-renamed').id, of('statement-renamed').wasId], ['Left.remaining', 'Rest.remaining']);
    assert.equal(of('spacing').id, 'Rest.remaining');
    assert.equal(rows.at(-1)!.status, 'first');
  });

  it('asked for the old name of a renamed statement says what it is called now', async () => {
    const { rows } = await historyJson(repository.path, 'Rest.remaining', 'b.gloss');
    const row = rows.find((r) => r.revision!.commit === commitOf('statement-renamed'))!;
    assert.equal(row.result, null);
    assert.equal(row.reason, 'Rest.remaining is Left.remaining from here on');
  });

  it('shows a deleted gloss as gone, and what it had before', async () => {
    repository.git('checkout', '-q', 'gloss-deleted');
    const { rows } = await historyJson(repository.path, 'Left.remaining', 'b.gloss');
    repository.git('checkout', '-q', 'gloss-renamed');
    assert.deepEqual([rows[0].result, rows[0].reason], [null, 'the gloss is gone']);
    const said = await say(['diff', 'gloss-renamed', 'gloss-deleted', '--format', 'json'], { cwd: repository.path });
    const { glosses } = JSON.parse(said.out) as { glosses: { results: { id: string; status: string }[] }[] };
    const same = glosses.flatMap((g) => g.results).find((r) => r.id === 'Left.remaining')!;
    assert.deepEqual([rows[0].status, rows[0].moved], [same.status, true]);
    assert.equal(rows[0].status, 'removed');
    assert.equal(rows[1].revision!.commit, commitOf('gloss-renamed'));
    assert.ok(rows[1].result!.value! > 60);
  });

  it('leaves out what is older with --limit and --since, and still compares the oldest row with it', async () => {
    const all = await historyJson(repository.path, 'Left.remaining');
    const three = await historyJson(repository.path, 'Left.remaining', '--limit', '3');
    assert.equal(three.end, 'limit');
    assert.deepEqual(three.rows, all.rows.slice(0, 3));
    const since = await historyJson(repository.path, 'Left.remaining', '--since', 'data');
    assert.equal(since.end, 'since');
    assert.deepEqual(since.rows, all.rows.slice(0, -3));
    assert.deepEqual((await historyJson(repository.path, 'Left.remaining', '--since', 'HEAD')).rows, []);
    assert.deepEqual(await historyJson(repository.path, 'Left.remaining', '--limit', '99'), all);
  });

  for (const [format, extension] of [
    ['text', 'txt'],
    ['markdown', 'md.txt'],
    ['csv', 'csv.txt'],
    ['json', 'jsonl'],
  ]) {
    it(`as ${format} is what the golden file says`, async () => {
      const said = await historySaid(repository.path, 'Left.remaining', 'b.gloss', '--format', format);
      assert.equal(said.error, '');
      let text = said.out;
      // The ids hold the last digits of computed data, which differ between machines.
      for (const [k, tag] of ['start', ...changes].entries()) {
        text = text
          .replaceAll(commitOf(tag), `COMMIT-${tag}`)
          .replaceAll(commitOf(tag).slice(0, 7), `id-${String(k).padStart(4, '0')}`);
      }
      sameAsGolden(`history.${extension}`, rounded(text, format));
    });
  }

  it('colours the table alone, and writes nothing but JSON to standard output whatever is asked', async () => {
    const words = ['history', 'Left.remaining', '--limit', '2'];
    const around = { cwd: repository.path, environment: { FORCE_COLOR: '1' }, isTerminal: true };
    const plain = await say(words, { cwd: repository.path });
    const coloured = await say(words, around);
    // eslint-disable-next-line no-control-regex
    assert.equal(coloured.out.replace(/\u001b\[[\d;]*m/g, ''), plain.out);
    assert.notEqual(coloured.out, plain.out);
    const json = await say([...words, '--format', 'json'], around);
    assert.equal(json.out, (await say([...words, '--format', 'json'], { cwd: repository.path })).out);
  });

  for (const [what, words, message] of [
    ['no name', [], /needs the name of a result/],
    [
      'a misspelt quantity',
      ['First.los', 'b.gloss'],
      /no result First\.los in these revisions; did you mean First\.loss/,
    ],
    ['a misspelt statement', ['Fist.loss', 'b.gloss'], /did you mean First/],
    ['a statement for a result', ['First', 'b.gloss'], /it has First\.loss, /],
    ['a name that no gloss here has', ['Elsewhere.loss'], /no gloss here has a result Elsewhere\.loss/],
    [
      'a requirement, of a gloss that is named',
      ['Loss', 'b.gloss'],
      /no result Loss in these revisions; Loss is a requirement \(First\.loss in [\d.]+ %\), and what is followed is a result it asks of/,
    ],
    ['a requirement', ['Loss'], /no gloss here has a result Loss; Loss is a requirement/],
    ['a method', ['First.loss', 'method.gloss'], /method\.gloss has no result First\.loss/],
    [
      'a gloss that never was',
      ['First.loss', 'none.gloss'],
      /there is no gloss none\.gloss, and no revision here has one/,
    ],
    ['a file that is no gloss', ['First.loss', 'a.csv'], /a\.csv is no gloss/],
    ['a third word', ['First.loss', 'b.gloss', 'c.gloss'], /one word too many/],
    ['no whole number', ['First.loss', 'b.gloss', '--limit', '0'], /--limit 0: write a whole number of at least 1/],
    ['a revision that is none', ['First.loss', 'b.gloss', '--since', 'never'], /never names no revision/],
  ] as const) {
    it(`ends with 2 and says why: ${what}`, async () => {
      const said = await historySaid(repository.path, ...words);
      assert.equal(said.code, 2);
      assert.equal(said.out, '');
      assert.match(said.error, message);
    });
  }
});

function pick({
  value,
  uncertainty,
  unit,
}: {
  value: number | null;
  uncertainty: number | null;
  unit: string;
}): object {
  return { value, uncertainty, unit };
}

/** Numbers of the machine formats to five digits: their last bits differ between machines. */
function rounded(text: string, format: string): string {
  if (format !== 'json' && format !== 'csv') return text;
  const short = text.replace(/-?\d+\.\d{6,}(?:e[-+]?\d+)?/g, (n) => String(Number(Number(n).toPrecision(5))));
  const even = short.replace(/"program":"[^"]*"/, '"program":"VERSION"').replaceAll('\r\n', '\n');
  return format === 'json' ? even.replaceAll('{"revision"', '\n  {"revision"') : even;
}
