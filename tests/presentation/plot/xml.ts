/**
 * A strict reader of XML 1.0 as far as pictures use it: one root, tags that match, attributes quoted and given once, five
 * named entities and numbered ones, no stray `<` or `&`, no forbidden character. Says what is wrong; null where nothing is.
 * Written for the tests, from the recommendation (sections 2.2, 2.4, 3.1, 4.1), apart from the writer it judges.
 */
export function xmlProblem(text: string): string | null {
  const forbidden = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u.exec(text);
  if (forbidden !== null) return `character ${forbidden[0].codePointAt(0)?.toString(16)} at ${forbidden.index}`;
  const open: string[] = [];
  let roots = 0;
  let at = /^<\?xml version="1\.0" encoding="UTF-8"\?>\n?/.exec(text)?.[0].length ?? 0;
  while (at < text.length) {
    const rest = text.slice(at);
    const tag = /^<([A-Za-z][\w:-]*)((?:\s+[A-Za-z][\w:.-]*\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>/.exec(rest);
    const close = /^<\/([A-Za-z][\w:-]*)\s*>/.exec(rest);
    const words = /^[^<]+/.exec(rest);
    if (tag !== null) {
      if (open.length === 0 && ++roots > 1) return `a second root at ${at}`;
      const names = [...tag[2].matchAll(/([A-Za-z][\w:.-]*)\s*=/g)].map((m) => m[1]);
      if (new Set(names).size < names.length) return `an attribute twice at ${at}`;
      const value = entityProblem(tag[2]);
      if (value !== null) return `${value} at ${at}`;
      if (tag[3] === '') open.push(tag[1]);
      at += tag[0].length;
    } else if (close !== null) {
      if (open.pop() !== close[1]) return `${close[0]} closes another tag at ${at}`;
      at += close[0].length;
    } else if (words !== null) {
      if (open.length === 0 && words[0].trim() !== '') return `text outside the root at ${at}`;
      const value = entityProblem(words[0]);
      if (value !== null) return `${value} at ${at}`;
      at += words[0].length;
    } else return `no tag at ${at}: ${rest.slice(0, 20)}`;
  }
  if (open.length > 0) return `${open.join(', ')} not closed`;
  return roots === 1 ? null : 'no root';
}

function entityProblem(text: string): string | null {
  const stray = /&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[\da-fA-F]+);)/.exec(text);
  return stray === null ? null : `a stray & (${text.slice(stray.index, stray.index + 10)})`;
}
