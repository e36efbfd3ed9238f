import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { CATALOG } from '../../src/trade/index.ts';

const TRADE = 'src/trade';
const GUIDE = 'DEVELOPERS.md';
const HEAD = '## Every trade function';

/** The table of DEVELOPERS.md: each function that a formula may call, its source and its check, from its own doc. */
export async function functionTable(): Promise<string> {
  const sources = readdirSync(TRADE).map((name) => readFileSync(join(TRADE, name), 'utf8'));
  const rows = [...CATALOG.values()].map(({ name, source, standing }) => {
    const check = checkOf(camelCase(name), sources);
    return `| \`${name}\` | ${standing} | ${cell(source)} | ${cell(check)} |`;
  });
  const table = [
    '| function | standing | source | check |',
    '| --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
  const options = await resolveConfig(GUIDE);
  return (await format(table, { ...options, parser: 'markdown' })).trim();
}

/** The part of DEVELOPERS.md that holds the table. */
export function tableInGuide(): string {
  const guide = readFileSync(GUIDE, 'utf8');
  const part = guide.split(`${HEAD}\n`)[1]?.split('\n## ')[0] ?? '';
  return part.slice(part.indexOf('|')).trim();
}

function checkOf(name: string, sources: readonly string[]): string {
  for (const source of sources) {
    const at = source.indexOf(`export function ${name}(`);
    if (at < 0) continue;
    const doc = source.slice(source.lastIndexOf('/**', at), at);
    return [...doc.matchAll(/@check ([^@]*?)(?=\n \* @|\n \*\/)/g)]
      .map(([, text = '']) => text.replaceAll(/\s*\n \*\s*/g, ' ').trim())
      .join('; ');
  }
  return '';
}

function camelCase(name: string): string {
  return name.replaceAll(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('*', '\\*');
}

async function write(): Promise<void> {
  const guide = readFileSync(GUIDE, 'utf8');
  const [before = '', after] = guide.split(`${HEAD}\n`);
  const rest = after?.slice(after.indexOf('\n## ')) ?? '';
  const words =
    'Made from the docs by `npx tsx tests/structure/function-table.ts`; a test holds it to them. The tests in `tests/trade` and `tests/formula` name the published place of every value.';
  writeFileSync(GUIDE, `${before}${HEAD}\n\n${words}\n\n${await functionTable()}\n${rest}`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await write();
