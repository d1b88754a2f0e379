import assert from 'node:assert/strict';
import { Counters } from '../../server/src/base/counters';
import type { Expression, Statement } from '../../server/src/language/model';
import { parse } from '../../server/src/language/syntax/parse';
import type { StatementNode, Tree } from '../../server/src/language/tree';
import { all, gasSwitch, heatCoolHeat, joined, limestone, limestoneMethod } from './support/examples';

function node(text: string, id: string): { readonly node: StatementNode; readonly tree: Tree } {
  const tree = parse(text);
  const found = tree.statements.find((statement) => statement.id === id);
  assert.ok(found, `${id} among ${tree.statements.map((statement) => statement.id).join(', ')}`);
  return { node: found, tree };
}

function tokens(text: string, id: string): Readonly<Record<string, string>> {
  const { node: of, tree } = node(text, id);
  return Object.fromEntries([...of.tokens].map(([token, span]) => [token, tree.text.slice(span.start, span.end)]));
}

function statement<K extends Statement['kind']>(text: string, kind: K): Extract<Statement, { kind: K }> {
  const found = parse(text).statements.find((candidate) => candidate.statement?.kind === kind);
  assert.ok(found, kind);
  return found.statement as Extract<Statement, { kind: K }>;
}

describe('ids of statements', () => {
  it('name the statement without any position, and count where two would be equal', () => {
    const text = `run "a.csv"\nblank "z.csv"\nmask 1..2 °C because "x"\nmask 3..4 °C because "y"\nstep First 1..9 °C\nlet x = 5\ncolumns\ncolumns of "b.csv"\nrule programme-mismatch 5 % because "x"\nallow window-overlap on First because "x"\nrequire x <= 5\nrequire x <= 6 as Limit\nnote "n"`;
    assert.deepEqual(
      parse(text).statements.map(({ id }) => id),
      [
        'run "a.csv"',
        'blank "z.csv"',
        'mask',
        'mask#2',
        'step First',
        'let x',
        'columns',
        'columns of "b.csv"',
        'rule programme-mismatch',
        'allow window-overlap on First',
        'require',
        'require Limit',
        'note',
      ],
    );
  });

  it('of a method and of the gloss beside it never meet', () => {
    const ids = [limestone, limestoneMethod].flatMap((text) => parse(text).statements.map(({ id }) => id));
    assert.equal(new Set(ids).size, ids.length);
    assert.ok(ids.includes('override step First') && ids.includes('method/step First'));
  });

  it('and names of broken lines stay as far as they were read', () => {
    const tree = parse('run "a.csv"\nstep First 640-800 °C\nlet x =\nstep\n');
    assert.deepEqual(
      tree.statements.slice(1).map(({ id, name, broken, statement: of }) => [id, name, broken, of]),
      [
        ['step First', 'First', true, null],
        ['let x', 'x', true, null],
        ['step', null, true, null],
      ],
    );
  });
});

describe('tokens of a statement', () => {
  it('are the parts of its head and its clauses, repeated ones counted', () => {
    assert.deepEqual(tokens(gasSwitch, 'run "hm5534-b.csv"'), {
      head: 'run "hm5534-b.csv"',
      keyword: 'run',
      file: '"hm5534-b.csv"',
      atmosphere: 'atmosphere nitrogen 50 mL/min',
      'atmosphere.value': 'nitrogen 50 mL/min',
      'atmosphere.flow': '50 mL/min',
      'atmosphere#2': 'atmosphere air 50 mL/min from hold 2',
      'atmosphere#2.value': 'air 50 mL/min from hold 2',
      'atmosphere#2.flow': '50 mL/min',
      'atmosphere#2.segment': 'hold 2',
    });
    assert.deepEqual(tokens(gasSwitch, 'step Black'), {
      head: 'step Black 430..700 °C in heating 2',
      keyword: 'step',
      name: 'Black',
      window: '430..700 °C',
      'window.from': '430',
      'window.to': '700 °C',
      segment: 'heating 2',
    });
    assert.deepEqual(tokens(joined, 'columns of "clay-heat.txt"')['heatflow.value'], 'column 3 in mW');
  });

  it('follow the tree of an expression', () => {
    assert.deepEqual(tokens('run "a.csv"\nlet x = (A.loss + 2 mg) * mean(b, M(H2O)) # c', 'let x'), {
      head: 'let x = (A.loss + 2 mg) * mean(b, M(H2O))',
      keyword: 'let',
      name: 'x',
      expression: '(A.loss + 2 mg) * mean(b, M(H2O))',
      'expression/0': '(A.loss + 2 mg)',
      'expression/0/0': 'A.loss',
      'expression/0/0.name': 'A',
      'expression/0/0.quantity': 'loss',
      'expression/0/1': '2 mg',
      'expression/1': 'mean(b, M(H2O))',
      'expression/1/0': 'b',
      'expression/1/0.name': 'b',
      'expression/1/1': 'M(H2O)',
      'expression/1/1.formula': 'H2O',
    });
    const require = tokens('run "a.csv"\nrequire x + 1 in 2..3 % as Limit', 'require Limit');
    assert.deepEqual([require['limit'], require['limit.from'], require['limit.to']], ['2..3 %', '2', '3 %']);
    assert.equal(tokens('run "a.csv"\nrequire x <= y + 1', 'require')['limit/1'], '1');
  });

  it('count UTF-16 units from behind a BOM, whatever the line ends', () => {
    const text = 'run "𝛼.csv"\r\n  mass 20 mg\r\nstep Ä 1..9 °C\r\n';
    for (const variant of [text, `\ufeff${text}`]) {
      const { node: step, tree } = node(variant, 'step Ä');
      assert.equal(tree.text, text);
      assert.deepEqual(step.span, { start: text.indexOf('step'), end: text.length - 2 });
      assert.deepEqual(node(variant, 'run "𝛼.csv"').node.tokens.get('mass'), { start: 16, end: 26 });
    }
  });

  it('lie within their statement', () => {
    for (const text of all) {
      for (const { span, tokens: of } of parse(text).statements) {
        for (const inner of of.values()) assert.ok(inner.start >= span.start && inner.end <= span.end);
      }
    }
  });
});

describe('the canonical text', () => {
  const canonical = (line: string): string => parse(`run "a.csv"\n${line}`).statements[1]!.canonical;

  it('has one blank, no comments, literals in one form, clauses sorted by word', () => {
    assert.equal(
      canonical('step   First\t640.0..0800 degC   # wide\n   span 1e1 K # s\n # c\n\n   by   tangents'),
      'step First 640..800 °C\nby tangents\nspan 10 K',
    );
    assert.equal(canonical('let x = 2*( (a+b) )/ 4.50 mg'), 'let x = 2 * (a + b) / 4.5 mg');
    assert.equal(canonical('let x = 20.0 +/- 0.10 ug'), 'let x = 20 ± 0.1 µg');
    assert.equal(canonical('require x≤5 J/(g*K) as  y'), 'require x <= 5 J/(g·K) as y');
    assert.equal(canonical('let x = −20 C - M( CaSO4 * 2H2O )'), 'let x = -20 °C - M(CaSO4·2H2O)');
  });

  it('keeps the order of repeated clauses and of a programme', () => {
    assert.equal(
      canonical('programme\n  hold 5 min\n  heat to 90 °C at 10 K/min\n  hold 2 min'),
      'programme\nhold 5 min\nheat to 90 °C at 10 K/min\nhold 2 min',
    );
    assert.equal(
      canonical('step First 1..2 °C\n  note "b"\n  by levels\n  note "a"'),
      'step First 1..2 °C\nby levels\nnote "b"\nnote "a"',
    );
  });

  it('is equal for equal statements only', () => {
    const same = [
      ['let x = 1 - (2 - 3)', 'let x = 1 - 2 - 3'],
      ['let x = 2 ^ (3 ^ 2)', 'let x = (2 ^ 3) ^ 2'],
      ['let x = -2 ^ 2', 'let x = (-2) ^ 2'],
      ['let x = 20 mg', 'let x = 20 g'],
      ['let x = 0.1', 'let x = 0.10000000000000001'],
      ['step First 1..2 °C', 'step First 1..2 °C in heating 1'],
      ['step First 1..2 °C', 'step First 1..2 °C\n  by levls'],
      ['note "a b"', 'note "a  b"'],
    ] as const;
    for (const [a, b] of same) assert.notEqual(canonical(a), canonical(b));
    assert.equal(canonical('let x = 2 ^ (3 ^ 2)'), canonical('let x = 2 ^ 3 ^ 2'));
    assert.equal(canonical('let x = -(2 ^ 2)'), canonical('let x = -2 ^ 2'));
  });
});

describe('names', () => {
  it('are compared in NFC, and the characters with two code points are one', () => {
    const tree = parse('run "a.csv"\nstep Ma\u0308rz 1..9 °C\nlet \u03bcx = M\u00e4rz.loss\nlet y1 = \u00b5x');
    assert.deepEqual(
      tree.statements.map(({ name }) => name),
      [null, 'M\u00e4rz', '\u00b5x', 'y1'],
    );
    assert.equal(statement('run "a.csv"\nlet x = 5 \u03bcg', 'let').expression.node, 'amount');
  });
});

describe('quantities', () => {
  const amount = (text: string) => {
    const { expression } = statement(`run "a.csv"\nlet x = ${text}`, 'let');
    assert.equal(expression.node, 'amount');
    return expression.node === 'amount' ? expression.amount : null!;
  };

  it('keep their digits, and the last unit serves both numbers', () => {
    const { value, u, unit, text } = amount('20.052 ± 0.010 mg');
    assert.deepEqual([value, u, unit!.text, text], [20.052, 0.01, 'mg', '20.052 ± 0.010 mg']);
    const own = amount('20 mg +/- 10 ug');
    assert.deepEqual([own.value, own.u, own.unit!.text, own.text], [20, 0.01, 'mg', '20 mg ± 10 µg']);
    assert.equal(amount('232 °C ± 0.5 K').u, 0.5);
  });

  it('of a window have one unit or two', () => {
    const { place } = statement('run "a.csv"\nstep First -50..1e2 °C', 'step');
    assert.ok(place.window?.rule === 'range');
    assert.deepEqual([place.window.range.from.value, place.window.range.to.value], [-50, 100]);
    assert.deepEqual([place.window.range.from.text, place.window.range.to.text], ['-50 °C', '1e2 °C']);
    const mixed = statement('run "a.csv"\nstep First 900 K..700 °C', 'step').place.window;
    assert.ok(mixed?.rule === 'range');
    assert.deepEqual([mixed.range.from.unit!.text, mixed.range.to.unit!.text], ['K', '°C']);
  });

  it('read units right behind a number only, by whole words', () => {
    const shape = (text: string): string => show(statement(`run "a.csv"\nlet x = ${text}`, 'let').expression);
    assert.equal(shape('12 mW/mg'), '[12 mW/mg]');
    assert.equal(shape('12 mW / mg'), '([12 mW] / mg)');
    assert.equal(shape('12 mg/n'), '([12 mg] / n)');
    assert.equal(shape('2 1/min'), '[2 1/min]');
    assert.equal(shape('10 K^2'), '[10 K²]');
    assert.equal(shape('(10 K)^2'), '([10 K] ^ [2])');
  });

  it('take a minus where they are temperatures; else it is a sign before a power', () => {
    const shape = (text: string): string => show(statement(`run "a.csv"\nlet x = ${text}`, 'let').expression);
    assert.equal(shape('-20 °C'), '[-20 °C]');
    assert.equal(shape('-2^2'), '-([2] ^ [2])');
    assert.equal(shape('-2 K'), '-[2 K]');
    assert.equal(shape('a - 20 °C'), '(a - [20 °C])');
    assert.equal(shape('a - -20 °C'), '(a - [-20 °C])');
    assert.equal(shape('2^3^2'), '([2] ^ ([3] ^ [2]))');
    assert.equal(shape('1 - 2 - 3 * 4 / 5'), '(([1] - [2]) - (([3] * [4]) / [5]))');
  });
});

describe('the statements of the design page', () => {
  it('hold what was written', () => {
    const run = statement(limestone, 'run');
    assert.deepEqual(run.crucible, { words: 'alumina', volume: run.crucible!.volume, further: ['no lid'] });
    assert.equal(run.crucible!.volume!.text, '85 µL');
    assert.deepEqual(run.contains, ['dolomite', 'calcite', 'quartz']);
    assert.deepEqual(run.atmospheres[0]!.gases, [{ words: 'carbon dioxide', percent: null }]);
    assert.deepEqual([run.endothermic, run.measured, run.sampleIsNone], ['down', '2026-10-02', false]);
    assert.deepEqual(statement(limestone, 'blank').subtract, ['mass', 'heatflow']);
    const second = parse(limestoneMethod).statements[3]!.statement;
    assert.ok(second?.kind === 'step' && second.place.window?.rule === 'around');
    assert.equal(second.place.window.at.value, 930);
    assert.deepEqual(statement(limestoneMethod, 'residue').at, { endOf: { direction: 'hold', index: 1 } });
    assert.deepEqual(statement(joined, 'peak').per, { of: 'mass lost' });
    assert.deepEqual(statement(heatCoolHeat, 'glass').place.segment, { direction: 'heating', index: 2 });
  });

  it('read mixtures, purities, calibrations and switches', () => {
    const { atmospheres, calibrated } = statement(
      'run "a.csv"\n  atmosphere nitrogen 80 % + oxygen 20 % 50 mL/min purity 99.99 % from 20 min\n  atmosphere "synthetic air" from hold 1\n  calibrated heatflow 150..660 °C u 2 %',
      'run',
    );
    assert.deepEqual(atmospheres[0]!.gases, [
      { words: 'nitrogen', percent: 80 },
      { words: 'oxygen', percent: 20 },
    ]);
    assert.deepEqual([atmospheres[0]!.flow!.text, atmospheres[0]!.purity!.text], ['50 mL/min', '99.99 %']);
    assert.deepEqual(atmospheres[1], {
      gases: [{ words: 'synthetic air', percent: null }],
      flow: null,
      purity: null,
      from: { segment: { direction: 'hold', index: 1 } },
    });
    assert.deepEqual([calibrated[0]!.signal, calibrated[0]!.u!.text], ['heatflow', '2 %']);
    assert.ok(statement('run "a.csv"\n  sample none', 'run').sampleIsNone);
  });

  it('read a level as a quantity or as a share', () => {
    const level = (text: string) => statement(`run "a.csv"\ncrossing Tx ${text}`, 'crossing');
    assert.deepEqual(level('rate = 10.0 % of maximum in heating 1').level, { percent: 10, of: 'maximum' });
    const { level: own, place } = level('mass = 95 % 100..200 °C');
    assert.ok('amount' in own && own.amount.value === 95 && place.window?.rule === 'range');
    assert.equal(
      parse('run "a.csv"\ncrossing Tx rate = 010.0 % of minimum').statements[1]!.canonical,
      'crossing Tx rate = 10 % of minimum',
    );
  });

  it('keep the escapes of texts', () => {
    assert.equal(
      statement('run "a.csv"\nnote "a \\"b\\" \\\\ \\n\\t # no comment"', 'note').text,
      'a "b" \\ \n\t # no comment',
    );
  });
});

describe('the work of the parser', () => {
  it('grows with the length of the text and not faster', () => {
    const body = (n: number): string =>
      `run "a.csv"\n${Array.from({ length: n }, (_, i) => `step S${i} ${i}..${i + 1} °C in heating 1 # c\n  span 10 K\nlet x${i} = S${i}.loss + 1 %`).join('\n')}`;
    const count = (n: number): readonly [lines: number, tokens: number] => {
      const counters = new Counters();
      assert.equal(parse(body(n), counters).findings.length, 0);
      return [counters.of('lines'), counters.of('tokens')];
    };
    const [[, small], [lines, large]] = [count(70), count(700)];
    assert.equal(lines, 2101);
    // Two tokens of the first line do not grow with the rest.
    assert.equal(large - 2, 10 * (small - 2));
  });

  it('has an end for any nesting', () => {
    for (const deep of [
      '('.repeat(5000),
      '-'.repeat(5000),
      '2^'.repeat(5000),
      '1+'.repeat(5000),
      'abs('.repeat(5000),
    ]) {
      const { findings } = parse(`run "a.csv"\nlet x = ${deep}1`);
      assert.equal(findings[0]!.code, 'unexpected-text');
      assert.match(findings[0]!.message, /200 parts/);
    }
  });
});

function show(expression: Expression): string {
  switch (expression.node) {
    case 'amount':
      return `[${expression.amount.text}]`;
    case 'binary':
      return `(${show(expression.left)} ${expression.op} ${show(expression.right)})`;
    case 'negate':
      return `-${show(expression.of)}`;
    case 'name':
      return expression.name;
    default:
      return expression.node;
  }
}
