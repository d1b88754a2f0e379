export interface PageParts {
  /** Source of the view's own files for the content policy. */
  readonly cspSource: string;
  readonly nonce: string;
  readonly script: string;
  readonly style: string;
  readonly language: string;
  readonly title: string;
  /** Words of the view in another language, by their keys; null: its own. */
  readonly words: Readonly<Record<string, string>> | null;
}

/** The page of the curves view. Nothing may load but its own script and style; pictures are made in it. */
export function curvesPage(parts: PageParts): string {
  return page(
    parts,
    [
      `img-src data: blob:`,
      `style-src ${parts.cspSource}`,
      `font-src ${parts.cspSource}`,
      `script-src 'nonce-${parts.nonce}'`,
    ],
    `<link rel="stylesheet" href="${attribute(parts.style)}">`,
    `<div id="view"></div>\n<script nonce="${attribute(parts.nonce)}" src="${attribute(parts.script)}"></script>`,
    parts.words === null ? '' : ` data-words="${attribute(JSON.stringify(parts.words))}"`,
  );
}

/** A page with a few words and no script, for a gloss that is not there. */
export function wordsPage(
  parts: Omit<PageParts, 'nonce' | 'script' | 'words'>,
  heading: string,
  lines: readonly string[],
): string {
  const body = [`<h1>${text(heading)}</h1>`, ...lines.map((line) => `<p>${text(line)}</p>`)].join('\n');
  const style = `<link rel="stylesheet" href="${attribute(parts.style)}">`;
  return page(parts, [`style-src ${parts.cspSource}`], style, `<main class="words">\n${body}\n</main>`);
}

function page(
  parts: Pick<PageParts, 'language' | 'title'>,
  sources: readonly string[],
  head: string,
  body: string,
  attributes = '',
): string {
  const policy = [`default-src 'none'`, ...sources].join('; ');
  return `<!DOCTYPE html>
<html lang="${attribute(parts.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(parts.title)}</title>
${head}
</head>
<body${attributes}>
${body}
</body>
</html>
`;
}

/** Names of files and glosses are anybody's text. */
function text(value: string): string {
  return value.replace(/[&<>]/g, (c) => `&#${c.charCodeAt(0)};`);
}

function attribute(value: string): string {
  return value.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);
}
