import { spawnSync } from 'node:child_process';

// The long run of the tests that kill the browser: 25 kills of each kind.
const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--project', 'built app'];
const { status } = spawnSync(process.execPath, [...vitest, 'tests/e2e/crash.test.ts'], {
  stdio: 'inherit',
  env: { ...process.env, BACKPLUMB_KILLS: '25' },
});
process.exitCode = status ?? 1;
