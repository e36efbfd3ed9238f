import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Visitor, type ESTree, type Plugin } from 'vite';

// What the build takes out of the script, because it is nothing to run: a browser fetches it as JSON.

/** Keeps the worksheets the data they are: the page waits for them where it would have run them. */
export function sheetsAsData(): Plugin {
  return {
    name: 'sheets-as-data',
    apply: 'build',
    enforce: 'pre',
    load: {
      filter: { id: /\/worksheets\/\w+\.json$/ },
      async handler(id) {
        const source = JSON.stringify(JSON.parse(await readFile(id, 'utf8')));
        const file = this.emitFile({ type: 'asset', name: basename(id), source });
        const code = `export default await (await fetch(import.meta.ROLLUP_FILE_URL_${file})).json();`;
        return { code, moduleType: 'js' };
      },
    },
  };
}

/** Takes what only a reader of the sources needs out of markup and styles, which a minifier keeps as text. */
export function compactTemplates(): Plugin {
  return {
    name: 'compact-templates',
    apply: 'build',
    enforce: 'pre',
    transform: {
      filter: { id: /\/src\/ui\/.*\.ts$/ },
      handler: (code) => ({
        code: code
          .replaceAll(/\bcss`([^`$\\]*)`/g, (_, text: string) => `css\`${compactStyles(text)}\``)
          // To HTML one line end is as good as a line end and ten spaces.
          .replaceAll(/\n[ \t]+/g, '\n'),
        map: null,
      }),
    },
  };
}

/** Leaves the needed spaces of styles, and no comments. */
function compactStyles(styles: string): string {
  return styles
    .trim()
    .replaceAll(/\/\*.*?\*\//gs, '')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/ ?([{};,]) ?/g, '$1')
    .replaceAll(': ', ':')
    .replaceAll(';}', '}');
}

// What is shorter is dearer to point at than to leave where it stands; a file that is shorter, to fetch.
const FEW_WORDS = 2;
const SHORT_DATA = 30;
const FEW_TEXTS = 10;

/**
 * Puts the sentences, the markup, the styles and the tables of each built script into a file beside it, of the same
 * name. The thread that writes has too few to wait for.
 */
export function textsAsData(): Plugin {
  const files = new Set<string>();
  return {
    name: 'texts-as-data',
    apply: 'build',
    generateBundle: {
      // Before the page is written, which names the files.
      order: 'pre',
      handler(_, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type !== 'chunk') continue;
          const { script, parts, data } = withoutData(file.code, this.parse(file.code));
          if (parts.length + data.length < FEW_TEXTS) continue;
          file.code = script;
          const fileName = dataOf(file.fileName);
          this.emitFile({ type: 'asset', fileName, source: JSON.stringify([parts, data]) });
          files.add(fileName);
        }
      },
    },
    // What the first screen needs is fetched beside its script, and not once that runs.
    transformIndexHtml: {
      order: 'post',
      handler(_, { bundle = {}, chunk }) {
        const first = new Set<string>();
        const add = (name: string): void => {
          const file = bundle[name];
          if (first.has(name) || file?.type !== 'chunk') return;
          first.add(name);
          file.imports.forEach(add);
        };
        if (chunk) add(chunk.fileName);
        return [...first]
          .map(dataOf)
          .filter((name) => files.has(name))
          .map((name) => ({
            tag: 'link',
            attrs: { rel: 'preload', as: 'fetch', crossorigin: '', href: `/${name}` },
          }));
      },
    },
  };
}

const dataOf = (script: string): string => script.replace(/js$/, 'json');

/** A script without its data: the parts of its templates, and everything else. */
export function withoutData(code: string, tree: ESTree.Program) {
  const name = `$${'_'.repeat(Math.max(...[...code.matchAll(/\$_*/g)].map(([it]) => it.length), 1))}`;
  const parts = new Places(`${name}p`);
  const data = new Places(`${name}d`);
  const script = new Changed(code);
  const keys = new Set<unknown>();
  const tagged = new Set<unknown>();
  let depth = 0;

  function inward(): void {
    depth++;
  }
  function outward(): void {
    depth--;
  }

  /** The tag of tag`a${b}c` is called with the same parts each time, and with what stands between them. */
  function takeTemplate(
    { quasis, expressions, end }: ESTree.TemplateLiteral,
    from: number,
    by: string,
  ): void {
    const raw = quasis.map(({ value }) => value.raw);
    if (raw.some((part) => part.includes('\\'))) return;
    by += `(${parts.of(raw)}`;
    for (const between of expressions) {
      const isList = between.type === 'SequenceExpression';
      script.put(from, between.start, `${by},${isList ? '(' : ''}`);
      from = between.end;
      by = isList ? ')' : '';
    }
    script.put(from, end, `${by})`);
  }

  function takeData(node: ESTree.Expression): void {
    const value = valueOf(node);
    const isTaken =
      typeof value === 'string'
        ? hasWords(value)
        : depth === 0 && typeof value === 'object' && JSON.stringify(value).length > SHORT_DATA;
    if (isTaken && !keys.has(node)) script.put(node.start, node.end, data.of(value));
  }

  function keepKey({ key, computed }: { key: ESTree.PropertyKey; computed: boolean }): void {
    if (!computed) keys.add(key);
  }

  new Visitor({
    FunctionDeclaration: inward,
    FunctionExpression: inward,
    ArrowFunctionExpression: inward,
    'FunctionDeclaration:exit': outward,
    'FunctionExpression:exit': outward,
    'ArrowFunctionExpression:exit': outward,
    Property: keepKey,
    MethodDefinition: keepKey,
    PropertyDefinition: keepKey,
    TaggedTemplateExpression({ tag, quasi }) {
      tagged.add(quasi);
      if (tag.type === 'Identifier') takeTemplate(quasi, tag.end, '');
    },
    TemplateLiteral(node) {
      if (tagged.has(node)) return;
      if (node.expressions.length === 0) takeData(node);
      else if (hasWords(node.quasis.map(({ value }) => value.raw).join('')))
        takeTemplate(node, node.start, `${name}t`);
    },
    Literal: takeData,
    ArrayExpression: takeData,
    ObjectExpression: takeData,
  }).visit(tree);

  const head =
    `let[${name}p,${name}d]=await(await fetch(import.meta.url.replace(/js$/,"json"))).json(),` +
    `${name}t=String.raw;for(let e of ${name}p)e.raw=e;`;
  return { script: head + script.text(), parts: parts.all, data: data.all };
}

const hasWords = (text: string): boolean => text.split(/\s+/).length >= FEW_WORDS;

/** What a part of a script stands for, if JSON can say it; undefined if not. */
function valueOf(node: ESTree.Expression): unknown {
  switch (node.type) {
    case 'Literal':
      return typeof node.value === 'string' || typeof node.value === 'number'
        ? node.value
        : undefined;
    case 'TemplateLiteral':
      return node.expressions.length === 0
        ? (node.quasis[0]?.value.cooked ?? undefined)
        : undefined;
    case 'UnaryExpression': {
      const value = valueOf(node.argument);
      if (typeof value !== 'number') return undefined;
      if (node.operator === '!') return !value;
      return node.operator === '-' && value !== 0 ? -value : undefined;
    }
    case 'ArrayExpression': {
      const values = node.elements.map((one) =>
        one === null || one.type === 'SpreadElement' ? undefined : valueOf(one),
      );
      return values.includes(undefined) ? undefined : values;
    }
    case 'ObjectExpression': {
      const values = new Map<string, unknown>();
      for (const property of node.properties) {
        if (property.type !== 'Property' || property.computed) return undefined;
        const { key } = property;
        const value = valueOf(property.value);
        const name =
          key.type === 'Identifier'
            ? key.name
            : key.type === 'Literal'
              ? String(key.value)
              : '__proto__';
        if (value === undefined || name === '__proto__') return undefined;
        values.set(name, value);
      }
      return Object.fromEntries(values);
    }
    default:
      return undefined;
  }
}

/** What was taken out, each thing once, and the place of each. */
class Places {
  readonly all: unknown[] = [];
  private readonly places = new Map<string, number>();
  private readonly name: string;

  constructor(name: string) {
    this.name = name;
  }

  of(value: unknown): string {
    const key = JSON.stringify(value);
    const place = this.places.get(key) ?? this.all.push(value) - 1;
    this.places.set(key, place);
    return `${this.name}[${String(place)}]`;
  }
}

/** A script in which stretches are changed, from its beginning on. */
class Changed {
  private readonly code: string;
  private readonly changes: { from: number; to: number; by: string }[] = [];

  constructor(code: string) {
    this.code = code;
  }

  /** Puts text in the place of what stands there; within what was already taken, nothing is changed. */
  put(from: number, to: number, by: string): void {
    // `return"a"` needs no space, and `return a` does.
    const space = /[\w$]/.test(this.code[from - 1] ?? '') && /^[\w$]/.test(by) ? ' ' : '';
    this.changes.push({ from, to, by: space + by });
  }

  text(): string {
    let text = '';
    let at = 0;
    for (const { from, to, by } of this.changes.sort((a, b) => a.from - b.from || b.to - a.to)) {
      if (from < at) continue;
      text += this.code.slice(at, from) + by;
      at = to;
    }
    return text + this.code.slice(at);
  }
}
