import type { ClauseRecord } from './record';

/** Clauses that every statement may have. */
export const everywhere: readonly ClauseRecord[] = [
  {
    word: 'note',
    form: 'note TEXT',
    argument: { form: 'text' },
    prose: 'A remark that reports print beside the statement.',
    default: null,
    example: 'note "grain size below 63 µm"',
    repeatable: true,
  },
  {
    word: 'allow',
    form: 'allow CODE because TEXT',
    argument: { form: 'allow' },
    prose: 'Accepts one finding about this statement, with a reason that reports print.',
    default: null,
    example: 'allow two-rate-maxima because "both are water"',
    repeatable: true,
  },
];

/** The reason of an override; without it the override does not count. */
export const because: ClauseRecord = {
  word: 'because',
  form: 'because TEXT',
  argument: { form: 'text' },
  prose: 'Why the method is not followed here. An override needs it.',
  default: null,
  example: 'because "coarse fraction: the first loss starts 15 K later"',
  repeatable: false,
};

/** The reason of an approval, which `thermogloss approve` demands where something stands against the results. */
export const approvedBecause: ClauseRecord = {
  word: 'because',
  form: 'because TEXT',
  argument: { form: 'text' },
  prose:
    'Why the results are approved. Needed where an error stands, or a requirement is not met or can be neither confirmed nor refuted.',
  default: null,
  example: 'because "released for a trial batch only"',
  repeatable: false,
};

export function spanClause(normal: string): ClauseRecord {
  return {
    word: 'span',
    form: 'span Q',
    argument: { form: 'amount', measures: ['difference'], inHold: ['time'] },
    prose: 'The length of the stretch at each end of the window over which levels are averaged or lines are fitted.',
    default: `${normal}; in a hold 60 s`,
    example: 'span 15 K',
    repeatable: false,
  };
}

export const smoothClause: ClauseRecord = {
  word: 'smooth',
  form: 'smooth Q|none',
  argument: { form: 'amount or none', measures: ['difference'], inHold: ['time'] },
  prose: 'The width over which the derivative is smoothed. What is integrated or averaged is never smoothed.',
  default: '5 K; in a hold 30 s',
  example: 'smooth 3 K',
  repeatable: false,
};

export const perClause: ClauseRecord = {
  word: 'per',
  form: 'per BASIS',
  argument: { form: 'basis' },
  prose: 'The mass that results are taken over. It is shown beside every result: `14.80 ± 0.04 % (initial)`.',
  default: 'initial mass',
  example: 'per mass at start',
  repeatable: false,
};

export const enclosesClause: ClauseRecord = {
  word: 'encloses',
  form: 'encloses NAME {, NAME}',
  argument: { form: 'names' },
  prose: 'Statements whose windows lie inside this one on purpose, so that the overlap is no finding.',
  default: null,
  example: 'encloses First, Second',
  repeatable: false,
};

export const crucibleClause: ClauseRecord = {
  word: 'crucible',
  form: 'crucible WORDS [VOLUME] {, WORDS}',
  argument: { form: 'crucible' },
  prose:
    'Material, volume and lid of the crucible. Compared with the blank, with the temperatures and with the specimen.',
  default: null,
  example: 'crucible alumina 85 µL, pierced lid',
  repeatable: false,
};

export const atmosphereClause: ClauseRecord = {
  word: 'atmosphere',
  form: 'atmosphere WORDS [N % {+ WORDS N %}] [FLOW] [purity N %] [from TIME|SEGMENT]',
  argument: { form: 'atmosphere' },
  prose: 'The purge gas, its flow and purity. From the second on it says from when: a time of the file or a segment.',
  default: null,
  example: 'atmosphere nitrogen 80 % + oxygen 20 % 50 mL/min',
  repeatable: true,
};

export function onClause(prose: string): ClauseRecord {
  return {
    word: 'on',
    form: 'on NAME',
    argument: { form: 'name' },
    prose,
    default: null,
    example: 'on First',
    repeatable: false,
  };
}
