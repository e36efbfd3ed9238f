import { runInNewContext } from 'node:vm';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';
import { withoutData } from '../../vite.data.config.ts';

const FETCHED = 'await(await fetch(import.meta.url.replace(/js$/,"json"))).json()';

function taken(code: string) {
  const { script, parts, data } = withoutData(code, parseSync('built.js', code).program);
  expect(script).toContain(FETCHED);
  return { script: script.replace(FETCHED, JSON.stringify([parts, data])), parts, data };
}

/** What a script leaves in `it`, as it stands and without its data. */
function bothWays(code: string): [unknown, unknown] {
  const results = [code, taken(code).script].map((script): unknown =>
    JSON.parse(runInNewContext(`var it;${script};JSON.stringify(it)`) as string),
  );
  return [results[0], results[1]];
}

describe('the built script without its data', () => {
  it.each([
    ['sentences', 'function f(a){return"one two three"+`four five six`}it=f()'],
    [
      'a sentence with values',
      'let n=1;it=`${(n++,n)} of the ${n} posts ${`are ${n} in all here`}`',
    ],
    ['escapes', 'it=[`a\\tb c d ${1} e`,"line one\\nline two three",`\\u{41} b c d`]'],
    ['keys', 'it={"one two three":"four five six",["seven eight nine"]:1}'],
    [
      'a table',
      `it=${JSON.stringify({ a: [1, -2, 0.5, true], b: { c: 'x'.repeat(80), 7: 'y' } })}`,
    ],
    [
      'a table with what is no data',
      `let f=()=>1;it=[["${'x'.repeat(80)}"],f(),null,-0,/a b c/.source]`,
    ],
    [
      'a tag',
      'let t=(s,...v)=>[...s,...s.raw,...v],n=2;it=[t`<p>${n}</p>${t`<b>${(n++,n)}</b>`}`,t``]',
    ],
    ['a name that is like those put in', 'let $_p="one two three",$__d=1;it=[$_p,$__d]'],
  ])('gives the same with %s', (_, code) => {
    const [before, after] = bothWays(code);
    expect(after).toEqual(before);
  });

  it('takes out sentences, the parts of templates, and tables', () => {
    const table = JSON.stringify([1, 2, 'x'.repeat(80)]);
    const { script, parts, data } = taken(`let h=s=>s;it=[h\`<p>a</p>\`,"one two three",${table}]`);
    expect(parts).toEqual([['<p>a</p>']]);
    expect(data).toEqual(['one two three', JSON.parse(table)]);
    expect(script.split(';').at(-1)).not.toMatch(/one two|<p>|xxx/);
  });

  it('gives a tag the same parts each time, by which an element knows its template', () => {
    const [before, after] = bothWays('let h=s=>s,f=()=>h`<p>`;it=f()===f()');
    expect([before, after]).toEqual([true, true]);
  });

  it('leaves a table that each call has to have anew', () => {
    const table = JSON.stringify([['x'.repeat(80)]]);
    const [before, after] = bothWays(`let f=()=>${table};f().push(1);it=f().length`);
    expect([before, after]).toEqual([1, 1]);
  });
});
