#!/usr/bin/env node
// Lets Node read the TypeScript of the command line as it stands, so that there is nothing to build first.
import {register} from 'tsx/esm/api';

register();
// whoever reads the lines may have seen enough (`| head`): that is no mistake
process.stdout.on('error', (error) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});
const {main} = await import('./main.ts');
process.exitCode = await main(process.argv.slice(2));
