import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { say, type Said } from '../../cli/fakeTerminal';

export interface HistoryJson {
  readonly name: string;
  readonly gloss: string;
  readonly end: string;
  readonly rows: readonly {
    readonly revision: { readonly commit: string; readonly date: string; readonly author: string } | null;
    readonly gloss: string;
    readonly was: string | null;
    readonly id: string;
    readonly wasId: string | null;
    readonly result: {
      readonly value: number | null;
      readonly uncertainty: number | null;
      readonly unit: string;
    } | null;
    readonly reason: string | null;
    readonly status: string;
    readonly moved: boolean;
    readonly merge: boolean;
    readonly again: string | null;
    readonly difference: number | null;
    readonly remark: string | null;
    readonly causes: readonly { readonly change: string; readonly effect: number | null }[];
  }[];
}

const validate = new Ajv().compile(
  JSON.parse(readFileSync('server/src/presentation/history.schema.json', 'utf8')) as object,
);

/** `history` in JSON, which keeps its schema. */
export async function historyJson(cwd: string, ...words: readonly string[]): Promise<HistoryJson> {
  const said = await say(['history', ...words, '--format', 'json'], { cwd });
  assert.equal(said.code, 0, said.error);
  const model = JSON.parse(said.out) as HistoryJson;
  assert.ok(validate(model), JSON.stringify(validate.errors));
  return model;
}

export function historySaid(cwd: string, ...words: readonly string[]): Promise<Said> {
  return say(['history', ...words], { cwd });
}
