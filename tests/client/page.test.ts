import assert from 'node:assert/strict';
import fc from 'fast-check';
import { curvesPage, wordsPage } from '../../client/src/curves/page';
import { viewWords } from '../../client/src/curves/viewWords';

const parts = {
  cspSource: 'https://view.example',
  nonce: 'abc123',
  script: 'https://view.example/dist/webview.js',
  style: 'https://view.example/dist/webview.css',
  language: 'en',
  title: 'Curves',
  words: null,
};

function policy(html: string): Map<string, string[]> {
  const content = /Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!;
  return new Map(
    content.split('; ').map((directive) => {
      const [name, ...sources] = directive.split(' ');
      return [name!, sources];
    }),
  );
}

// Directives and their meaning: Content Security Policy Level 3 (W3C), sections 6.1 and 6.2.
describe('the page of the curves view', () => {
  const html = curvesPage(parts);

  it('loads nothing but its own script, style and pictures made in it', () => {
    assert.deepEqual(
      [...policy(html)],
      [
        ['default-src', ["'none'"]],
        ['img-src', ['data:', 'blob:']],
        ['style-src', ['https://view.example']],
        ['font-src', ['https://view.example']],
        ['script-src', ["'nonce-abc123'"]],
      ],
    );
  });

  it('has no script of its own in the text, no inline style and no unsafe source', () => {
    assert.equal([...html.matchAll(/<script/g)].length, 1);
    assert.match(html, /<script nonce="abc123" src="[^"]+"><\/script>/);
    assert.doesNotMatch(html, /\sstyle=|<style|\son\w+=|unsafe/);
  });

  it('brings the words of a translation, which the view reads', () => {
    const words = viewWords({ 'view.copy': 'kopieren "<&>"', 'Show Log': 'Protokoll', 'view.odd': { message: 'x' } });
    const [, written] = /<body data-words="([^"]*)">/.exec(curvesPage({ ...parts, words }))!;
    const read = written!.replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)));
    assert.deepEqual(JSON.parse(read), { copy: 'kopieren "<&>"' });
    assert.equal(viewWords(undefined), null);
    assert.match(html, /<body>/);
  });

  it('names its language and has a title', () => {
    assert.match(html, /<html lang="en">/);
    assert.match(html, /<title>Curves<\/title>/);
  });
});

describe('the page in place of a gloss that is not there', () => {
  it('runs no script at all', () => {
    const html = wordsPage(parts, 'b.gloss is not there', ['It was moved.']);
    assert.deepEqual([...policy(html).keys()], ['default-src', 'style-src']);
    assert.doesNotMatch(html, /<script/);
  });

  it('shows any name as text', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('<', '>', '&', '"', "'", '/', 's', 'c', '=', ' ') }), (name) => {
        const html = wordsPage({ ...parts, title: name, language: name }, name, [name]);
        const plain = wordsPage({ ...parts, title: '', language: '' }, '', ['']);
        const tags = (text: string): number => text.split('<').length;
        assert.equal(tags(html), tags(plain));
        const shown = /<p>(.*)<\/p>/s.exec(html)![1]!;
        const read = shown.replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)));
        assert.equal(read, name);
      }),
    );
  });
});
