import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { NodeOutside } from '../../../server/src/lsp/nodeOutside';
import {
  compareMethod,
  type CompareAnswer,
  type ComparedGlossRows,
  type ComparedRow,
  type ComparedWith,
  type Comparison,
  type OldTextParams,
} from '../../../server/src/protocol/compare';
import { TemporaryRepository } from '../../revisions/support/repository';
import { startClient, type TestClient } from './client';
import { lossRun } from './lossRun';

// Invented data, computed from a formula; no laboratory measured this.

export const gloss = 'run "a.csv"\n  hazard "none: invented"\n\nstep First 200..450 °C\n\nresidue Rest at 600 °C\n';
/** The loss is centred on 330 °C: a window that ends in it loses a part. */
export const narrower = gloss.replace('200..450', '200..335');
export const head: ComparedWith = { kind: 'revision', name: 'HEAD' };

/** A repository with one commit (`a.gloss` and its run), and a client of a server on it; made anew for each test. */
export class CompareDesk {
  repository!: TemporaryRepository;
  client!: TestClient;
  outside!: NodeOutside;

  /** Hooks of the suite that it is called in. */
  static inSuite(): CompareDesk {
    const made = new CompareDesk();
    beforeEach(() => made.open());
    afterEach(() => {
      assert.deepEqual(made.client.logged, []);
      made.client.close();
      made.repository.remove();
    });
    return made;
  }

  private async open(): Promise<void> {
    this.repository = TemporaryRepository.make();
    this.repository.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss });
    this.outside = new NodeOutside();
    this.client = await startClient(this.outside, {}, [this.root]);
  }

  /** Address of the folder. */
  get root(): string {
    return pathToFileURL(this.repository.path).href;
  }

  ask(uri: string, by: ComparedWith): Promise<CompareAnswer> {
    return this.client.connection.sendRequest(compareMethod.compare, { uri, with: by });
  }

  async compared(uri: string, by: ComparedWith = head): Promise<Comparison> {
    const answer = await this.ask(uri, by);
    assert.ok(answer.ok, answer.ok ? '' : answer.message);
    return answer.comparison;
  }

  async old(params: OldTextParams | null | undefined): Promise<string | null> {
    assert.ok(params, 'there is an old text');
    const answer: { text: string } | null = await this.client.connection.sendRequest(compareMethod.oldText, params);
    return answer?.text ?? null;
  }
}

export function only({ glosses }: Comparison): ComparedGlossRows {
  assert.equal(glosses.length, 1);
  return glosses[0];
}

export function rowOf(rows: ComparedGlossRows, id: string): ComparedRow {
  const found = [...rows.rows, ...rows.further].find((r) => r.id === id);
  assert.ok(found, `${id} among ${rows.rows.map((r) => r.id).join(' ')}`);
  return found;
}
