import assert from 'node:assert/strict';
import { format } from '../../server/src/language/format';
import { parse } from '../../server/src/language/syntax/parse';
import { writeStatement } from '../../server/src/language/writing/writeStatement';
import { all, limestone, limestoneMethod } from './support/examples';

describe('the format', () => {
  it('of the first two examples of the design page is their own', () => {
    assert.equal(format(limestone), limestone);
    assert.equal(format(limestoneMethod), limestoneMethod);
  });

  it('indents clauses by two blanks and aligns them within their statement', () => {
    assert.equal(
      format(
        'run   "a.csv"\n\tmass 20 mg # weighed\n      endothermic   down\n# between\n sample "a   b"\ncrossing T5 mass = 95 %\n rising\n',
      ),
      'run "a.csv"\n  mass        20 mg  # weighed\n  endothermic down\n# between\n  sample      "a   b"\ncrossing T5 mass = 95 %\n  rising\n',
    );
  });

  it('aligns evaluations and `let` that follow each other, up to an empty line', () => {
    assert.equal(
      format(
        'run "a.csv"\nstep First 1..2 °C\n  by tangents\npeak F2 1..2 °C\n\nstep F3 1..2 °C\nlet abc = 1\nlet d = 2\n',
      ),
      'run "a.csv"\nstep First 1..2 °C\n  by tangents\npeak F2    1..2 °C\n\nstep F3 1..2 °C\nlet abc = 1\nlet d   = 2\n',
    );
  });

  it('keeps at most one empty line, and none at the ends', () => {
    assert.equal(format('\n\nrun "a.csv"\n\n \n\nlet x = 1\n\n\n'), 'run "a.csv"\n\nlet x = 1\n');
    assert.equal(format(''), '');
    assert.equal(format('\n\nlanguage 1\nrun "a.csv"'), '\nlanguage 1\nrun "a.csv"\n');
    assert.equal(format('run "a.csv"'), 'run "a.csv"\n');
  });

  it('keeps BOM and line ends', () => {
    assert.equal(format('\ufeffrun  "a.csv"\r\n mass 1 mg\r\n'), '\ufeffrun "a.csv"\r\n  mass 1 mg\r\n');
    assert.equal(format('run  "a.csv"\r\nlet  x = 1\nlet y = 2'), 'run "a.csv"\r\nlet x = 1\nlet y = 2\r\n');
  });

  it('leaves lines with a finding, and what stands below a broken head, as they are', () => {
    const text =
      'run "a.csv"\n   mass   20,5   mg  \n    sample "x"\nstepp   First  1..2 °C\n      span    5 K\nlet  x  =\n   show  mg\n';
    assert.equal(format(text), text.replace('    sample', '  sample'));
  });

  it('keeps numbers, units and texts byte for byte', () => {
    const line = 'let x = 020.50e0 ug + 1.0 μg  -  "';
    assert.equal(
      format(`run "a.csv"\nlet  x =  020.50e0 ug +   1.0 μg\n`),
      'run "a.csv"\nlet x = 020.50e0 ug + 1.0 μg\n',
    );
    assert.equal(format(`run "a.csv"\n${line}\n`), `run "a.csv"\n${line}\n`);
  });
});

describe('a statement written from the model', () => {
  it('is read back as the same statement, with its digits', () => {
    for (const text of all) {
      const tree = parse(text);
      const written = tree.statements.map(({ statement }) => writeStatement(statement!)).join('\n');
      const again = parse(format(written));
      assert.deepEqual(again.findings, []);
      assert.deepEqual(
        again.statements.map(({ canonical }) => canonical),
        tree.statements.map(({ canonical }) => canonical),
      );
      for (const [number] of text.matchAll(/\d+(?:\.\d+)?/g)) assert.ok(written.includes(number), number);
    }
  });
});
