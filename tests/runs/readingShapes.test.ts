import { strict as assert } from 'node:assert';
import { detectAll } from '../../server/src/runs/reading/choices';
import { readText, refusedText, signals, values } from '../support/readText';
import { writtenChoices } from '../support/writtenChoices';

const header = 'Time/s,T/°C,Mass/mg\n';
const rows = '0,25,10\n1,25.5,9.9\n2,26,9.8\n';

describe('reading a run file: separators and signs', () => {
  for (const [name, separator] of [
    ['a comma', ','],
    ['a semicolon', ';'],
    ['a tab', '\t'],
    ['a stroke', '|'],
  ]) {
    it(`finds ${name}`, async () => {
      const run = await readText((header + rows).replaceAll(',', separator));
      assert.equal(run.interpretation.delimiter, separator);
      assert.deepEqual(values(run, 'temperature'), [25, 25.5, 26]);
      assert.deepEqual(values(run, 'mass'), [10, 9.9, 9.8]);
    });
  }

  it('finds runs of blanks, with blanks inside the names of the header', async () => {
    const run = await readText(
      '  Time (s)   Sample temp. (°C)  Mass (mg)\n   0.0   25.00  10.0\n  1.0   25.50   9.9\n',
    );
    assert.equal(run.interpretation.delimiter, null);
    assert.deepEqual(signals(run), ['time s', 'temperature °C', 'mass mg']);
    assert.deepEqual(values(run, 'mass'), [10, 9.9]);
    const narrow = await readText('Time (s) Temp (°C) Mass (mg)\n0.0 25.00 10.0\n1.0 25.50 9.9\n');
    assert.deepEqual(values(narrow, 'temperature'), [25, 25.5]);
  });

  it('finds the decimal comma with semicolons, tabs and blanks, and in quotes between commas', async () => {
    for (const separator of [';', '\t', '  ']) {
      const text = (header + rows).replaceAll(',', separator).replaceAll('.', ',');
      const run = await readText(text);
      assert.equal(run.interpretation.decimal, ',');
      assert.deepEqual(values(run, 'temperature'), [25, 25.5, 26]);
    }
    const quoted = await readText('"Time/s","T/°C","Mass/mg"\n"0","25,25","9,75"\n"1","25,50","9,7"\n');
    assert.equal(quoted.interpretation.delimiter, ',');
    assert.equal(quoted.interpretation.decimal, ',');
    assert.deepEqual(values(quoted, 'mass'), [9.75, 9.7]);
  });

  it('refuses commas that are separators and decimal signs at once', async () => {
    const problem = await refusedText('Time/s,T/°C\n0,5,25,1\n1,5,25,3\n2,5,25,4\n');
    assert.equal(problem.problem, 'column-unclear');
    assert.match(problem.message, /as many names/);
  });

  it('follows what a reading statement says against what it would find', async () => {
    const run = await readText('a b\n1,5 25 10\n2,5 26 9\n', {
      ...detectAll,
      delimiter: ' ',
      decimal: ',',
      columns: [
        { signal: 'time', column: { number: 1 }, unit: 'min' },
        { signal: 'temperature', column: { number: 2 }, unit: 'K' },
        { signal: 'mass', column: { number: 3 }, unit: 'g' },
      ],
    });
    assert.deepEqual(values(run, 'time'), [90, 150]);
    assert.deepEqual(values(run, 'temperature'), [25 - 273.15, 26 - 273.15]);
    assert.deepEqual(values(run, 'mass'), [10000, 9000]);
  });

  it('says so when a delimiter, a decimal sign or an encoding cannot be one', async () => {
    assert.match((await refusedText(header + rows, { delimiter: ';;' })).message, /one character/);
    assert.match((await refusedText(header + rows, { decimal: '-' })).message, /decimal sign/);
    assert.match((await refusedText(header + rows, { encoding: 'morse' })).message, /unknown encoding morse/);
  });
});

describe('reading a run file: what stands above and below the numbers', () => {
  it('passes over a preamble, also with numbers in it, and reports how long it is', async () => {
    const preamble = 'Laboratory;ceramics (invented)\nMass;20,05\nRange;20;1000\n\n';
    const run = await readText(`${preamble}Zeit/min;Temp./°C;Gew./%\n0,0;25,0;100,0\n0,5;30,0;99,5\n1,0;35,0;99,0\n`);
    assert.equal(run.interpretation.skip, 4);
    assert.equal(run.interpretation.header, 1);
    assert.deepEqual(values(run, 'time'), [0, 30, 60]);
    assert.deepEqual(values(run, 'mass'), [1, 0.995, 0.99]);
  });

  it('reads units from a row of their own, with or without brackets', async () => {
    for (const units of ['[s],[k],[mg]', 's,K,mg', '(s),(K),(mg)']) {
      const run = await readText(`Time,Temperature,Mass\n${units}\n0,298.15,10\n60,308.15,9\n`);
      assert.equal(run.interpretation.header, 2);
      assert.deepEqual(signals(run), ['time s', 'temperature °C', 'mass mg']);
      assert.deepEqual(values(run, 'temperature'), [25, 35]);
    }
  });

  it('reads quoted names that hold the separator', async () => {
    const run = await readText('"T, K","m, mg"\n400,14.4\n401,14.3\n402,14.2\n');
    assert.deepEqual(signals(run), ['temperature °C', 'mass mg']);
  });

  it('drops a footer and reports its length, but keeps a last row that is cut off', async () => {
    const run = await readText(`${header}${rows}\nEnd of run\nTotal;loss\n`);
    assert.equal(run.points, 3);
    assert.equal(run.interpretation.footer, 2);
    assert.equal(run.badCells.count, 0);
    const cut = await readText(`${header}${rows}3,26.5`);
    assert.equal(cut.points, 4);
    assert.equal(cut.interpretation.footer, 0);
    assert.equal(cut.emptyCells, 1);
    assert.ok(Number.isNaN(values(cut, 'mass')[3]));
  });

  it('takes a footer of told length, also when it looks like numbers', async () => {
    const run = await readText(`${header}${rows}9,9,9\n8,8,8\n`, { footer: 2 });
    assert.deepEqual(values(run, 'time'), [0, 1, 2]);
    assert.equal(run.interpretation.footer, 2);
  });

  it('takes told numbers of lines before and of the header', async () => {
    const run = await readText(`1,2,3\n4,5,6\n${header}${rows}`, { skip: 2, header: 1 });
    assert.equal(run.interpretation.skip, 2);
    assert.equal(run.interpretation.header, 1);
    assert.deepEqual(values(run, 'time'), [0, 1, 2]);
  });

  it('refuses a table without a header and proposes the columns, which then read it', async () => {
    const text = '0\t473.01\t1\n1000\t514.84\t0.9974\n1500\t535.62\t0.9872\n';
    const problem = await refusedText(text);
    assert.ok(problem.problem === 'column-unclear');
    assert.equal(problem.write, 'columns\n  time column 1 in s\n  temperature column 2 in K\n  mass column 3 in 1');
    const run = await readText(text, writtenChoices(problem.write));
    assert.deepEqual(signals(run), ['time s', 'temperature °C', 'mass 1']);
  });

  it('reads a file of four rows and of one', async () => {
    assert.equal((await readText(`${header}${rows}3,27,9.7\n`)).points, 4);
    assert.equal((await readText(`${header}0,25,10`)).points, 1);
  });

  it('names an empty file and a text without a table', async () => {
    assert.match((await refusedText('')).message, /is empty/);
    const problem = await refusedText('Dear colleague,\nthe run is ready.\n');
    assert.equal(problem.problem, 'no-numbers');
  });
});

describe('reading a run file: cells', () => {
  it('keeps cells that are no numbers as gaps, with line and field, never as zero', async () => {
    const run = await readText(`${header}0,25,10\n1,#N/A,9.9\n2,26,\n3,NaN,err\n4,27,9.7\n`);
    assert.equal(run.points, 5);
    assert.deepEqual(values(run, 'temperature'), [25, NaN, 26, NaN, 27]);
    assert.deepEqual(values(run, 'mass'), [10, 9.9, NaN, NaN, 9.7]);
    assert.equal(run.badCells.count, 3);
    assert.deepEqual(run.badCells.first, [
      { line: 3, field: 2, text: '#N/A' },
      { line: 5, field: 2, text: 'NaN' },
      { line: 5, field: 3, text: 'err' },
    ]);
    assert.equal(run.emptyCells, 1);
  });

  it('does not take a column of the other decimal sign for numbers', async () => {
    const problem = await refusedText('Time/s;T/°C;Mass/mg\n0;25;1,5\n1;26;1,4\n2;27;1,3\n', { decimal: '.' });
    assert.equal(problem.problem, 'no-numbers');
    assert.match(
      problem.message,
      /column 3 .* the mass, holds no number: line 2 has "1,5"; its decimal sign may be ","/,
    );
    assert.ok(problem.problem === 'no-numbers' && problem.write === null, 'the statement is there and must be changed');
  });

  it('keeps empty columns at the end out of the signals', async () => {
    const run = await readText('Time,Temperature,Mass,\n[s],[K],[mg],\n0,300,5,\n60,310,4,\n');
    assert.deepEqual(signals(run), ['time s', 'temperature °C', 'mass mg']);
    assert.equal(run.emptyCells, 0);
    assert.equal(run.interpretation.columns.length, 4);
  });

  it('keeps times that do not start at zero, that repeat and that step back', async () => {
    const run = await readText('Time/s,T/°C,m/mg\n1200,30,5\n1201,31,5\n1201,31,5\n1199,32,5\n');
    assert.deepEqual(values(run, 'time'), [1200, 1201, 1201, 1199]);
  });

  it('gives the same columns however the text is split, and one row a line', async () => {
    const lines = Array.from({ length: 3000 }, (_, k) => `${k / 2},${25 + k / 50},${10 - k / 1000}`);
    const run = await readText(`${header}${lines.join('\r\n')}`);
    assert.equal(run.points, 3000);
    assert.equal(values(run, 'mass')[2999], 10 - 2999 / 1000);
    assert.equal(run.interpretation.lineEnds, 'mixed');
  });
});

describe('reading a run file: several runs side by side', () => {
  const text = 'Time/s,T/°C,Mass/mg,Time/s,T/°C,Mass/mg\n0,25,10,0,26,20\n1,26,9,1,27,19\n';

  it('asks which one, and reads the one that is named', async () => {
    const problem = await refusedText(text);
    assert.ok(problem.problem === 'column-unclear');
    assert.match(problem.message, /2 runs side by side/);
    assert.equal(problem.write, 'reading\n  block 1');
    assert.deepEqual(values(await readText(text, writtenChoices(problem.write)), 'mass'), [10, 9]);
    const second = await readText(text, { block: 2 });
    assert.deepEqual(values(second, 'mass'), [20, 19]);
    assert.equal(second.interpretation.block, 2);
    assert.match((await refusedText(text, { block: 3 })).message, /no block 3/);
  });

  it('does not pass over a block that the file has not', async () => {
    const problem = await refusedText(header + rows, { block: 2 });
    assert.match(problem.message, /no block 2: the header shows one run only/);
    assert.equal((await readText(header + rows, { block: 1 })).points, 3);
  });

  it('takes a header text that stands in every block from the block that is named', async () => {
    const run = await readText(text, {
      block: 2,
      columns: [{ signal: 'mass', column: { header: 'Mass/mg' }, unit: 'g' }],
    });
    assert.deepEqual(values(run, 'mass'), [20000, 19000]);
  });
});
