import assert from 'node:assert/strict';
import { statusText, type StatusInput } from '../../client/src/status/statusText';

const usual: StatusInput = {
  server: 'running',
  gloss: { computing: false, errors: 0, warnings: 0, text: '11 results' },
  hints: 'on',
  helped: false,
  inline: true,
};

const same = (message: string): string => message;

describe('the status item', () => {
  for (const [what, input, text] of [
    ['a gloss that stands', {}, '$(check) 11 results'],
    [
      'warnings',
      { gloss: { ...usual.gloss!, warnings: 1, text: '11 results, 1 warning' } },
      '$(warning) 11 results, 1 warning',
    ],
    ['errors', { gloss: { ...usual.gloss!, errors: 2, warnings: 1, text: '2 errors' } }, '$(error) 2 errors'],
    ['work under way', { gloss: { ...usual.gloss!, computing: true } }, '$(sync) computing'],
    ['a server that starts', { server: 'starting', gloss: null }, '$(sync) starting'],
    ['a server that was lost', { server: 'lost' }, '$(sync) starting'],
    ['no server', { server: 'failed' }, '$(error) not running'],
  ] as const) {
    it(`tells of ${what}`, () => {
      assert.equal(statusText({ ...usual, ...input } as StatusInput, same).text, text);
    });
  }

  it('helps once where the editor shows no inlay hints', () => {
    const first = statusText({ ...usual, hints: 'off' }, same);
    assert.equal(first.help, true);
    assert.match(first.text, /no inline results/);
    const later = statusText({ ...usual, hints: 'off', helped: true }, same);
    assert.equal(later.help, false);
    assert.equal(later.text, '$(check) 11 results');
    assert.match(later.lines.join(' '), /editor\.inlayHints\.enabled/, 'the reason stays in the tooltip');
  });

  it('says nothing of hints where they are shown, also on a key only', () => {
    for (const hints of ['on', 'onUnlessPressed', 'offUnlessPressed']) {
      const { help, lines } = statusText({ ...usual, hints }, same);
      assert.equal(help, false);
      assert.deepEqual(lines, ['11 results']);
    }
  });

  it('says that inline results were switched off here', () => {
    assert.match(statusText({ ...usual, inline: false }, same).lines.join(' '), /switched off/);
  });

  it('has every word of its own translated', () => {
    const inputs: StatusInput[] = (['running', 'starting', 'failed', 'lost'] as const).flatMap((server) =>
      [usual.gloss, null].flatMap((gloss) =>
        ['on', 'off'].flatMap((hints) =>
          [true, false].map((inline) => ({ server, gloss, hints, helped: false, inline })),
        ),
      ),
    );
    for (const input of inputs) {
      const { text, lines } = statusText(
        { ...input, gloss: input.gloss && { ...input.gloss, text: '' } },
        (m) => `⟦${m.length}⟧`,
      );
      const rest = [text, ...lines].join('').replace(/⟦\d+⟧|\$\([a-z]+\)|\s/g, '');
      assert.equal(rest, '');
    }
  });
});
