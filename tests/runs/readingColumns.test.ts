import { strict as assert } from 'node:assert';
import { detectAll } from '../../server/src/runs/reading/choices';
import { headerCell } from '../../server/src/runs/reading/headerCell';
import { headerMeaning, headerPhrases, plain } from '../../server/src/runs/reading/headerWords';
import { readText, refusedText, signals, values } from '../support/readText';
import { writtenChoices } from '../support/writtenChoices';

/** A table with these headers; the second column is a plausible temperature. */
function table(...headers: string[]): string {
  const row = (k: number): string =>
    headers.map((_, c) => (c === 0 ? 6 * k : c === 1 ? 300 + k : 10 + c - k / 10)).join('\t');
  return [headers.join('\t'), row(0), row(1), row(2)].join('\n');
}

describe('names of signals in headers', () => {
  const names: Record<string, string[]> = {
    time: ['Time', 'time ', 'Zeit', 'Temps', 'Tiempo', 'Tempo', 'Czas', 'Čas', 'Время', '时间', 'Elapsed time'],
    temperature: [
      'Temperature',
      'Temp.',
      'temp',
      'T',
      'Ts',
      'Temperatur',
      'Température',
      'Temperatura',
      'Probentemperatur',
    ],
    mass: [
      'Mass',
      'm',
      'Weight',
      'TG',
      'TGA',
      'Masse',
      'Gewicht',
      'Gew.',
      'Masa',
      'Peso',
      'Poids',
      '质量',
      'Mass fraction',
    ],
    heatflow: [
      'Heat Flow',
      'heatflow',
      'Heat Flow Rate',
      'Heat flux',
      'DSC',
      'DTA',
      'Wärmestrom',
      'Flux de chaleur',
      'Φ',
      'Тепловой поток',
    ],
    'left out': [
      'DTG',
      'Derivative weight',
      'Rate',
      'Mass loss rate',
      'Error',
      'HRR error',
      'Index',
      'Segment',
      'Gas flow',
    ],
  };
  for (const [meaning, words] of Object.entries(names)) {
    it(`${meaning}: ${words.join(', ')}`, () => {
      for (const word of words) assert.equal(headerMeaning(word), meaning, word);
    });
  }

  it('are listed as a header is looked up: without accents, signs and capitals', () => {
    for (const { words } of headerPhrases) assert.equal(plain(words.join(' ')), words.join(' '));
  });

  it('leaves furnace, programme and reference temperatures out', () => {
    for (const word of ['Furnace temperature', 'Program Temperature', 'Reference temp.']) {
      assert.equal(headerMeaning(word), 'left out', word);
    }
    assert.equal(headerMeaning('Sample temperature'), 'temperature');
  });

  it('knows ions and absorbances by their number', () => {
    assert.equal(headerMeaning('m/z 18'), 'ion(18)');
    assert.equal(headerMeaning('Ion current 44'), 'ion(44)');
    assert.equal(headerMeaning('18 amu'), 'ion(18)');
    assert.equal(headerMeaning('Absorbance 2349'), 'absorbance(2349)');
    assert.equal(headerMeaning('2349 cm⁻¹'), 'absorbance(2349)');
  });

  it('does not take a change of mass, or a word it does not know, for a signal', () => {
    for (const word of ['Mass loss', 'Weight change', 'Δm', 'Masseverlust', 'HRR', 'w', 't', 'pcm_t']) {
      assert.equal(headerMeaning(word), null, word);
    }
  });
});

describe('units in headers', () => {
  const cells: [string, string, string][] = [
    ['T/°C', 'T', '°C'],
    ['T (°C)', 'T', '°C'],
    ['T [°C]', 'T', '°C'],
    ['T / K', 'T', 'K'],
    ['Temp./°C', 'Temp.', '°C'],
    ['Temperature [k]', 'Temperature', 'K'],
    ['Temperature (C)', 'Temperature', '°C'],
    ['Temperatur in °C', 'Temperatur', '°C'],
    ['temp_C', 'temp', '°C'],
    ['T, K', 'T', 'K'],
    ['t/min', 't', 'min'],
    ['Time [minutes]', 'Time', 'min'],
    ['Gew./%', 'Gew.', '%'],
    ['Weight %', 'Weight', '%'],
    ['Weight (wt.%)', 'Weight', '%'],
    ['Mass [µg]', 'Mass', 'µg'],
    ['Mass (ug)', 'Mass', 'µg'],
    ['Mass Fraction', 'Mass Fraction', '1'],
    ['Mass (g/g)', 'Mass', '1'],
    ['DSC/(mW/mg)', 'DSC', 'W/g'],
    ['DSC /mW/mg', 'DSC', 'W/g'],
    ['Heat flow (endo up) (mW)', 'Heat flow (endo up)', 'mW'],
    ['Heat flow [W g⁻¹]', 'Heat flow', 'W/g'],
    ['Heat flow (W·g^-1)', 'Heat flow', 'W/g'],
    ['Heat flow mW', 'Heat flow', 'mW'],
    ['DTA (µV)', 'DTA', 'µV'],
    ['DTA / uV/mg', 'DTA', 'µV/mg'],
    ['°C', '', '°C'],
  ];
  for (const [text, name, unit] of cells) {
    it(`${text} is ${name === '' ? 'only a unit' : name} in ${unit}`, () => {
      const cell = headerCell(text);
      assert.equal(cell.name, name);
      assert.equal(cell.unit?.written, unit);
    });
  }

  it('finds no unit where none is written', () => {
    for (const text of ['Time', 'm/z 18', 'dm/dt', 'pcm_h', 'T', 'Mass', 'DSC']) {
      assert.equal(headerCell(text).unit, null, text);
    }
  });

  it('become fixed units, exactly', async () => {
    const units: [string, string, number][] = [
      ['Time (min)', 'time s', 90],
      ['Time (h)', 'time s', 5400],
      ['Mass (g)', 'mass mg', 1500],
      ['Mass (µg)', 'mass mg', 0.0015],
      ['Mass (%)', 'mass 1', 0.015],
      ['Heat flow (W)', 'heatflow mW', 1500],
      ['Heat flow (mW/mg)', 'heatflow W/g', 1.5],
      ['DTA (mV)', 'heatflow µV', 1500],
      ['Ion 18 (nA)', 'ion(18) A', 1.5e-9],
    ];
    for (const [header, expected, value] of units) {
      const run = await readText(`T (K)\tMass (mg)\t${header}\n300\t1\t1.5\n301\t1\t1.5\n`, {
        columns: header.startsWith('Mass') ? [{ signal: 'mass', column: { number: 3 }, unit: null }] : [],
      });
      const column = run.columns.find(({ number }) => number === 3);
      assert.equal(`${column?.signal} ${column?.unit}`, expected);
      assert.equal(column?.values[0], value, header);
    }
  });
});

describe('what the header leaves open', () => {
  it('refuses two candidates and names both', async () => {
    const text = table('Time (s)', 'Temp (K)', 'Heat flow (mW)', 'Heat flow (W/g)');
    const problem = await refusedText(text);
    assert.ok(problem.problem === 'column-unclear');
    assert.equal(problem.signal, 'heatflow');
    assert.match(problem.message, /column 3 .* and column 4 .* can both be the heatflow/);
    const run = await readText(text, { columns: [{ signal: 'heatflow', column: { number: 4 }, unit: null }] });
    assert.deepEqual(signals(run), ['time s', 'temperature °C', 'heatflow W/g']);
  });

  it('refuses missing units for all signals at once, with a statement that settles them', async () => {
    const text = table('Time', 'Temp', 'DTA', 'm');
    const problem = await refusedText(text);
    assert.ok(problem.problem === 'column-unclear');
    assert.equal(problem.signal, null);
    for (const name of ['Time', 'Temp', 'DTA', 'm']) assert.ok(problem.message.includes(`"${name}" has no unit`));
    assert.ok(problem.write !== null);
    assert.deepEqual(signals(await readText(text, writtenChoices(problem.write))), [
      'time s',
      'temperature °C',
      'heatflow µV',
      'mass mg',
    ]);
  });

  it('refuses a unit that contradicts the name, and one it does not know', async () => {
    const contradiction = await refusedText(table('Time (s)', 'Temp (min)', 'Mass (mg)'));
    assert.match(contradiction.message, /"Temp \(min\)" has the unit "min", which is not known for temperature/);
    const unknown = await refusedText('Time,Temperature,Mass\n[s],[K],[bushel]\n0,300,1\n1,301,1\n');
    assert.match(unknown.message, /has the unit "bushel"/);
  });

  it('refuses a file without anything measured, and reads it when told', async () => {
    const text = table('Time (s)', 'Temp (K)', 'HRR (W/g)');
    const problem = await refusedText(text);
    assert.ok(problem.problem === 'column-unclear');
    assert.match(problem.message, /no mass or heat flow/);
    assert.ok(problem.write !== null);
    assert.deepEqual(signals(await readText(text, writtenChoices(problem.write)))[2], 'heatflow W/g');
  });

  it('needs a temperature in a run, but not in a joined file', async () => {
    const text = 'Time (s)\tm/z 18\n0\t1e-10\n1\t2e-10\n';
    assert.equal((await refusedText(text)).problem, 'column-unclear');
    assert.deepEqual(signals(await readText(text, { purpose: 'joined' })), ['time s', 'ion(18) 1']);
  });

  it('leaves rates, errors and unknown columns out of the signals, but lists them', async () => {
    const run = await readText(table('Time (s)', 'Temp (K)', 'Mass (mg)', 'DTG (mg/min)', 'Error (mg)', 'Valve'));
    assert.deepEqual(signals(run), ['time s', 'temperature °C', 'mass mg']);
    assert.deepEqual(
      run.interpretation.columns.map(({ header, unitText, signal }) => [header, unitText, signal]),
      [
        ['Time (s)', 's', 'time'],
        ['Temp (K)', 'K', 'temperature'],
        ['Mass (mg)', 'mg', 'mass'],
        ['DTG (mg/min)', 'mg/min', null],
        ['Error (mg)', 'mg', null],
        ['Valve', '', null],
      ],
    );
  });

  it('lets a columns statement overrule the header, by text and by number', async () => {
    const text = table('Time (s)', 'Temp (K)', 'Mass (mg)', 'Channel 7');
    const run = await readText(text, {
      columns: [
        { signal: 'heatflow', column: { header: 'Channel 7' }, unit: 'µV' },
        { signal: 'temperature', column: { number: 2 }, unit: '°C' },
      ],
    });
    assert.deepEqual(signals(run), ['time s', 'temperature °C', 'mass mg', 'heatflow µV']);
    assert.deepEqual(values(run, 'temperature'), [300, 301, 302]);
    assert.equal(run.interpretation.columns[1].unitText, 'K');
  });

  it('says what is wrong with a columns statement that fits no column', async () => {
    const text = table('Time (s)', 'Temp (K)', 'Mass (mg)', 'Mass (%)');
    const none = await refusedText(text, { columns: [{ signal: 'mass', column: { header: 'Weight' }, unit: null }] });
    assert.match(none.message, /no column is called "Weight"; there are "Time \(s\)"/);
    const beyond = await refusedText(text, { columns: [{ signal: 'mass', column: { number: 9 }, unit: 'mg' }] });
    assert.match(beyond.message, /no column 9: the file has 4/);
    // The statement is there already: a second one would settle nothing.
    assert.ok(beyond.problem === 'column-unclear' && beyond.write === null);
    const wrong = await refusedText(text, { columns: [{ signal: 'mass', column: { number: 3 }, unit: 'K' }] });
    assert.match(wrong.message, /mass cannot be in K/);
    const both = await refusedText(text, { columns: [{ signal: 'mass', column: { header: 'Mass' }, unit: null }] });
    assert.match(both.message, /2 columns are called "Mass"/);
  });

  it('proposes for the file it reads, where that is not the run', async () => {
    const problem = await refusedText(table('Time', 'Temp (K)', 'Mass (mg)'), { ...detectAll, of: 'heat.txt' });
    assert.ok(problem.problem === 'column-unclear');
    assert.equal(problem.write, 'columns of "heat.txt"\n  time column 1 in s');
  });
});
