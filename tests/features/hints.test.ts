import assert from 'node:assert/strict';
import type { InlayHint } from 'vscode-languageserver-types';
import { fullClient, plainClient } from '../../server/src/features/abilities';
import { fit, mostCharacters } from '../../server/src/features/hints/fit';
import { inlayHints, resolveHint } from '../../server/src/features/hints/hints';
import { defaultSettings, type Settings } from '../../server/src/features/settings';
import { oneGlossText } from '../../server/src/presentation/oneGloss';
import { bench, type Bench } from './support/fixture';
import { exampleBench, examples, prefixes, still } from './support/examples';
import { inventedFiles, inventedHead } from './support/invented';

async function hintsOf(b: Bench): Promise<InlayHint[]> {
  const document = await b.document();
  return inlayHints(b.workspace, document, document.positions.all());
}

async function settled(source: string, settings: Partial<Settings['inline']> = {}): Promise<Bench> {
  const b = bench(source, inventedFiles);
  b.workspace.setSettings(b.uri, { ...defaultSettings, inline: { ...defaultSettings.inline, ...settings } });
  await b.settled();
  return b;
}

const labels = (hints: readonly InlayHint[]): string[] => hints.map((h) => text(h));
const text = ({ label }: InlayHint): string =>
  typeof label === 'string' ? label : label.map((part) => part.value).join('');

const source = `${inventedHead}method "m.gloss"
residue Rest at 600 °C  # a comment behind
glass Tg 60..140 °C
override step Late around 515 °C
  because "another batch"
let twice = 2 * Early.loss
require twice in 39..41 % as Twice
require Early.loss <= 10 %
`;

describe('inlay hints', () => {
  it('show results, verdicts and the windows that were found, at the ends of what they are about', async () => {
    const b = await settled(source);
    const hints = await hintsOf(b);
    const shown = labels(hints);
    assert.equal(shown.length, 7, shown.join('; '));
    assert.match(shown[0]!, /^remaining 7[45]\.\d+ ± 0\.\d+ % \(initial\)$/);
    assert.match(shown[1]!, /^midpoint (?:99|100)\.\d+ ± \d\.\d+ °C indicated$/);
    assert.match(shown[2]!, /^4\d\d(?:\.\d)?\.\.5\d\d(?:\.\d)? °C$/);
    assert.match(shown[3]!, /^(?:loss )?(?:4\.9|5\.0)\d* ± 0\.\d+ %$/);
    assert.match(shown[4]!, /^(?:39\.9|40\.0)\d* ± 0\.\d+ % \(initial\)$/);
    assert.match(shown[5]!, /^met: (?:39\.9|40\.0)\d* ± 0\.\d+ %$/);
    assert.match(shown[6]!, /^not met: (?:19\.9|20\.0)\d* ± 0\.\d+ %$/);
    // Before the comment, behind the statement.
    const { positions } = await b.document();
    assert.equal(positions.offset(hints[0]!.position), source.indexOf('  # a comment'));
    assert.equal(positions.offset(hints[2]!.position), source.indexOf('515 °C') + '515 °C'.length);
  });

  it('say what the method has where a window of it is overridden by a written one', async () => {
    const b = await settled(`${inventedHead}method "m.gloss"\noverride step Early 210..420 °C\n  because "drier"\n`);
    assert.equal(labels(await hintsOf(b))[0], 'method 200..420 °C');
  });

  it('of each kind can be switched off alone', async () => {
    const kinds = ['results', 'verdicts', 'windows'] as const;
    const counts = { results: 4, verdicts: 2, windows: 1 };
    for (const kind of kinds) {
      const only = Object.fromEntries(kinds.map((k) => [k, k === kind])) as unknown as Settings['inline'];
      assert.equal((await hintsOf(await settled(source, only))).length, counts[kind], kind);
    }
  });

  it('keep to the lines asked for', async () => {
    const b = await settled(source);
    const document = await b.document();
    const line = source.slice(0, source.indexOf('glass')).split('\n').length - 1;
    const range = { start: { line, character: 0 }, end: { line, character: 19 } };
    const hints = inlayHints(b.workspace, document, range);
    assert.deepEqual(
      hints.map((h) => h.position.line),
      [line],
    );
  });

  it('stay after a change, on the lines as they are now, and say that they are stale', async () => {
    const b = await settled(`${inventedHead}step First 200..420 °C\nstep Second 440..600 °C\n`);
    const fresh = labels(await hintsOf(b));
    b.workspace.change(b.uri, 2, [{ text: `# one more line\n${b.marks.text}`.replace('200..420', '200..4') }]);
    const stale = await hintsOf(b);
    assert.equal(stale.length, 2);
    for (const hint of stale) assert.match(text(hint), / · stale$/);
    assert.deepEqual(
      stale.map((h) => h.position.line),
      [5, 6],
    );
    // The number stays the one of the last evaluation.
    const number = /± \d\.\d+/;
    assert.deepEqual(
      labels(stale).map((l) => number.exec(l)![0]),
      fresh.map((l) => number.exec(l)![0]),
    );
  });

  it('are none before anything is computed, in a method, and where nothing came out', async () => {
    const b = bench(source, inventedFiles);
    // What the method has is no number.
    assert.deepEqual(labels(await hintsOf(b)), ['method around 520 °C']);
    assert.deepEqual(await hintsOf(await settled('method "M"\nstep A 200..420 °C\n')), []);
    assert.deepEqual(labels(await hintsOf(await settled(`${inventedHead}step Far 700..800 °C\n`))), ['loss failed']);
  });

  it('have a tooltip when they are looked at, with the age of the numbers', async () => {
    const b = await settled(source);
    const hints = await hintsOf(b);
    assert.ok(hints.every((h) => h.tooltip === undefined));
    for (const hint of hints) {
      const { tooltip } = await resolveHint(b.workspace, hint, plainClient);
      assert.ok(typeof tooltip === 'object' && tooltip.kind === 'plaintext');
      assert.match(tooltip.value, /Current \(revision 1\)\.$/);
    }
    const unknown: InlayHint = {
      position: { line: 0, character: 0 },
      label: 'x',
      data: { uri: 'git:/a', of: 'result' },
    };
    assert.deepEqual(await resolveHint(b.workspace, unknown, fullClient), unknown);
  });
});

describe('the hints of one line', () => {
  it('are within 43 characters with the default settings, in every example, fresh and stale', async function () {
    this.timeout(120_000);
    const glosses = [
      ['limestone', 'vq217-1.gloss'],
      ['limestone', 'vq217-n2.gloss'],
      ['limestone', 'vq217-2.gloss'],
      ['limestone', 'vq217-3.gloss'],
      ['preform', 'pet-07.gloss'],
      ...examples()
        .filter((e) => e.text.includes('expects:'))
        .map((e) => ['faults', e.name]),
    ] as [string, string][];
    let counted = 0;
    for (const [folder, name] of glosses) {
      const b = exampleBench(folder, name);
      await b.settled();
      for (const version of [1, 2]) {
        if (version === 2) b.workspace.change(b.uri, 2, [{ text: `${b.marks.text}\n# later\n` }]);
        const lines = new Map<number, number>();
        for (const hint of await hintsOf(b)) {
          counted += 1;
          const { line } = hint.position;
          lines.set(line, (lines.get(line) ?? 0) + text(hint).length + (hint.paddingLeft === true ? 1 : 0));
        }
        for (const [line, length] of lines) assert.ok(length <= 43, `${name}:${line + 1} has ${length}`);
      }
    }
    assert.ok(counted > 30, `${counted}`);
  });

  it('are shortened the lightest first, and left out where nothing shorter is left', () => {
    const length = (n: number, cost: number) => ({ text: 'x'.repeat(n), cost });
    const lengths = (...hints: Parameters<typeof fit>[0]) => fit(hints).map((t) => t.length);
    assert.deepEqual(lengths([length(3, 0)]), [3]);
    assert.deepEqual(lengths([length(mostCharacters - 1, 0)]), [mostCharacters - 1]);
    assert.deepEqual(lengths([length(mostCharacters, 0)]), [0]);
    assert.deepEqual(lengths([length(10, 0), length(0, 3)], [length(40, 0), length(30, 1)]), [10, 30]);
    assert.deepEqual(lengths([length(10, 0), length(0, 3)], [length(40, 0), length(30, 4)]), [0, 40]);
    assert.deepEqual(lengths([length(20, 0), length(0, 3)], [length(40, 0), length(30, 1)]), [0, 30]);
  });
});

describe('a number in a hint', () => {
  it('is the one the command line prints', async function () {
    this.timeout(60_000);
    for (const [folder, name] of [
      ['preform', 'pet-07.gloss'],
      ['limestone', 'vq217-1.gloss'],
    ] as const) {
      const b = exampleBench(folder, name);
      await b.settled();
      const { snapshot } = b.workspace.results(b.uri)!;
      const printed = oneGlossText(snapshot, { all: false }).replace(/[ \t]+/g, ' ');
      const numbers = labels(await hintsOf(b)).flatMap((l) => /-?\d\S* ± \S+ \S+/.exec(l)?.[0] ?? []);
      assert.ok(numbers.length > 1, `${numbers.length}`);
      for (const number of numbers) assert.ok(printed.includes(number), number);
    }
  });
});

describe('hints anywhere', () => {
  it('survive every prefix of the examples, with results of the whole', async function () {
    this.timeout(120_000);
    const b = exampleBench('preform', 'pet-07.gloss');
    await b.settled();
    let version = 1;
    for (const prefix of prefixes(b.marks.text)) {
      version += 1;
      b.workspace.change(b.uri, version, [{ text: prefix.slice(0, -1) }]);
      for (const hint of await hintsOf(b)) assert.match(text(hint), /stale$/);
    }
    for (const { text: gloss } of examples()) {
      for (const prefix of prefixes(gloss)) {
        const { workspace, document } = await still(prefix);
        inlayHints(workspace, document, document.positions.all());
      }
    }
  });
});
