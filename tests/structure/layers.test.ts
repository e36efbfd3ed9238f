import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/** A folder of `src`, and the folders it may import. */
const LAYERS = new Map<string, readonly string[]>([
  ['units', []],
  ['trade', ['units']],
  ['graph', ['units']],
  ['formula', ['units', 'graph', 'trade']],
  ['notebook', ['units']],
  ['worksheet', ['units', 'graph', 'formula', 'notebook']],
  ['csv', ['units']],
  ['intake', ['units', 'csv', 'notebook']],
  ['output', ['units', 'csv', 'notebook', 'worksheet']],
  ['storage', ['units', 'notebook']],
  ['offline', []],
  ['ui', ['units', 'csv', 'notebook', 'worksheet', 'intake', 'output']],
  ['page', ['units', 'notebook', 'worksheet', 'intake', 'output', 'ui']],
]);

/** The only files that know every layer. */
const ROOTS = ['main.ts', 'cli.ts'];

/** A package, and the one layer that may import it. */
const HOMES = new Map([
  ['mathjs', 'formula'],
  ['papaparse', 'csv'],
  ['idb-keyval', 'storage'],
  ['lit', 'ui'],
  // The addresses of our threads, which the build gives.
  ['virtual:reading-thread', 'main.ts'],
  ['virtual:writing-thread', 'main.ts'],
  ['@fontsource/barlow-condensed', 'ui'],
  ['@fontsource/barlow-semi-condensed', 'ui'],
]);

/** Folders of `src` that hold no code. */
const NO_CODE = ['public'];

/** What a path that leads out of `src` begins with. */
const OUTSIDE = '..';

interface Import {
  readonly file: string;
  readonly specifier: string;
}

const SRC = 'src';
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts'));
const imports = files.flatMap(importsOf);

describe('the layers of src', () => {
  it('were read', () => {
    expect(files.length).toBeGreaterThan(10);
    expect(imports.length).toBeGreaterThan(10);
  });

  it('are the folders of the table, each with an index', () => {
    const folders = readdirSync(SRC, { withFileTypes: true }).filter((entry) =>
      entry.isDirectory(),
    );
    const unlisted = folders
      .map(({ name }) => name)
      .filter((name) => !LAYERS.has(name) && !NO_CODE.includes(name));
    expect(unlisted).toEqual([]);
    const unindexed = [...LAYERS.keys()].filter((layer) => !files.includes(`${layer}/index.ts`));
    expect(unindexed).toEqual([]);
  });

  it('have no file beside them but the two that know them all', () => {
    expect(files.filter((file) => !file.includes('/') && !ROOTS.includes(file))).toEqual([]);
  });

  it('import only the layers that the table allows', () => {
    const strays = imports.filter(({ file, specifier }) => {
      const target = layerOf(resolved(file, specifier));
      const allowed = LAYERS.get(layerOf(file));
      return (
        allowed &&
        isRelative(specifier) &&
        target !== OUTSIDE &&
        target !== layerOf(file) &&
        !allowed.includes(target)
      );
    });
    expect(strays.map(inWords)).toEqual([]);
  });

  it('import each other only through an index', () => {
    const strays = imports.filter(({ file, specifier }) => {
      const target = resolved(file, specifier);
      return (
        isRelative(specifier) &&
        LAYERS.has(layerOf(target)) &&
        layerOf(target) !== layerOf(file) &&
        target !== `${layerOf(target)}/index.ts`
      );
    });
    expect(strays.map(inWords)).toEqual([]);
  });

  it('import a package only in its home', () => {
    const strays = imports.filter(
      ({ file, specifier }) =>
        !isRelative(specifier) &&
        !(ROOTS.includes(file) && specifier.startsWith('node:')) &&
        HOMES.get(packageOf(specifier)) !== layerOf(file),
    );
    expect(strays.map(inWords)).toEqual([]);
  });

  it('import nothing from outside src, but that the worksheet layer takes its sheets', () => {
    const strays = imports.filter(
      ({ file, specifier }) =>
        isRelative(specifier) &&
        layerOf(resolved(file, specifier)) === OUTSIDE &&
        !(layerOf(file) === 'worksheet' && resolved(file, specifier).startsWith('../worksheets/')),
    );
    expect(strays.map(inWords)).toEqual([]);
  });
});

describe('the reading of imports', () => {
  it.each([
    ["import { a } from '../units/index.ts';"],
    ["import type { A } from '../units/index.ts';"],
    ["export * from '../units/index.ts';"],
    ["import '../units/index.ts';"],
    ["const later = import('../units/index.ts');"],
    ["type A = import('../units/index.ts').A;"],
    ["const all = import.meta.glob('../units/index.ts');"],
  ])('sees %s', (text) => {
    expect(specifiersIn('example.ts', text)).toEqual(['../units/index.ts']);
  });
});

function importsOf(file: string): Import[] {
  const text = readFileSync(join(SRC, file), 'utf8');
  return specifiersIn(file, text).map((specifier) => ({ file, specifier }));
}

function specifiersIn(file: string, text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const specifier = specifierOf(node);
    if (specifier && ts.isStringLiteralLike(specifier))
      found.push(specifier.text.replace(/\?.*$/, ''));
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true));
  return found;
}

function specifierOf(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
    return node.argument.literal;
  if (!ts.isCallExpression(node)) return undefined;
  const isImport = node.expression.kind === ts.SyntaxKind.ImportKeyword;
  const isGlob = node.expression.getText() === 'import.meta.glob';
  return isImport || isGlob ? node.arguments[0] : undefined;
}

function isRelative(specifier: string): boolean {
  return specifier.startsWith('.');
}

/** The path from `src`, without leading `./`; package names come back unchanged. */
function resolved(file: string, specifier: string): string {
  if (!isRelative(specifier)) return specifier;
  return relative(SRC, join(SRC, dirname(file), specifier)).replaceAll('\\', '/');
}

function layerOf(path: string): string {
  return path.split('/')[0] ?? '';
}

function packageOf(specifier: string): string {
  return specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');
}

function inWords({ file, specifier }: Import): string {
  return `${file} imports ${specifier}`;
}
