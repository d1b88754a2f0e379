import type { StoredUnit } from '../run';

/** What a unit measures; `derived` are rates of change, which are never read: the rate is computed. */
export type UnitKind = 'time' | 'temperature' | 'mass' | 'heatflow' | 'current' | 'derived';

export interface UnitWord {
  readonly kind: UnitKind;
  /** The unit in which the column is kept. */
  readonly stored: StoredUnit;
  /** stored = written · times / over - minus: a division where the factor is no exact double. */
  readonly times: number;
  readonly over: number;
  readonly minus: number;
  /** How the unit is written in a gloss. */
  readonly written: string;
}

function word(kind: UnitKind, stored: StoredUnit, written: string, times = 1, over = 1, minus = 0): UnitWord {
  return { kind, stored, times, over, minus, written };
}

/** Units as they stand in headers, by their key (see `unitKey`). Words of several languages. */
const table: readonly [UnitWord, readonly string[]][] = [
  [word('time', 's', 's'), words('s sec secs second seconds sek sekunde sekunden seconde secondes segundo segundos')],
  [word('time', 's', 's'), words('secondo secondi с сек 秒')],
  [word('time', 's', 'min', 60), words('min mins minute minutes minuten minuto minutos minuti мин 分 分钟')],
  [word('time', 's', 'h', 3600), words('h hr hrs hour hours std stunde stunden heure heures hora horas ora ore ч')],
  [word('time', 's', 'ms', 1, 1000), words('ms msec')],
  [word('temperature', '°C', '°C'), words('°c c degc deg.c celsius degcelsius degreescelsius degreec grad gradc')],
  [word('temperature', '°C', '°C'), words('gradcelsius degrécelsius degréscelsius')],
  [word('temperature', '°C', 'K', 1, 1, 273.15), words('k kelvin degk °k')],
  [word('mass', 'mg', 'mg'), words('mg milligram milligrams milligramm')],
  [word('mass', 'mg', 'g', 1000), words('g gram grams gramm')],
  [word('mass', 'mg', 'µg', 1, 1000), words('µg ug mcg microgram micrograms mikrogramm')],
  [word('mass', 'mg', 'kg', 1e6), words('kg')],
  [
    word('mass', '1', '%', 1, 100),
    words('% percent prozent wt% wt.% wt-% weight% mass% mass-% massen% gew% gew.% gew-%'),
  ],
  [word('mass', '1', '%', 1, 100), words('m% ma% ma.% ma-% %m/m %(m/m) %wt %w/w weightpercent masspercent')],
  [word('mass', '1', '1'), words('1 g/g mg/mg kg/kg gg-1 mgmg-1 kgkg-1 fraction massfraction m/m0 w/w')],
  [word('heatflow', 'mW', 'mW'), words('mw milliwatt mj/s mjs-1')],
  [word('heatflow', 'mW', 'W', 1000), words('w watt j/s js-1')],
  [word('heatflow', 'mW', 'µW', 1, 1000), words('µw uw')],
  [word('heatflow', 'W/g', 'W/g'), words('w/g wg-1 mw/mg mwmg-1 kw/kg kwkg-1 j/(gs) j/g/s j/gs jg-1s-1')],
  [word('heatflow', 'W/g', 'mW/g', 1, 1000), words('mw/g mwg-1 µw/mg uw/mg µwmg-1 uwmg-1 w/kg wkg-1')],
  [word('heatflow', 'µV', 'µV'), words('µv uv microvolt')],
  [word('heatflow', 'µV', 'mV', 1000), words('mv millivolt')],
  [word('heatflow', 'µV/mg', 'µV/mg'), words('µv/mg uv/mg µvmg-1 uvmg-1')],
  [word('heatflow', 'µV/mg', 'mV/mg', 1000), words('mv/mg mvmg-1')],
  [word('current', 'A', 'A'), words('a amp ampere')],
  [word('current', 'A', 'mA', 1, 1e3), words('ma')],
  [word('current', 'A', 'µA', 1, 1e6), words('µa ua')],
  [word('current', 'A', 'nA', 1, 1e9), words('na')],
  [
    word('derived', '1', '%/min'),
    words('%/min %min-1 mg/min mgmin-1 %/s %s-1 mg/s mgs-1 1/s s-1 1/min min-1 %/°c %/k'),
  ],
  [
    word('derived', '1', '%/min'),
    words('%k-1 mg/k mg/°c 1/k k-1 %/c mg/c k/min °c/min kmin-1 °cmin-1 c/min k/s µg/min'),
  ],
];

function words(list: string): readonly string[] {
  return list.split(' ');
}

const byKey = new Map(table.flatMap(([unit, keys]) => keys.map((key) => [key, unit] as const)));

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** One spelling for the many: no blanks, dots or carets, lower case, one micro sign, one degree sign, `-1` for ⁻¹. */
function unitKey(text: string): string {
  return text
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (digit) => String(superscripts.indexOf(digit)))
    .normalize('NFC')
    .replace(/[\u2212\u207b\u2013]/g, '-')
    .replace(/\u2103/g, '°c')
    .replace(/[\u00ba\u02da\u2070]/g, '°')
    .replace(/\u212a/g, 'k')
    .replace(/[\u03bc\u00b5]/g, 'µ')
    .toLowerCase()
    .replace(/\u03bc/g, 'µ')
    .replace(/[\s·*^⋅∙]+/g, '');
}

/**
 * The unit that a text is, with or without brackets around it; null: none that is known. `[k]` is kelvin, `C` celsius:
 * in a header of a run nothing else is meant.
 */
export function unitWord(text: string): UnitWord | null {
  const inner = withoutBrackets(text);
  return byKey.get(unitKey(inner)) ?? byKey.get(unitKey(inner).replace(/\.$/, '')) ?? null;
}

/** The text inside one pair of brackets around all of it, else the text. */
export function withoutBrackets(text: string): string {
  const trimmed = text.trim();
  const match = /^(?:\[(.*)\]|\((.*)\)|\{(.*)\}|<(.*)>)$/.exec(trimmed);
  const inner = match?.slice(1).find((part) => part !== undefined);
  return inner === undefined || /^[^([{]*[)\]}]/.test(inner) ? trimmed : inner.trim();
}

/** Converts a column in place to its stored unit. */
export function convertColumn(values: Float64Array, unit: UnitWord): void {
  const { times, over, minus } = unit;
  if (times !== 1) for (let i = 0; i < values.length; i++) values[i] *= times;
  if (over !== 1) for (let i = 0; i < values.length; i++) values[i] /= over;
  if (minus !== 0) for (let i = 0; i < values.length; i++) values[i] -= minus;
}
