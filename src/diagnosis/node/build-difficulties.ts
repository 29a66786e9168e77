/**
 * Works out how hard every fault of the shipped units is to find and writes content/difficulty/<unit>.json.
 * `npm run difficulty` for those that do not fit their unit any more, `npm run difficulty -- gas-furnace` for one,
 * `npm run difficulty -- all` for all of them.
 */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {readShippedUnit, shippedUnitIds} from '../../content/node/read-shipped-unit.ts';
import {difficultyFile, readDifficulties, type DifficultyFile} from '../difficulty-file.ts';
import {difficultiesOf} from '../fault-difficulty.ts';
import {difficultyFileOf} from './read-difficulties.ts';

function fits(id: string): boolean {
  const file = difficultyFileOf(id);
  if (!existsSync(file)) return false;
  const kept = JSON.parse(readFileSync(file, 'utf8')) as DifficultyFile;
  return readDifficulties(readShippedUnit(id), kept) !== undefined;
}

function main(names: readonly string[]): void {
  const ids =
    names.length === 0
      ? shippedUnitIds().filter((id) => !fits(id))
      : names.includes('all')
        ? shippedUnitIds()
        : names;
  if (ids.length === 0) process.stdout.write('Every file fits its unit.\n');
  mkdirSync(difficultyFileOf('.'), {recursive: true});
  for (const id of ids) {
    const unit = readShippedUnit(id);
    const from = process.cpuUsage();
    const all = difficultiesOf(unit);
    const {user} = process.cpuUsage(from);
    writeFileSync(difficultyFileOf(id), difficultyFile(unit, all));
    const of = (level: string): number =>
      all.filter(({silent, difficulty}) => !silent && difficulty === level).length;
    process.stdout.write(
      `${id}: ${all.length} faults, ${of('easy')} easy, ${of('medium')} medium, ${of('hard')} hard, ` +
        `${all.filter(({silent}) => silent).length} that no customer notices (${(user / 1e6).toFixed(1)} s of processor)\n`,
    );
  }
}

main(process.argv.slice(2));
