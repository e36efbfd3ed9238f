import { spawnSync } from 'node:child_process';

// Asks the registry whether anything is known against what the page is built from; ends with 1 where something is. A
// registry that answers no such question is said to, for nothing was looked up then.

interface Answer {
  readonly vulnerabilities?: Readonly<
    Record<string, { readonly severity: string; readonly range: string }>
  >;
  readonly message?: string;
}

const { stdout, stderr, error } = spawnSync('npm audit --omit=dev --json', {
  shell: true,
  encoding: 'utf8',
  timeout: 120_000,
});
const answer = parsed(stdout);

if (answer?.vulnerabilities) {
  const found = Object.entries(answer.vulnerabilities);
  for (const [name, { severity, range }] of found)
    process.stderr.write(`${name} ${range}: known as ${severity}. See npm audit.\n`);
  process.stdout.write(`Audit: ${String(found.length)} findings against what is shipped.\n`);
  if (found.length > 0) process.exitCode = 1;
} else {
  const why = answer?.message ?? error?.message ?? stderr.split('\n')[0] ?? '';
  process.stdout.write(
    `Audit: not done, as the registry gave no answer (${withoutAddress(why)}).\n`,
  );
}

function parsed(text: string): Answer | undefined {
  try {
    return JSON.parse(text) as Answer;
  } catch {
    return undefined;
  }
}

function withoutAddress(words: string): string {
  return words.replace(/\s*https?:\S+/g, '').trim();
}
