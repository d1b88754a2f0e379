import type { CursorAnswer, Generation } from '../../protocol/view';
import { fixedNumber } from '../plainNumber';
import { nameOf, symbolOf } from './laneWords';
import type { PlotCurves, PlotPart } from './plotCurves';

/** What the curves say at the sample a cursor stands on. */
export interface CursorReading {
  readonly part: string;
  /** s. */
  readonly time: number;
  readonly temperature: number | null;
  readonly values: readonly {
    readonly lane: string;
    readonly unit: string;
    readonly y: number;
    /** Key of the curves it is of: empty for the run itself. */
    readonly key: string;
  }[];
}

/**
 * A cursor's reading in words: `T 652.3 °C`, `m 93.41 %`, and one sentence for those who listen. Single readings have no
 * uncertainty to be rounded by: a four-thousandth of the range of the lane is the last digit that a plot can tell.
 *
 * @param names names of runs laid over, by key
 */
export function cursorAnswer(
  generation: Generation,
  reading: CursorReading,
  curves: PlotCurves,
  names: ReadonlyMap<string, string>,
): CursorAnswer {
  const { part, time, temperature } = reading;
  const shown = reading.values.filter((v) => v.lane !== 'temperature');
  const values = shown.map(({ lane, unit, y, key }) => {
    const of = curves.lanes.find((l) => l.id === lane);
    const name = names.get(key) ?? '';
    const symbol = symbolOf(lane, unit);
    const number = fixedNumber(
      y,
      decimalsOf(
        of?.extent(
          unit,
          curves.parts.map((p) => p.name),
        ) ?? null,
      ),
    );
    const text = `${symbol} ${withUnit(number, unit)}`;
    return { lane, label: name === '' ? symbol : `${symbol}, ${name}`, text, y, spoken: { lane, name, number, unit } };
  });
  const place = [
    temperature === null ? '' : `${fixedNumber(temperature, 1)} °C`,
    `${fixedNumber(time / 60, 2)} min`,
    part,
  ].filter((t) => t !== '');
  const words = values.map(({ spoken: { lane, name, number, unit } }) => {
    const direction = lane === 'heatflow' && curves.endothermic !== null ? `, endothermic ${curves.endothermic}` : '';
    return `${name === '' ? '' : `${name} `}${nameOf(lane)} ${withUnit(number, unit)}${direction}`;
  });
  return {
    generation,
    time,
    temperature,
    part,
    values: [
      ...placeValues(time, temperature, part, curves.parts),
      ...values.map(({ lane, label, text, y }) => ({ lane, label, text, y })),
    ],
    spoken: `${[place.join(', '), ...words].join('; ')}.`,
  };
}

/** Temperature and time stand before the signals: of the file, and from the start of the part. */
function placeValues(
  time: number,
  temperature: number | null,
  part: string,
  parts: readonly PlotPart[],
): CursorAnswer['values'] {
  const start = parts.find((p) => p.name === part)?.start ?? 0;
  const within = start === 0 ? '' : ` (${fixedNumber((time - start) / 60, 2)} min of ${part})`;
  const minutes = { lane: '', label: 't', text: `t ${fixedNumber(time / 60, 2)} min${within}`, y: time / 60 };
  return temperature === null
    ? [minutes]
    : [{ lane: '', label: 'T', text: `T ${fixedNumber(temperature, 1)} °C`, y: temperature }, minutes];
}

function withUnit(number: string, unit: string): string {
  return unit === '' || unit === '1' ? number : `${number} ${unit}`;
}

function decimalsOf(extent: { readonly from: number; readonly to: number } | null): number {
  const size = extent === null ? 1 : extent.to - extent.from;
  if (!(size > 0) || !Number.isFinite(size)) return 2;
  return Math.min(12, Math.max(0, Math.ceil(-Math.log10(size / 4000))));
}
