import { approvedBecause, onClause } from '../clauses';
import type { OwnRecord, ParameterRecord } from '../record';

const reason: ParameterRecord = { name: 'TEXT', meaning: 'the reason, which reports print' };

export const letRecord: OwnRecord = {
  keyword: 'let',
  kind: 'let',
  form: 'let NAME = EXPRESSION',
  parameters: [
    { name: 'NAME', meaning: 'what the value is called' },
    { name: 'EXPRESSION', meaning: 'of results, literals with units, molar masses `M(CaCO3)` and functions' },
  ],
  prose: 'A value computed from others. Units, bases and uncertainties are carried through.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    {
      word: 'show',
      form: 'show UNIT',
      argument: { form: 'unit' },
      prose: 'The unit the value is shown in.',
      default: '%, mg, min, °C, K, J/g, J/(g·K), mW, g/mol, else SI',
      example: 'show %',
      repeatable: false,
    },
  ],
  context: 'step First 640..800 °C',
  example: 'let dolomite = First.loss * M(CaMg(CO3)2) / M(CO2)',
};

export const requireRecord: OwnRecord = {
  keyword: 'require',
  kind: 'require',
  form: 'require EXPRESSION in RANGE | <= EXPRESSION | >= EXPRESSION [as NAME]',
  parameters: [
    { name: 'EXPRESSION', meaning: 'what is judged, and what it is compared with' },
    { name: 'RANGE', meaning: 'the closed limits, `60..65 %`' },
    { name: 'NAME', meaning: 'what the requirement is called in reports' },
  ],
  prose:
    'A requirement. It is met where the value with its expanded uncertainty lies within the limits, not met where it lies outside, else inconclusive.',
  roles: ['run', 'method'],
  repeatable: true,
  clauses: [onClause('The statement the requirement is about, also one of the method.')],
  context: 'step Moisture 40..180 °C',
  example: 'require Moisture.loss <= 0.5 % as Dry',
};

export const noteRecord: OwnRecord = {
  keyword: 'note',
  kind: 'note',
  form: 'note TEXT',
  parameters: [{ name: 'TEXT', meaning: 'the remark' }],
  prose: 'A remark that reports print.',
  roles: ['run', 'method'],
  repeatable: true,
  clauses: [onClause('The statement the remark is about, also one of the method.')],
  example: 'note "the specimen was ground by hand"',
};

export const allowRecord: OwnRecord = {
  keyword: 'allow',
  kind: 'allow',
  form: 'allow CODE [on NAME] because TEXT',
  parameters: [
    { name: 'CODE', meaning: 'the finding accepted; those of syntax, names and units cannot be' },
    { name: 'NAME', meaning: 'the statement it is accepted on; without it everywhere' },
    reason,
  ],
  prose: 'Accepts a finding, with a reason. What it accepts no longer makes a value apparent or a check fail.',
  roles: ['run', 'method'],
  repeatable: true,
  clauses: [onClause('The statement the finding is accepted on, also one of the method.')],
  context: 'step First 640..800 °C',
  example: 'allow window-overlap on First because "the shoulder belongs to both"',
};

export const ruleRecord: OwnRecord = {
  keyword: 'rule',
  kind: 'rule',
  form: 'rule CODE Q because TEXT',
  parameters: [{ name: 'CODE', meaning: 'the finding' }, { name: 'Q', meaning: 'its limit from here on' }, reason],
  prose: 'Sets the limit of a finding for this file or method. Reports list every limit that differs.',
  roles: ['run', 'method'],
  repeatable: true,
  clauses: [],
  example: 'rule programme-mismatch 5 % because "the furnace is known to lag"',
};

export const maskRecord: OwnRecord = {
  keyword: 'mask',
  kind: 'mask',
  form: 'mask RANGE because TEXT',
  parameters: [{ name: 'RANGE', meaning: 'temperatures or times', measures: ['temperature', 'time'] }, reason],
  prose: 'Takes points out of every fit, visibly. It is the only way to drop data.',
  roles: ['run'],
  repeatable: true,
  clauses: [],
  example: 'mask 611..613 °C because "somebody touched the balance"',
};

export const approvedRecord: OwnRecord = {
  keyword: 'approved',
  kind: 'approved',
  form: 'approved by TEXT on DATE digest HEX',
  parameters: [
    { name: 'TEXT', meaning: 'who approves' },
    { name: 'DATE', meaning: 'the day, `2026-10-02`' },
    { name: 'HEX', meaning: 'the digest of the record `GLOSS.approved.json` beside the gloss' },
  ],
  prose:
    'Results that a person stands for. `thermogloss approve` writes this line and the record that it names: data files by their identity, the statements in effect, the results. From then on whatever differs from the record is a finding that says from what to what. It is a record, not an electronic signature: anybody who can write the files can write a name. Who it was is told by signed commits.',
  roles: ['run'],
  repeatable: true,
  clauses: [approvedBecause],
  example: 'approved by "M. Ruiz" on 2026-10-02 digest 3f2a91c07be45d6618f0a2c49d7e5b13',
};
