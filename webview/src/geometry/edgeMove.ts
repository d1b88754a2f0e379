import type { Abscissa, Band, Edge, EdgeRequest, Generation, Part } from '../../../server/src/protocol/view';
import { placeToWrite, writtenAt } from '../../../server/src/presentation/plot/writtenNumber';
import { temperatureOfTime, timeOfTemperature } from './timeOfTemperature';

/** An edge on its way: what is drawn and what would be asked of the server. Nothing is written until it is released. */
export interface EdgeMove {
  readonly statement: string;
  readonly which: 'from' | 'to';
  readonly edge: Edge;
  readonly part: Part;
  /** Of the picture on which the move began. */
  readonly generation: Generation;
  readonly by: 'pointer' | 'keys';
  /** s of the file's own time. */
  readonly time: number;
  /** In the edge's unit. */
  readonly value: number;
  /** `value` is exact (from an axis in its unit, a key or the box), not interpolated from `time`. */
  readonly typed: boolean;
  readonly perPixel: number | null;
}

/** What a move reads of the picture. */
export interface MoveField {
  readonly parts: readonly Part[];
  readonly bands: readonly Band[];
}

/** null where the part of the band is not known: then there is no axis to move along. */
export function begun(
  field: MoveField,
  band: Band,
  which: 'from' | 'to',
  generation: Generation,
  by: 'pointer' | 'keys',
): EdgeMove | null {
  const part = field.parts.find((p) => p.name === band.part);
  if (part === undefined) return null;
  const edge = band[which];
  const { time, value } = edge;
  return { statement: band.statement, which, edge, part, generation, by, time, value, typed: true, perPixel: null };
}

/** Dragged to `x` of the abscissa, one pixel of which is `perPixel` wide. */
export function draggedTo(move: EdgeMove, field: MoveField, abscissa: Abscissa, x: number, perPixel: number): EdgeMove {
  const { edge, part } = move;
  if (abscissa === 'time') {
    const slope = part.end > part.start ? Math.abs(part.to - part.from) / (part.end - part.start) : 0;
    const value = edge.unit === 'min' ? minutes(edge, x) : temperatureOfTime(part, field.bands, x);
    return { ...move, time: x, value, typed: false, perPixel: edge.unit === 'min' ? perPixel / 60 : perPixel * slope };
  }
  const time = timeOfTemperature(part, field.bands, x);
  if (edge.unit === 'min') {
    const slope = part.to === part.from ? 0 : Math.abs((part.end - part.start) / (part.to - part.from));
    return { ...move, time, value: minutes(edge, time), typed: false, perPixel: (perPixel * slope) / 60 };
  }
  return { ...move, time, value: rounded(x, edge.decimals, perPixel), typed: true, perPixel };
}

/** Set to a value in the edge's unit, by arrow keys or the box. */
export function setTo(move: EdgeMove, field: MoveField, value: number): EdgeMove {
  const { edge, part } = move;
  const time =
    edge.unit === 'min' ? edge.time + (value - edge.value) * 60 : timeOfTemperature(part, field.bands, value);
  return { ...move, time, value, typed: true, perPixel: null };
}

/** `steps` of the last decimal the text has. */
export function stepped(move: EdgeMove, field: MoveField, steps: number): EdgeMove {
  const power = 10 ** move.edge.decimals;
  return setTo(move, field, (Math.round(move.value * power) + steps) / power);
}

export function hasMoved(move: EdgeMove): boolean {
  return move.typed ? move.value !== move.edge.value : move.time !== move.edge.time;
}

/** Where the moved edge stands on the abscissa. */
export function placeOf(move: EdgeMove, field: MoveField, abscissa: Abscissa): number {
  if (abscissa === 'time') return move.time;
  return move.edge.unit === '°C' ? move.value : temperatureOfTime(move.part, field.bands, move.time);
}

export function requestOf(move: EdgeMove, into: 'gloss' | 'method' = 'gloss'): EdgeRequest {
  const { generation, statement, which, time, perPixel, typed, value } = move;
  return { generation, statement, edge: which, time, perPixel, typed: typed ? value : null, into };
}

/** With the digits the server would write: those of the text, or of a pixel where that is coarser. */
export function rounded(value: number, decimals: number, perPixel: number): number {
  return Number(writtenAt(value, placeToWrite(-decimals, perPixel)));
}

/** Minutes count from where the text counts them: the edge itself says where that is. */
function minutes(edge: Edge, time: number): number {
  return edge.value + (time - edge.time) / 60;
}
