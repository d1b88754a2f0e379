import type { Sourced } from './sources';
import { cellNumber, tableRows } from './textTable';

/** One published enthalpy of a reference substance. Rows that disagree stand beside each other: nothing is hard-wired. */
export interface ReferenceEnthalpy extends Sourced {
  readonly substance: string;
  readonly transition: 'fusion' | 'solid-solid';
  /** J/g. */
  readonly value: number;
  /** Half-width in J/g; null: none stated. */
  readonly uncertainty: number | null;
  /** What the uncertainty covers as stated: `95 %`, `k=2`, `stated` (coverage not said); null without one. */
  readonly coverage: string | null;
  /** How the figure came here. */
  readonly tag: 'read' | 'read in a transcription' | 'computed' | 'from memory';
}

const columns = ['substance', 'transition', 'value', 'uncertainty', 'coverage', 'tag', 'source'] as const;

const table = `
gallium; fusion; 80.097; 0.032; 95 %; read; Archer, J. Chem. Eng. Data 47 (2002) 304
indium; fusion; 28.6624; 0.0076; 95 %; read; Archer and Rudtsch, J. Chem. Eng. Data 48 (2003) 1157
bismuth; fusion; 53.146; 0.082; 95 %; read; Archer, J. Chem. Eng. Data 49 (2004) 1364
water; fusion; 333.4265; 0.2; stated; computed; IAPWS-95 with the IAPWS ice equation at 273.1525 K and 101.325 kPa
indium; fusion; 28.51; 0.19; k=2; from memory; NIST SRM 2232 certificate
tin; fusion; 60.22; 0.19; stated; from memory; NIST SRM 2220 certificate
biphenyl; fusion; 120.41; 0.6; stated; from memory; NIST SRM 2222 certificate
benzoic acid; fusion; 147.9; 0.3; stated; from memory; Sabbah et al., Thermochim. Acta 331 (1999) 93
gallium; fusion; 80.103; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
indium; fusion; 28.663; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
tin; fusion; 60.231; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
bismuth; fusion; 53.144; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
lead; fusion; 23.041; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
zinc; fusion; 108.106; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
aluminium; fusion; 396.939; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
silver; fusion; 104.757; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
gold; fusion; 63.716; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
copper; fusion; 208.668; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
nickel; fusion; 297.819; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
biphenyl; fusion; 120.419; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
benzoic acid; fusion; 147.556; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
naphthalene; fusion; 148.314; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
water; fusion; 333.611; -; -; read in a transcription; CRC Handbook, 95th ed. (2014)
zinc; fusion; 111.638; -; -; read in a transcription; Cox et al., CODATA Key Values (1989)
aluminium; fusion; 396.567; -; -; read in a transcription; Cox et al., CODATA Key Values (1989)
silver; fusion; 101.976; -; -; read in a transcription; Cox et al., CODATA Key Values (1989)
copper; fusion; 206.779; -; -; read in a transcription; Cox et al., CODATA Key Values (1989)
gallium; fusion; 79.629; -; -; read in a transcription; Gurvich et al. (1996)
indium; fusion; 28.593; -; -; read in a transcription; Gurvich et al. (1996)
tin; fusion; 60.612; -; -; read in a transcription; Gurvich et al. (1991)
lead; fusion; 23.224; -; -; read in a transcription; Gurvich et al. (1991)
sodium chloride; fusion; 482.523; -; -; read in a transcription; Gurvich et al. (1982)
potassium chloride; fusion; 353.045; -; -; read in a transcription; Gurvich et al. (1982)
potassium nitrate; fusion; 96.931; -; -; read in a transcription; Gurvich et al. (1982)
potassium nitrate; solid-solid; 49.850; -; -; read in a transcription; Gurvich et al. (1982)
quartz; solid-solid; 6.824; -; -; read in a transcription; Gurvich et al. (1991)
potassium sulfate; solid-solid; 45.909; -; -; read in a transcription; Gurvich et al. (1982)
potassium sulfate; solid-solid; 33.3; 1.1; stated; read; Bin Anooz et al., Solid State Commun. (2007), 5.8 ± 0.2 kJ/mol
strontium carbonate; solid-solid; 113.121; -; -; read in a transcription; Gurvich et al. (1996)
barium carbonate; solid-solid; 82.600; -; -; read in a transcription; Gurvich et al. (1996)
caesium chloride; solid-solid; 17.403; -; -; read in a transcription; Gurvich et al. (1982)
indium; fusion; 28.62; 0.11; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
tin; fusion; 60.40; 0.36; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
gallium; fusion; 79.88; 0.72; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
bismuth; fusion; 53.83; 2.1; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
lead; fusion; 23.00; 0.2; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
zinc; fusion; 108.09; 1.2; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
aluminium; fusion; 398.1; 4.0; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
silver; fusion; 104.6; 2.1; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
gold; fusion; 64.58; 1.5; stated; from memory; Sarge et al., Thermochim. Acta 247 (1994) 129
`;

const tags: readonly ReferenceEnthalpy['tag'][] = ['read', 'read in a transcription', 'computed', 'from memory'];

export const referenceEnthalpies: readonly ReferenceEnthalpy[] = tableRows(table, columns).map((row) => {
  const tag = tags.find((known) => known === row.tag);
  if (tag === undefined) throw new Error(`unknown tag: ${row.tag}`);
  return {
    substance: row.substance,
    transition: row.transition === 'fusion' ? 'fusion' : 'solid-solid',
    value: cellNumber(row.value) ?? 0,
    uncertainty: cellNumber(row.uncertainty),
    coverage: row.coverage === '' ? null : row.coverage,
    tag,
    source: row.source,
  };
});
