import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defaultSettings, settingsFrom } from '../../server/src/features/settings';
import { sourceFiles } from '../architecture/imports';

interface Command {
  readonly command: string;
  readonly title: string;
  readonly category: string;
  readonly icon?: string;
}

interface MenuItem {
  readonly command: string;
  readonly when: string;
  readonly group?: string;
}

interface Setting {
  readonly type: string;
  readonly default: unknown;
  readonly enum?: readonly string[];
  readonly enumDescriptions?: readonly string[];
  readonly markdownDescription: string;
}

interface Step {
  readonly id: string;
  readonly description: string;
  readonly media: { readonly svg: string; readonly altText: string };
  readonly completionEvents: readonly string[];
}

interface Manifest {
  readonly main: string;
  readonly browser: string;
  readonly icon: string;
  readonly keywords: readonly string[];
  readonly activationEvents: readonly string[];
  readonly engines: { readonly vscode: string };
  readonly capabilities: {
    readonly untrustedWorkspaces: { readonly supported: unknown };
    readonly virtualWorkspaces: { readonly supported: unknown; readonly description: string };
  };
  readonly contributes: {
    readonly languages: readonly {
      readonly id: string;
      readonly extensions: readonly string[];
      readonly icon: object;
    }[];
    readonly commands: readonly Command[];
    readonly menus: Readonly<Record<string, readonly MenuItem[]>>;
    readonly keybindings: readonly { readonly command: string; readonly key: string; readonly when: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, Setting>> };
    readonly walkthroughs: readonly { readonly steps: readonly Step[] }[];
  };
}

const text = readFileSync('package.json', 'utf8');
const manifest = JSON.parse(text) as Manifest;
const words = JSON.parse(readFileSync('client/package.nls.json', 'utf8')) as Readonly<Record<string, string>>;
const { contributes } = manifest;
const sources = sourceFiles(join('client', 'src')).map((path) => readFileSync(path, 'utf8'));

describe('the words of the manifest', () => {
  it('are all in client/package.nls.json, and no others are there', () => {
    const used = [...new Set([...text.matchAll(/"%([^"%]+)%"/g)].map((m) => m[1]!))].sort();
    assert.ok(used.length > 40, 'the keys were read');
    assert.deepEqual(Object.keys(words).sort(), used);
    assert.deepEqual(
      Object.values(words).filter((w) => w.trim() === ''),
      [],
    );
  });

  // Every text that the editor shows to people is behind a key: a translation can reach it.
  it('stand nowhere else: titles, descriptions and pictures in words are keys', () => {
    const shown = /"(?:title|description|markdownDescription|altText|label)": "([^"]*)"/g;
    const bare = [...text.slice(text.indexOf('"contributes"')).matchAll(shown)].map((m) => m[1]!);
    assert.deepEqual(
      bare.filter((w) => !/^%.*%$/.test(w)),
      ['Thermogloss'],
      'only the name itself',
    );
    const described = Object.values(contributes.configuration.properties).flatMap((s) => s.enumDescriptions ?? []);
    assert.deepEqual(
      described.filter((w) => !/^%.*%$/.test(w)),
      [],
    );
  });

  it('have no emoji', () => {
    for (const word of Object.values(words)) assert.doesNotMatch(word, /\p{Extended_Pictographic}/u);
  });
});

describe('the commands', () => {
  const declared = contributes.commands.map((c) => c.command).sort();

  it('that are declared are those that the client registers', () => {
    const activate = readFileSync(join('client', 'src', 'activate.ts'), 'utf8');
    const registered = [...activate.matchAll(/^ {4}\['(\w+)', /gm)].map((m) => `thermogloss.${m[1]!}`).sort();
    assert.deepEqual(declared, registered);
    assert.ok(contributes.commands.every((c) => c.category === 'Thermogloss'));
  });

  it('that menus, keys, steps and the client name are declared', () => {
    const named = [
      ...Object.values(contributes.menus).flatMap((items) => items.map((i) => i.command)),
      ...contributes.keybindings.map((k) => k.command),
      ...contributes.walkthroughs.flatMap((w) =>
        w.steps.flatMap((s) => s.completionEvents.map((e) => e.replace(/^on\w+:(?:command:)?/, ''))),
      ),
      ...Object.values(words).flatMap((w) => [...w.matchAll(/\(command:([\w.]+)\)/g)].map((m) => m[1]!)),
    ];
    assert.deepEqual(
      named.filter((c) => !declared.includes(c)),
      [],
    );
  });

  it('put one icon into the title of a gloss, and one into that of its curves', () => {
    const icons = contributes.menus['editor/title']!.filter((i) => i.group?.startsWith('navigation'));
    const texts = icons.filter((i) => i.when.includes('editorLangId'));
    assert.deepEqual(
      texts.map((i) => i.command),
      ['thermogloss.showCurves'],
    );
    const views = icons.filter((i) => i.when.includes('activeWebviewPanelId'));
    assert.deepEqual(views.map((i) => i.when.replace(/.*&& /, '')).sort(), [
      '!thermogloss.curvesKept',
      'thermogloss.curvesKept',
    ]);
    assert.equal(icons.length, texts.length + views.length);
  });

  it('are offered for a revision in a diff editor nowhere', () => {
    for (const item of contributes.menus['editor/title']!.filter((i) => i.when.includes('editorLangId'))) {
      assert.match(item.when, /resourceScheme != git/);
    }
  });

  it('that write are offered for no revision in the palette', () => {
    for (const command of ['thermogloss.approve', 'thermogloss.evaluate']) {
      const [item] = contributes.menus['commandPalette']!.filter((i) => i.command === command);
      assert.match(item?.when ?? '', /resourceScheme != git && resourceScheme != thermogloss-revision$/, command);
    }
  });

  it('have a key to show or hide all inline results, in a gloss only', () => {
    const [key] = contributes.keybindings;
    assert.equal(key?.command, 'thermogloss.toggleInline');
    assert.match(key?.when ?? '', /editorLangId == gloss/);
  });
});

describe('the settings', () => {
  const { properties } = contributes.configuration;

  it('have the defaults that the server has, and the server reads them', () => {
    const sent = {
      refresh: 'onSave',
      inline: { results: false, verdicts: false, windows: false },
      lenses: true,
      mostFindings: 7,
    };
    const defaults: Record<string, unknown> = { ...flat(defaultSettings) };
    const read: Record<string, unknown> = { ...flat(settingsFrom(sent)) };
    for (const [name, value] of Object.entries(flat(sent))) {
      assert.deepEqual(properties[`thermogloss.${name}`]?.default, defaults[name], name);
      assert.deepEqual(read[name], value, name);
    }
    assert.deepEqual(
      Object.keys(flat(sent)).sort(),
      Object.keys(defaults).sort(),
      'no setting of the server is left out',
    );
  });

  it('that the client reads are declared, with the same default', () => {
    const read = sources.flatMap((s) => [
      ...s.matchAll(/\.get<\w+>\('((?:curves|export)\.\w+)',\s*('\w+'|true|false)\)/g),
    ]);
    assert.deepEqual(read.map((m) => m[1]!).sort(), ['curves.abscissa', 'curves.followCaret', 'export.theme']);
    for (const [, name, value] of read) {
      assert.equal(JSON.stringify(properties[`thermogloss.${name!}`]?.default), value!.replaceAll("'", '"'));
    }
  });

  it('are described one by one, each choice too', () => {
    for (const [name, setting] of Object.entries(properties)) {
      assert.match(setting.markdownDescription, /^%setting\./, name);
      if (setting.enum === undefined) continue;
      assert.ok(setting.enum.includes(String(setting.default)), name);
      if (name !== 'thermogloss.trace.server')
        assert.equal(setting.enumDescriptions?.length, setting.enum.length, name);
    }
  });

  it('leave code lenses off and inline results on', () => {
    assert.equal(properties['thermogloss.lenses']?.default, false);
    for (const kind of ['results', 'verdicts', 'windows']) {
      assert.equal(properties[`thermogloss.inline.${kind}`]?.default, true);
    }
  });
});

describe('the extension', () => {
  it('wakes up for its language, its commands and its view, and at no start of the editor', () => {
    // From VS Code 1.74 on, languages and commands of the manifest need no event of their own.
    assert.deepEqual(manifest.activationEvents, ['onWebviewPanel:thermogloss.curves']);
    assert.match(manifest.engines.vscode, /^\^1\.(?:7[4-9]|[89]\d|\d{3})\.0$/);
  });

  it('works in a folder that is not trusted, and says what does not work where files are elsewhere', () => {
    assert.equal(manifest.capabilities.untrustedWorkspaces.supported, true);
    assert.equal(manifest.capabilities.virtualWorkspaces.supported, 'limited');
    assert.match(manifest.capabilities.virtualWorkspaces.description, /^%.*%$/);
  });

  it('brings every picture and file that the manifest names', () => {
    const named = [...text.matchAll(/"(?:\.\/)?((?:client\/media|syntaxes)\/[^"*]+)"/g)].map((m) => m[1]!);
    assert.ok(named.length >= 10);
    assert.deepEqual(
      named.filter((path) => !existsSync(path)),
      [],
    );
  });

  it('has an icon of at least 128 by 128 pixels', () => {
    const png = readFileSync(manifest.icon);
    // PNG (ISO/IEC 15948), 5.2 signature and 11.2.2 IHDR: width and height as 32-bit numbers from byte 16.
    assert.equal(png.subarray(1, 4).toString('latin1'), 'PNG');
    assert.equal(png.readUInt32BE(16), png.readUInt32BE(20));
    assert.ok(png.readUInt32BE(16) >= 128);
  });

  it('has one walkthrough of at most five steps, each with something to do and a picture in the colours of the theme', () => {
    assert.equal(contributes.walkthroughs.length, 1);
    const { steps } = contributes.walkthroughs[0]!;
    assert.ok(steps.length >= 1 && steps.length <= 5);
    for (const step of steps) {
      const description = words[step.description.replaceAll('%', '')]!;
      assert.match(description, /\]\(command:thermogloss\.\w+\)$/, step.id);
      const svg = readFileSync(step.media.svg, 'utf8');
      assert.match(svg, /var\(--vscode-/, step.id);
      // A colour stands only as what is used where the theme has none.
      assert.doesNotMatch(svg.replace(/var\((?:[^()]|\([^()]*\))*\)/g, ''), /#[0-9a-f]{3,6}|<script|href/i, step.id);
    }
  });

  it('invents no address: no repository, home page or badge that nobody has named', () => {
    assert.doesNotMatch(text, /https?:/);
  });
});

function flat(value: object, before = ''): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]: [string, unknown]) =>
      typeof inner === 'object' && inner !== null
        ? Object.entries(flat(inner, `${before}${key}.`))
        : [[`${before}${key}`, inner]],
    ),
  );
}
