/**
 * Text as XML and HTML show it, in content and in quoted attributes. Characters XML 1.0 does not know (section 2.2: controls,
 * lone surrogates) become the replacement character, so that no name in a file can break a picture.
 */
export function escapeXml(text: string): string {
  return text.replace(unknown, '\uFFFD').replace(/[&<>"']/g, (c) => entities[c]);
}

const unknown =
  // eslint-disable-next-line no-control-regex
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
