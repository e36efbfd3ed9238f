import { readFileSync } from 'node:fs';
import { sep } from 'node:path';

// Prints how many tests passed and failed, from the runner's JSON report, and ends with 1 unless
// all passed and some of them ran in a real browser.

interface Report {
  readonly success: boolean;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

const BROWSER_FOLDERS = ['browser', 'e2e'].map((folder) => `${sep}tests${sep}${folder}${sep}`);

const report = readReport(process.argv[2] ?? '');
const tests = report.testResults.flatMap(({ name, status, assertionResults }) =>
  // A file that could not be loaded holds no tests, and counts as one that did not pass.
  assertionResults.length === 0 && status === 'failed'
    ? [{ name, passed: false }]
    : assertionResults.map((result) => ({ name, passed: result.status === 'passed' })),
);
const passed = tests.filter((test) => test.passed).length;
const failed = tests.length - passed;

for (const folder of BROWSER_FOLDERS) {
  if (tests.some(({ name, passed }) => passed && name.includes(folder))) continue;
  process.stderr.write(`No test in ${folder} passed, so nothing is known of a real browser.\n`);
  process.exitCode = 1;
}
if (!report.success || failed > 0 || passed === 0) process.exitCode = 1;
process.stdout.write(`${String(passed)} passed, ${String(failed)} failed\n`);

function readReport(path: string): Report {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as Report;
  } catch {
    process.stderr.write('The test run left no report.\n');
    return { success: false, testResults: [] };
  }
}
