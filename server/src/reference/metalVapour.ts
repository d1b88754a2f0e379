import { sources, type Sourced } from './sources';
import { cellNumber, tableRows } from './textTable';

/** A metal whose vapour reaches 1 Pa, enough to travel to the sensor, at a temperature of common runs. */
export interface VolatileMetal extends Sourced {
  readonly metal: string;
  /** °C at which its vapour pressure is 1 Pa. */
  readonly onePascal: number;
}

const table = `
mercury; 42
caesium; 145
rubidium; 161
potassium; 200
selenium; 227
cadmium; 257
sodium; 281
arsenic; 280
zinc; 337
tellurium; 380
magnesium; 428
strontium; 523
lithium; 524
antimony; 534
calcium; 591
thallium; 609
barium; 638
bismuth; 668
lead; 705
indium; 923
manganese; 955
silver; 1010
gallium; 1037
`;

export const volatileMetals: readonly VolatileMetal[] = tableRows(table, ['metal', 'onePascal'] as const).map(
  (row) => ({
    metal: row.metal,
    onePascal: cellNumber(row.onePascal) ?? 0,
    source: sources.vapourPressure,
  }),
);
