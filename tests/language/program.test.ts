import assert from 'node:assert/strict';
import type { EvaluationStatement } from '../../server/src/language/model';
import { inferType } from '../../server/src/language/meaning/inferType';
import { parse } from '../../server/src/language/syntax/parse';
import { check, expectFindings, expectSilent } from './support/check';
import { limestone, limestoneMethod, unseparated } from './support/examples';

const run = 'run "a.csv"\nmethod "m.gloss"\n';

function overridden(method: string, override: string): EvaluationStatement {
  const { program } = expectSilent(`${run}${override}\n  because "x"\n`, `method "M"\n${method}\n`);
  const { statement, overridden: reason, file } = program.order.at(-1)!;
  assert.deepEqual([reason, file], ['x', 'gloss']);
  assert.notEqual(statement.kind, 'let');
  return statement as EvaluationStatement;
}

describe('an override', () => {
  it('replaces the place, as a whole, and keeps the rest', () => {
    const step = overridden(
      'step First 640..800 °C in heating 2\n  by tangents\n  span 12 K',
      'override step First 655..805 °C',
    );
    assert.ok(step.kind === 'step' && step.place.window?.rule === 'range');
    assert.deepEqual(
      [step.place.window.range.from.value, step.place.segment, step.by, step.span!.value],
      [655, null, 'tangents', 12],
    );
  });

  it('replaces a clause and keeps the place', () => {
    const peak = overridden(
      'peak Heat 640..800 °C in heating 1\n  baseline linear\n  expect endothermic',
      'override peak Heat\n  baseline sigmoidal',
    );
    assert.ok(peak.kind === 'peak' && peak.place.window?.rule === 'range');
    assert.deepEqual([peak.place.segment!.index, peak.baseline, peak.expect], [1, 'sigmoidal', 'endothermic']);
  });

  it('replaces level, reading point and choices of the other kinds', () => {
    const crossing = overridden(
      'crossing Tx mass = 95 % in heating 1\n  rising\n  last',
      'override crossing Tx mass = 90 %\n  either',
    );
    assert.ok(crossing.kind === 'crossing' && 'amount' in crossing.level);
    assert.deepEqual(
      [crossing.level.amount.value, crossing.way, crossing.which, crossing.place.segment!.index],
      [90, 'either', 'last', 1],
    );
    const residue = overridden('residue Ash at end of hold 1\n  per mass at start', 'override residue Ash at 850 °C');
    assert.ok(residue.kind === 'residue' && 'amount' in residue.at && residue.per!.of === 'mass at start');
    const glass = overridden('glass Tg 60..95 °C\n  by inflection', 'override glass Tg in heating 2');
    assert.ok(glass.kind === 'glass' && glass.place.window === null && glass.by === 'inflection');
    const onset = overridden('onset On 60..95 °C\n  of mass', 'override onset On 65..95 °C');
    assert.ok(onset.kind === 'onset' && onset.of === 'mass');
  });

  it('replaces the parts of a sum or its place', () => {
    const method = 'step A1 1..5 °C\nstep B1 5..9 °C\nstep C1 9..12 °C\nstep S1 = A1 + B1';
    const parts = overridden(method, 'override step S1 = A1 + B1 + C1');
    assert.ok(parts.kind === 'step' && parts.place.window === null);
    assert.deepEqual(parts.sumOf, ['A1', 'B1', 'C1']);
    const place = overridden(method, 'override step S1 2..8 °C');
    assert.ok(place.kind === 'step' && place.place.window !== null);
    assert.deepEqual(place.sumOf, ['A1', 'B1']);
  });

  it('replaces the expression of a `let` and keeps what it is shown in', () => {
    const { program } = expectSilent(
      `${run}override let x1 = 2 mg\n  because "x"`,
      'method "M"\nlet x1 = 1 mg\n  show µg',
    );
    const [{ statement }] = program.order as [(typeof program.order)[number]];
    assert.ok(statement.kind === 'let' && statement.show!.text === 'µg' && statement.expression.node === 'amount');
    assert.equal(statement.expression.amount.value, 2);
  });

  it('has the content of what is in effect, wherever that was written', () => {
    const effective = check(
      `${run}override step First 655..805 °C\n  because "x"`,
      'method "M"\nstep First 640..800 °C\n  by tangents',
    ).program.order[0]!;
    const plain = check('run "a.csv"\nstep First 655..805 °C\n  by tangents').program.order[0]!;
    assert.equal(effective.canonical, plain.canonical);
    assert.equal(effective.id, 'override step First');
  });

  it('that is broken fails the statement instead of leaving it to the method', () => {
    const { program } = expectFindings(
      `${run}override step First «655-805 °C»\n  because "x"\nlet x1 = First.loss`,
      ['range-with-hyphen'],
      'method "M"\nstep First 640..800 °C',
    );
    assert.deepEqual(
      program.order.map(({ id, failed }) => [id, failed]),
      [['let x1', 'dependency']],
    );
  });

  it('checks units of what is merged', () => {
    expectFindings(
      `${run}override step First 2..30 min in hold 1\n  because "x"`,
      ['wrong-dimension'],
      'method "M"\nstep First 640..800 °C\n  span «12 K»',
    );
  });
});

describe('a sum', () => {
  it('reads its parts, which stay statements of their own', () => {
    const { program } = expectSilent(unseparated);
    const both = program.order.find(({ id }) => id === 'step Both')!;
    assert.deepEqual(both.needs, ['First', 'Second']);
    assert.equal(program.order.length, 4);
  });

  it('defines parts that are named only in it', () => {
    const { program } = expectSilent(
      'run "a.csv"\nstep Both = One + Two 640..860 °C\nlet x = One.inflection - Two.inflection',
    );
    assert.deepEqual(
      program.order.map(({ id, needs, failed }) => [id, needs, failed]),
      [
        ['step Both', [], null],
        ['let x', ['Both'], null],
      ],
    );
  });
});

describe('the program', () => {
  it('is in an order in which each comes after what it reads, by name where that is free', () => {
    const { program } = expectSilent('run "a.csv"\nlet zz = aa\nlet bb = 1\nlet aa = cc + bb\nlet cc = 2');
    assert.deepEqual(
      program.order.map(({ statement }) => statement.name),
      ['bb', 'cc', 'aa', 'zz'],
    );
  });

  it('keeps what belongs to run and data, and takes rules and programme of the run before those of the method', () => {
    const { program } = expectSilent(
      `${run}join "b.csv"\nreading\n  decimal ","\nblank "z.csv"\nprogramme\n  hold 5 min\nmask 1..2 °C because "x"\nrule join-mismatch 3 K because "x"\nrequire 5 % <= 6 %`,
      'method "M"\nprogramme\n  hold 6 min\nrule join-mismatch 4 K because "y"\nrule blank-mismatch 5 % because "z"\nrequire 5 % <= 7 %\nallow window-overlap because "q"',
    );
    assert.deepEqual(
      [program.joins.length, program.readings.length, program.blanks.length, program.masks.length],
      [1, 1, 1, 1],
    );
    assert.equal(program.programme!.file, 'gloss');
    assert.deepEqual(program.rules.map(({ statement, file }) => [statement.code, file]).sort(), [
      ['blank-mismatch', 'method'],
      ['join-mismatch', 'gloss'],
    ]);
    assert.deepEqual(
      program.requires.map(({ id }) => id),
      ['method/require', 'require'],
    );
    assert.equal(program.allows.length, 1);
  });

  it('of a method alone has no run', () => {
    const { program } = expectSilent(limestoneMethod);
    assert.equal(program.run, null);
    assert.equal(program.order.length, 5);
  });

  it('takes the method of the example', () => {
    const { program } = expectSilent(limestone, limestoneMethod);
    assert.deepEqual(
      program.order.map(({ failed }) => failed),
      Array.from({ length: 7 }, () => null),
    );
    assert.deepEqual(program.order[0]!.overridden, 'coarse fraction: the first loss starts 15 K later');
  });
});

describe('a line that cannot be read', () => {
  const rests = `step First 640..800 °C\nonset On 1..9 °C\n  of mass\nlet x1 = First.loss\nlet y1 = 5 %\n`;
  const failing = (text: string) =>
    Object.fromEntries(check(text).program.order.map(({ statement, failed }) => [statement.name, failed]));

  it('costs every value where it is about the data', () => {
    for (const line of [
      'blank z.csv',
      'join "b.csv"\n  offset 3',
      'columns\n  mass third',
      'reading\n  skip x',
      'mask 1-2 °C because "x"',
      'blank "z.csv"\n  subtract all',
    ]) {
      assert.deepEqual(
        failing(`run "a.csv"\n${line}\n${rests}`),
        { First: 'dependency', On: 'dependency', x1: 'dependency', y1: null },
        line,
      );
    }
  });

  it('costs what is taken over the mass where that is not read', () => {
    for (const mass of ['mass 20,052 mg', 'mass 20.052', 'mass 20 K']) {
      assert.deepEqual(
        failing(`run "a.csv"\n  ${mass}\n${rests}`),
        { First: 'dependency', On: null, x1: 'dependency', y1: null },
        mass,
      );
    }
  });

  it('costs nothing where it only describes', () => {
    for (const line of [
      '  operator M. A.',
      '  atmosphere nitrogen 50',
      '  crucible 85 µL',
      'blank "z.csv"\n  atmosphere nitrogen 50',
      'note x',
      'rule nothing 5 because "x"',
    ]) {
      assert.deepEqual(failing(`run "a.csv"\n${line}\n${rests}`), { First: null, On: null, x1: null, y1: null }, line);
    }
  });

  it('costs its own statement where a decision of it is lost', () => {
    const { program } = check('run "a.csv"\nstep First 640..800 °C\n  span 0,5 K\nlet x1 = First.loss');
    assert.deepEqual(
      program.order.map(({ failed }) => failed),
      ['decimal-comma', 'dependency'],
    );
  });
});

describe('the type of an expression', () => {
  const typed = (text: string): string => {
    const tree = parse(`run "a.csv"\nlet x = ${text}`);
    const { statement } = tree.statements[1]!;
    assert.ok(statement?.kind === 'let');
    const scope = {
      names: () => ['First', 'Heat'],
      lookup: (name: string) =>
        name === 'First' || name === 'Heat'
          ? ({
              means: 'evaluation',
              kind: name === 'First' ? 'step' : 'peak',
              inHold: false,
              signal: null,
              basis: 'initial mass',
              failed: false,
            } as const)
          : null,
    };
    const { type, problems } = inferType(statement.expression, scope);
    assert.deepEqual(problems, []);
    return `${type!.kind} ${type!.dimension.join(' ')}${type!.basis === null ? '' : ` ${type!.basis}`}`;
  };

  it('follows the rules of kinds', () => {
    assert.equal(typed('5'), 'number 0 0 0 0 0 0');
    assert.equal(typed('5 %'), 'fraction 0 0 0 0 0 0 any');
    assert.equal(typed('5 °C'), 'temperature 0 0 0 1 0 0');
    assert.equal(typed('First.end - First.start'), 'quantity 0 0 0 1 0 0');
    assert.equal(typed('First.end - 5 K'), 'temperature 0 0 0 1 0 0');
    assert.equal(typed('absolute(First.end)'), 'quantity 0 0 0 1 0 0');
    assert.equal(typed('100 % - First.loss'), 'fraction 0 0 0 0 0 0 initial mass');
    assert.equal(typed('First.loss * M(CaCO3) / M(CO2)'), 'fraction 0 0 0 0 0 0 initial mass');
    assert.equal(typed('First.loss / First.remaining'), 'number 0 0 0 0 0 0');
    assert.equal(typed('Heat.enthalpy / 140 J/g'), 'fraction 0 0 0 0 0 0 initial mass');
    assert.equal(typed('First.rate * First.midpoint_time'), 'fraction 0 0 0 0 0 0 initial mass');
    assert.equal(typed('First.amount / First.mass_start'), 'number 0 0 0 0 0 0');
    assert.equal(typed('M(CO2)'), 'quantity 0 1 0 0 0 -1');
    assert.equal(typed('Heat.enthalpy'), 'quantity 2 0 -2 0 0 0 initial mass');
    assert.equal(typed('rsd(First.loss, First.gain)'), 'fraction 0 0 0 0 0 0 any');
    assert.equal(typed('sd(First.start, First.end)'), 'quantity 0 0 0 1 0 0');
  });
});
