import type { TemperatureMap } from '../runs/temperatureMap';

/** The time at which a ramp passes a temperature; that of its nearer end beyond it. */
export function timeAtClamped(map: TemperatureMap, temperature: number): number {
  const low = Math.min(map.from, map.to);
  const high = Math.max(map.from, map.to);
  const inside = Math.min(Math.max(temperature, low), high);
  return map.timeAt(inside) ?? (Math.abs(inside - map.from) < Math.abs(inside - map.to) ? map.start : map.end);
}
