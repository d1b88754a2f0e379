import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { say } from '../../cli/fakeTerminal';
import type { TemporaryRepository } from '../../revisions/support/repository';
import { limestoneReport, limestoneRepository } from '../../support/exampleReport';
import { broken, closeBrowser, opened, pagesOf, papers, type Paper } from './printedPage';

const axe = readFileSync(createRequire(__filename).resolve('axe-core/axe.min.js'), 'utf8');

/** Serious and critical findings of axe, as text. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: run } = window as unknown as { axe: { run(options: object): Promise<AxeResults> } };
    const { violations: found } = await run.run({ resultTypes: ['violations'] });
    return found
      .filter((v) => v.impact === 'serious' || v.impact === 'critical')
      .map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`);
  });
}

describe('a report and a comparison as pages', () => {
  let repository: TemporaryRepository;
  let report: string;
  let comparison: string;

  before(async () => {
    repository = limestoneRepository();
    report = await limestoneReport(repository, 'html');
    const text = readFileSync(join('examples', 'limestone', 'vq217-1.gloss'), 'utf8');
    repository.write({ 'vq217-1.gloss': `${text}\noverride step First 600..842 °C\n  because "invented"\n` });
    const said = await say(['diff', 'HEAD', '--all', '--format', 'html'], { cwd: repository.path });
    assert.equal(said.code, 1);
    comparison = said.out;
  });
  after(async () => {
    repository.remove();
    await closeBrowser();
  });

  it('have nothing serious that axe finds, though it finds a text that is too pale there', async () => {
    for (const html of [report, comparison]) {
      const page = await opened(html);
      assert.deepEqual(await violations(page), []);
      await page.addStyleTag({ content: 'td { color: #bbb !important; }' });
      assert.match((await violations(page)).join('\n'), /^color-contrast/m);
      await page.close();
    }
  });

  it('have nothing serious that axe finds in the dark either', async () => {
    const page = await opened(comparison);
    await page.emulateMedia({ colorScheme: 'dark' });
    assert.deepEqual(await violations(page), []);
    await page.close();
  });

  for (const paper of Object.keys(papers) as Paper[]) {
    it(`tear no row, figure or fact and leave no heading alone on ${paper}`, async () => {
      for (const html of [report, comparison]) {
        const page = await opened(html);
        const { torn, alone, sheets } = await broken(page, papers[paper]);
        assert.deepEqual({ torn, alone }, { torn: [], alone: [] });
        if (html === report) assert.ok(sheets > 5, `${sheets}`);
        await page.close();
      }
    });

    it(`come to as many pages of a PDF on ${paper} as sheets were counted`, async () => {
      const page = await opened(report);
      const { sheets } = await broken(page, papers[paper]);
      const pdf = await page.pdf({ format: paper });
      assert.equal(pdf.subarray(0, 5).toString('latin1'), '%PDF-');
      assert.equal(pagesOf(pdf), sheets);
      await page.close();
    });
  }

  it('are found torn and alone where nothing keeps them together', async () => {
    const page = await opened(report.replace(/break-(inside|after|before): avoid/g, 'color: inherit'));
    const torn: string[] = [];
    const alone: string[] = [];
    // Where a sheet ends is chance: on some of these it ends below a heading.
    for (const height of [264, 250, 240, 230, 220, 210]) {
      const found = await broken(page, { width: papers.A4.width, height });
      torn.push(...found.torn);
      alone.push(...found.alone);
    }
    assert.ok(
      torn.some((t) => t.startsWith('TR ')),
      torn.join('\n'),
    );
    assert.ok(alone.length > 0);
    await page.close();
  });

  it('are read on paper in letters of at least 7 points, pictures among them', async () => {
    const page = await opened(report);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: Math.round((papers.A4.width / 25.4) * 96), height: 900 });
    const small = await page.evaluate(() => {
      const walker = document.createTreeWalker(document.querySelector('main')!, NodeFilter.SHOW_TEXT);
      const found: string[] = [];
      while (walker.nextNode()) {
        const { parentElement: parent, textContent: text } = walker.currentNode;
        if (parent === null || text === null || text.trim() === '' || !parent.checkVisibility()) continue;
        const svg = parent.closest('svg');
        const scale = svg === null ? 1 : svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
        const points = parseFloat(getComputedStyle(parent).fontSize) * scale * 0.75;
        if (points < 7 && parent.tagName !== 'title' && parent.tagName !== 'desc') {
          found.push(`${points.toFixed(1)} pt: ${text.trim().slice(0, 40)}`);
        }
      }
      return found;
    });
    assert.deepEqual(small, []);
    await page.close();
  });
});
