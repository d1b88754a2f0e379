import type { ExportTheme } from '../../../server/src/protocol/messages';
import type { Look } from '../look';
export interface Figure {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}
export function figure(_look: Look, _theme: ExportTheme, _transparent: boolean): Figure {
  return { svg: '<svg xmlns="http://www.w3.org/2000/svg"/>', width: 100, height: 100 };
}
