/** Quantity symbols (ISO 80000-5: mass m, temperature T, heat flow rate Φ; ISO 80000-4 and -6: time t, current I). */
const symbols: Readonly<Record<string, string>> = {
  mass: 'm',
  rate: '−dm/dt',
  heatflow: 'Φ',
  temperature: 'T',
  ion: 'I',
  absorbance: 'A',
};

const names: Readonly<Record<string, string>> = {
  mass: 'mass',
  rate: 'rate of mass loss',
  heatflow: 'heat flow',
  temperature: 'temperature',
  ion: 'ion current',
  absorbance: 'absorbance',
};

/** Symbol of a signal in a unit: `m`, `I(44)`, and the rate per kelvin on its way through the heating rate. */
export function symbolOf(signal: string, unit: string): string {
  const difference = /^difference:(.*)$/.exec(signal);
  if (difference !== null) return `Δ(${symbolOf(difference[1], unit)})`;
  const { word, number } = taken(signal);
  // The size of dT: a loss counts positive on a cooling ramp too.
  if (word === 'rate' && unit.endsWith('/K')) return '−dm/|dT|';
  return `${symbols[word] ?? word}${number}`;
}

/** `heat flow`, `ion current 44`, `difference of mass`. */
export function nameOf(signal: string): string {
  const difference = /^difference:(.*)$/.exec(signal);
  if (difference !== null) return `difference of ${nameOf(difference[1])}`;
  const { word, number } = taken(signal);
  const name = names[word] ?? word;
  return number === '' ? name : `${name} ${number.slice(1, -1)}`;
}

/**
 * Quantity over unit (ISO 80000-1, 7.1.4): `m/%`, `Φ/(W/g)` with the unit in brackets where it holds a stroke. A plain
 * number has none.
 */
export function axisLabel(symbol: string, unit: string): string {
  if (unit === '' || unit === '1') return symbol;
  return `${symbol}/${unit.includes('/') ? `(${unit})` : unit}`;
}

/** Words that stand on every lane of heat flow; null on the others. */
export function directionWords(signal: string, endothermic: 'up' | 'down' | null): string | null {
  if (signal !== 'heatflow' && signal !== 'difference:heatflow') return null;
  return endothermic === null ? 'endothermic direction not declared' : `endothermic ${endothermic}`;
}

function taken(signal: string): { readonly word: string; readonly number: string } {
  const bracket = signal.indexOf('(');
  return bracket < 0 ? { word: signal, number: '' } : { word: signal.slice(0, bracket), number: signal.slice(bracket) };
}
