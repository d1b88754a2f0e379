import assert from 'node:assert/strict';
import { Counters } from '../../server/src/base/counters';
import { KeptStatements } from '../../server/src/language/syntax/keptStatements';
import { parse } from '../../server/src/language/syntax/parse';
import { seeded } from '../support/random';
import { all, limestone } from './support/examples';

/** FUZZ=100 runs a hundred times as many cases. */
const rounds = 40 * Math.max(1, Number(process.env['FUZZ'] ?? 1));

/** Lines that change what the lines beside them mean: keywords that stand once, clauses without indent, broken heads. */
const hostile = [
  'run "other.csv"',
  'method "M"',
  'language 1',
  'mass 2 mg',
  '  mass 3 mg',
  'stp Mis 20..30 °C',
  'step First 200..300 °C',
  'override step First 210..310 °C\n  because "x"',
  'note "n"',
  '# only a comment',
  '',
  'smooth 3 K',
  'programme\n  heat to 500 °C at 10 K/min',
];

describe('Statements kept from one text to the next', () => {
  it('give the same tree as reading everything again, whatever was edited before', () => {
    const random = seeded(7);
    const below = (n: number): number => Math.floor(random.uniform() * n);
    const kept = new KeptStatements();
    for (const text of all) {
      let lines = text.split('\n');
      for (let round = 0; round < rounds; round++) {
        const at = below(lines.length + 1);
        const edit = below(5);
        if (edit === 0) lines.splice(at, 0, hostile[below(hostile.length)]);
        else if (edit === 1) lines.splice(at, 1);
        else if (edit === 2) lines.splice(at, 0, ...lines.slice(at, at + 3));
        else if (edit === 3) lines = lines.map((l, k) => (k === at ? l.slice(0, below(l.length + 1)) : l));
        else lines = text.split('\n');
        const edited = lines.join(below(8) === 0 ? '\r\n' : '\n');
        assert.deepEqual(parse(edited, null, kept), parse(edited));
      }
    }
  });

  it('are not read again: an edited line costs its own statement', () => {
    const kept = new KeptStatements();
    parse(limestone, null, kept);
    const counters = new Counters();
    parse(`# a line above\n${limestone}`, counters, kept);
    assert.equal(counters.of('statements'), 0);
    const edited = limestone.replace('in 60..65 %', 'in 60..66 %');
    assert.notEqual(edited, limestone);
    parse(edited, counters, kept);
    assert.equal(counters.of('statements'), 1);
  });
});
