import { plainNumber } from './plainNumber';
import type { Series } from './series';
import { shownBasis, unitText, valueAndU } from './shown';

export const apparentMark = '~';

/** Rows n, mean, s; the mean to the second digit of s. */
export function statisticsRows(series: Series): string[][] {
  const { statistics } = series;
  const shown = statistics.map(({ mean, s, apparent }) => {
    if (mean === null) return { mean: '', s: '' };
    const rounded = valueAndU(mean, s);
    const text = s === null ? plainNumber(mean, 5) : rounded.value;
    return { mean: apparent ? `${apparentMark}${text}` : text, s: s === null ? '' : (rounded.u ?? '0') };
  });
  return [
    ['n', ...statistics.map((x) => String(x.n))],
    ['mean', ...shown.map((x) => x.mean)],
    ['s', ...shown.map((x) => x.s)],
  ];
}

/** `% (initial)`. */
export function headUnit(c: { readonly unit: string; readonly basis: string | null }): string {
  const unit = unitText(c.unit).trim() || '1';
  return c.basis === null ? unit : `${unit} (${shownBasis(c.basis)})`;
}
