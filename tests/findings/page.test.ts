import assert from 'node:assert/strict';
import { codes } from '../../server/src/findings/codes';
import { findingPages, limitText, pageName } from '../../server/src/findings/page';
import { findingTable } from '../../server/src/findings/table';

describe('the pages of the findings', () => {
  const pages = findingPages();

  it('are one a code, an index and the table of rules', () => {
    assert.equal(pages.size, codes.length + 2);
    for (const code of codes) assert.ok(pages.has(pageName(code)), code);
  });

  it('print each limit, its meaning and the line that sets it', () => {
    for (const record of findingTable.values()) {
      const page = pages.get(pageName(record.code)) ?? '';
      for (const limit of record.limits) {
        assert.ok(page.includes(`| ${limitText(limit)} | ${limit.meaning} |`), record.code);
      }
      if (record.limits.length > 0) {
        assert.ok(page.includes(`rule ${record.code} ${limitText(record.limits[0])} because`), record.code);
      }
    }
  });

  it('hold title, explanation and both examples', () => {
    for (const record of findingTable.values()) {
      const page = pages.get(pageName(record.code)) ?? '';
      assert.ok(page.startsWith(`# ${record.title}\n`));
      assert.ok(page.includes(record.fires.gloss) && page.includes(record.silent.gloss), record.code);
    }
  });

  it('link only to pages that exist', () => {
    for (const [name, text] of pages) {
      for (const [, target] of text.matchAll(/\]\(([^)]+\.md)\)/g))
        assert.ok(pages.has(target), `${name} to ${target}`);
    }
  });

  it('say of a caution that it replaces no licensed practice', () => {
    for (const code of codes.filter((c) => c.startsWith('caution-'))) {
      assert.match(pages.get(pageName(code)) ?? '', /local codes/i, code);
    }
  });
});
