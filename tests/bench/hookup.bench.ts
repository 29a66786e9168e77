import {bench, describe} from 'vitest';
import {checkHookup} from '../../src/hookup/check-hookup.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

const ten = readShippedTask('ten-switches');
const bypassed = [
  ...ten.answer,
  {id: 'X1', from: 'HPS.1', to: 'HPS.2', gauge: 18, colour: 'grey' as const},
];
const chain = readShippedTask('cooling-chain');
/** The same ten switches by cubes, as beyond the limit. */
const byCubes = {limit: 0, mostRuns: 10_000};

describe('the checker', () => {
  // asked for: at most 200 ms with ten switches, 1024 combinations
  bench('ten switches, right', () => void checkHookup(ten, ten.answer));
  bench('ten switches, one bypassed', () => void checkHookup(ten, bypassed));
  bench('ten switches by cubes, right', () => void checkHookup(ten, ten.answer, byCubes));
  bench('ten switches by cubes, one bypassed', () => void checkHookup(ten, bypassed, byCubes));
  bench(
    'the cooling chain with its compressor: five switches',
    () => void checkHookup(chain, chain.answer),
  );
});
