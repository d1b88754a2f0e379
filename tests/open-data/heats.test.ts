import assert from 'node:assert/strict';
import { join } from 'node:path';
import { Engine } from '../../server/src/engine/engine';
import { NodeHost } from '../../server/src/host/nodeHost';
import { needOpenData } from '../support/reference';
import { heats } from './pmmaRuns';

describe('heats of reaction of measured runs, mass and heat flow in two files', function () {
  this.timeout(60_000);

  it('agree with the published values within 3 % in at least three laboratories, per mass lost', async function () {
    const folder = join(needOpenData(this), 'macfp-pmma');
    const host = new NodeHost(folder);
    const good = new Map<string, number>();
    const off: string[] = [];
    for (const { laboratory, tail, published } of heats) {
      const engine = new Engine(host);
      const path = join(folder, laboratory, 'test.gloss');
      const head = `run "${laboratory}_TGA_${tail}.csv"\n  endothermic up\njoin "${laboratory}_DSC_${tail}.csv"\n`;
      // The report integrates between onset and endset: where the rate first and last passes 10 % of its maximum.
      const limits = await engine.evaluate(
        path,
        `${head}crossing From rate = 10 % of maximum 50..520 °C\n  rising\ncrossing To rate = 10 % of maximum 50..520 °C\n  falling\n  last\n`,
      );
      const at = (name: string) => limits.results.find((r) => r.id === `${name}.temperature`)?.value?.toFixed(3);
      const s = await engine.evaluate(path, `${head}peak Reaction ${at('From')}..${at('To')} °C\n  per mass lost\n`);
      const value = s.results.find((r) => r.id === 'Reaction.enthalpy')?.value ?? NaN;
      const error = value / published - 1;
      if (process.env.GLOSS_SHOW_FINDINGS !== undefined)
        console.log(laboratory, tail, value.toFixed(1), published, (100 * error).toFixed(1));
      if (Math.abs(error) <= 0.03) good.set(laboratory, (good.get(laboratory) ?? 0) + 1);
      else off.push(`${laboratory} ${tail}: ${(100 * error).toFixed(1)} %`);
    }
    assert.ok(good.size >= 3, `within 3 %: ${[...good.keys()].join(', ')}; not: ${off.join(', ')}`);
  });
});
