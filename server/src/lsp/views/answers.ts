import { cursorAt } from '../../engine/curves/cursor';
import type { CurveLane, RunCurve } from '../../engine/curves/runCurves';
import { float64Base64 } from '../../engine/curves/float64Base64';
import { samples } from '../../engine/curves/samples';
import { cursorAnswer } from '../../presentation/plot/cursorAnswer';
import { unitOf } from '../../presentation/plot/plotCurves';
import type { CursorAnswer, CursorRequest, SamplesAnswer, SamplesRequest } from '../../protocol/view';
import type { Picture } from './picture';

/** Original samples of the visible range of some curves of a picture. */
export function samplesAnswer(picture: Picture, request: SamplesRequest): SamplesAnswer {
  const { units } = picture.state.choices;
  const differences = { lane: laneOf(picture.differences), curve: curveOf(picture.differences) };
  const curves = request.curves.flatMap((id) => {
    for (const run of [...picture.curves, differences]) {
      const curve = run.curve(id);
      const lane = curve === null ? null : run.lane(curve.lane);
      if (curve === null || lane === null) continue;
      const { abscissa, from, to, pixels } = request;
      const found = samples(curve, abscissa, from, to, pixels, shownUnit(picture, lane, units));
      const [x, y] = [float64Base64(found.x.subarray(0, found.count)), float64Base64(found.y.subarray(0, found.count))];
      return [{ id, x, y, count: found.count, complete: found.complete }];
    }
    return [];
  });
  return { generation: request.generation, curves };
}

function laneOf(lanes: readonly CurveLane[]): (id: string) => CurveLane | null {
  return (id) => lanes.find((l) => l.id === id) ?? null;
}

function curveOf(lanes: readonly CurveLane[]): (id: string) => RunCurve | null {
  return (id) => lanes.flatMap((l) => l.curves).find((c) => c.id === id) ?? null;
}

/** A difference is in the unit of the lane it is of. */
function shownUnit(picture: Picture, lane: CurveLane, units: Picture['state']['choices']['units']): string {
  const of = lane.id.startsWith('difference:') ? lane.id.slice('difference:'.length) : null;
  const base = of === null ? null : picture.curves[0]?.lane(of);
  return unitOf(base ?? lane, units);
}

/** Every signal at one point; null where nothing shown has samples. */
export function cursorReading(picture: Picture, request: CursorRequest): CursorAnswer | null {
  const [own, ...others] = picture.curves;
  if (own === undefined || picture.ground?.curves !== own) return null;
  const { choices, parts } = picture.state;
  const units = Object.fromEntries(own.lanes.map((lane) => [lane.id, unitOf(lane, choices.units)]));
  const reading = cursorAt(own, others, {
    abscissa: request.abscissa,
    at: request.at,
    part: request.part,
    step: request.step,
    shownParts: parts.filter((p) => p.shown).map((p) => p.name),
    units,
  });
  return reading === null ? null : cursorAnswer(request.generation, reading, own, picture.names);
}
