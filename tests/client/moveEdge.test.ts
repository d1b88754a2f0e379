import assert from 'node:assert/strict';
import { moveEdge, type EdgeWorld } from '../../client/src/curves/moveEdge';
import type { EdgeEdit, EdgeRequest } from '../../server/src/protocol/view';

const uri = 'file:///b.gloss';
const range = { start: { line: 4, character: 14 }, end: { line: 4, character: 17 } };
const request: EdgeRequest = {
  generation: { uri, version: 3, revision: 9 },
  statement: 'step First',
  edge: 'from',
  time: 1200,
  perPixel: 0.4,
  typed: null,
  into: 'gloss',
};

function edit(version: number | null, more: Partial<Extract<EdgeEdit, { ok: true }>> = {}): EdgeEdit {
  const edits = [{ span: { start: 60, end: 63 }, range, text: '641' }];
  return { ok: true, uri, version, edits, label: 'Move First', touches: 0, caret: null, ...more };
}

interface Seen {
  asked: number;
  applied: number;
  confirmed: number[];
  carets: number;
}

function world(of: Partial<EdgeWorld> & { readonly answers?: readonly (EdgeEdit | null)[] }): [EdgeWorld, Seen] {
  const seen: Seen = { asked: 0, applied: 0, confirmed: [], carets: 0 };
  const answers = of.answers ?? [edit(3)];
  const made: EdgeWorld = {
    open: () => Promise.resolve({ version: 3, editable: true }),
    confirm: (touches) => {
      seen.confirmed.push(touches);
      return Promise.resolve(true);
    },
    apply: () => {
      seen.applied++;
      return Promise.resolve(true);
    },
    caret: () => {
      seen.carets++;
      return Promise.resolve();
    },
    ...of,
    ask: () => Promise.resolve(answers[Math.min(seen.asked++, answers.length - 1)]!),
  };
  return [made, seen];
}

async function moved(of: Parameters<typeof world>[0], what = request): Promise<[EdgeEdit, Seen]> {
  const [made, seen] = world(of);
  return [await moveEdge(what, made, (message) => message), seen];
}

function reason(answer: EdgeEdit): string {
  return answer.ok ? '' : answer.reason;
}

describe('a moved edge', () => {
  it('is written once where the text is the one it was moved in', async () => {
    const [answer, seen] = await moved({});
    assert.equal(answer.ok, true);
    assert.deepEqual(seen, { asked: 1, applied: 1, confirmed: [], carets: 0 });
  });

  it('is worked out again where the text changed in between', async () => {
    const [answer, seen] = await moved({ answers: [edit(2), edit(3)] });
    assert.equal(answer.ok, true);
    assert.deepEqual([seen.asked, seen.applied], [2, 1]);
  });

  it('is refused in words where the text goes on changing, and nothing is written', async () => {
    const [answer, seen] = await moved({ answers: [edit(1), edit(2)] });
    assert.match(reason(answer), /text changed/);
    assert.equal(seen.applied, 0);
  });

  it('is worked out again for a file that only now was opened', async () => {
    const [answer, seen] = await moved({ answers: [edit(null), edit(3)] });
    assert.equal(answer.ok, true);
    assert.equal(seen.applied, 1);
  });

  it('is refused with the reason of the server', async () => {
    const [answer, seen] = await moved({ answers: [{ ok: false, reason: 'the window has no number' }] });
    assert.equal(reason(answer), 'the window has no number');
    assert.equal(seen.applied, 0);
  });

  for (const [what, of, words] of [
    ['read-only', { open: () => Promise.resolve({ version: 3, editable: false }) }, /read-only/],
    ['gone', { open: () => Promise.resolve(null) }, /no longer there/],
    ['one the editor does not edit', { apply: () => Promise.resolve(false) }, /did not take/],
    ['without a server', { answers: [null] }, /no answer/],
  ] as const) {
    it(`is refused in words where the text is ${what}`, async () => {
      const [answer, seen] = await moved(of);
      assert.match(reason(answer), words);
      assert.equal(seen.applied, 0);
    });
  }

  it('puts the caret where a reason is wanted', async () => {
    const [, seen] = await moved({ answers: [edit(3, { caret: range })] });
    assert.equal(seen.carets, 1);
  });

  it('of a method is written after a person has seen how many glosses use it', async () => {
    const into = { ...request, into: 'method' as const };
    const [answer, seen] = await moved({ answers: [edit(3, { touches: 4 })] }, into);
    assert.equal(answer.ok, true);
    assert.deepEqual([seen.confirmed, seen.applied], [[4], 1]);
  });

  it('of a method is not written where the person leaves it', async () => {
    const into = { ...request, into: 'method' as const };
    const [answer, seen] = await moved({ confirm: () => Promise.resolve(false) }, into);
    assert.match(reason(answer), /left as it is/);
    assert.equal(seen.applied, 0);
  });

  it('of a method is worked out again after the question: the text may have changed under it', async () => {
    let version = 3;
    const [answer, seen] = await moved(
      {
        answers: [edit(3), edit(4)],
        open: () => Promise.resolve({ version, editable: true }),
        confirm: () => {
          version = 4;
          return Promise.resolve(true);
        },
      },
      { ...request, into: 'method' },
    );
    assert.equal(answer.ok && answer.version, 4);
    assert.deepEqual([seen.asked, seen.applied], [2, 1]);
  });
});
