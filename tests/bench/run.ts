import {spawnSync} from 'node:child_process';
import {resolve} from 'node:path';
import {operationRows} from './speed/operation.ts';
import {pageRows} from './speed/page.ts';
import {solverRows} from './speed/solver.ts';
import {markdown} from './speed/table.ts';

// `npm run bench`: figures of one run on the machine at hand, as the table that stands in DEVELOPERS.md; then the
// benches of diagnosis and hookup, which print theirs.
//   --speed   the table alone

console.log(markdown([...(await solverRows()), ...operationRows(), ...(await pageRows())]));

const alone = process.argv.includes('--speed');
const benches = alone
  ? undefined
  : spawnSync(process.execPath, [resolve('node_modules/vitest/vitest.mjs'), 'bench', '--run'], {
      stdio: 'inherit',
    });
process.exit(benches?.status ?? 0);
