import assert from 'node:assert/strict';
import fc from 'fast-check';
import { normalNumber } from '../../server/src/language/syntax/numbers';
import { editDistance, nearest } from '../../server/src/language/nearest';
import { cycles, inOrder } from '../../server/src/language/meaning/order';
import { wordsNeedNoQuotes } from '../../server/src/language/syntax/texts';
import { writeText } from '../../server/src/language/writing/writeText';

describe('the normal text of a number', () => {
  it('has no exponent and no zeros in front or behind', () => {
    for (const [written, normal] of [
      ['0', '0'],
      ['0.0', '0'],
      ['000', '0'],
      ['0e9', '0'],
      ['007.50', '7.5'],
      ['1e3', '1000'],
      ['1E+3', '1000'],
      ['12.5e-3', '0.0125'],
      ['1.20e1', '12'],
      ['100', '100'],
      ['0.1e1', '1'],
      ['123456789012345678901234567890', '123456789012345678901234567890'],
    ] as const) {
      assert.equal(normalNumber(written), normal, written);
    }
  });

  // The reading of decimal literals by the language the program is written in (ECMA-262, StringToNumber) is the judge.
  it('means the same number to the last digit, and is its own normal text', () => {
    const number = fc
      .tuple(
        fc.stringMatching(/^\d{1,20}$/),
        fc.option(fc.stringMatching(/^\d{1,20}$/)),
        fc.option(fc.integer({ min: -40, max: 40 })),
      )
      .map(
        ([whole, part, exponent]) =>
          whole + (part === null ? '' : `.${part}`) + (exponent === null ? '' : `e${exponent}`),
      );
    fc.assert(
      fc.property(number, (written) => {
        const normal = normalNumber(written);
        assert.equal(Number(normal), Number(written));
        assert.match(normal, /^(?:0|[1-9]\d*|(?:0|[1-9]\d*)\.\d*[1-9])$/);
        assert.equal(normalNumber(normal), normal);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe('the nearest words', () => {
  it('are those within a few letters, nearest first', () => {
    assert.equal(editDistance('baseline', 'basline'), 1);
    assert.equal(editDistance('Frist', 'First'), 1);
    assert.equal(editDistance('', 'abc'), 3);
    // A published pair of the plain distance: Wagner and Fischer's problem, "kitten" and "sitting" (from memory).
    assert.equal(editDistance('kitten', 'sitting'), 3);
    assert.deepEqual(nearest('stpe', ['peak', 'step', 'steps']), ['step']);
    assert.deepEqual(nearest('first', ['First', 'Fist'], 2), ['First', 'Fist']);
  });

  it('are none where nothing is near', () => {
    assert.deepEqual(nearest('xyz', ['peak', 'step']), []);
    assert.deepEqual(nearest('a', ['b']), []);
  });
});

describe('the order of names', () => {
  it('of any graph holds every name once, after what it reads where no cycle is', () => {
    const graph = fc
      .array(fc.array(fc.nat({ max: 11 }), { maxLength: 4 }), { minLength: 1, maxLength: 12 })
      .map((rows) => new Map(rows.map((row, i) => [`n${i}`, row.map((to) => `n${to}`)])));
    fc.assert(
      fc.property(graph, (needs) => {
        const cyclic = cycles(needs);
        const order = inOrder(needs, cyclic);
        assert.deepEqual([...order].sort(), [...needs.keys()].sort());
        for (const [name, to] of needs) {
          assert.equal(cyclic.has(name), reaches(needs, name), `${name} reads itself`);
          for (const other of to) {
            if (!needs.has(other) || (cyclic.has(name) && cyclic.has(other))) continue;
            assert.ok(order.indexOf(other) < order.indexOf(name), `${other} before ${name}`);
          }
        }
        assert.deepEqual(inOrder(new Map([...needs].reverse()), cycles(new Map([...needs].reverse()))), order);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});

/** Whether a name reads itself in the end, by plain search. */
function reaches(needs: ReadonlyMap<string, readonly string[]>, name: string): boolean {
  const seen = new Set<string>();
  const waiting = [...needs.get(name)!];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next === name) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    waiting.push(...(needs.get(next) ?? []));
  }
  return false;
}

describe('a written text', () => {
  it('has its quotation marks, backslashes, line ends and tabs escaped', () => {
    assert.equal(writeText('a "b" \\ c\r\nd\te'), '"a \\"b\\" \\\\ c\\nd\\te"');
  });

  it('needs no quotation marks where the words are names', () => {
    assert.ok(wordsNeedNoQuotes('carbon dioxide'));
    for (const words of ['', 'Pt-Rh', 'from', 'gas from', '85', 'a  b', ' a', 'high purity']) {
      assert.ok(!wordsNeedNoQuotes(words), words);
    }
  });
});
