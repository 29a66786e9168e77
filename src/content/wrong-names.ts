import type {ContentError} from './content-error.ts';
import {nearestName} from './nearest-name.ts';
import type {Path} from './yaml-path.ts';
import type {YamlSource} from './yaml-source.ts';

/**
 * Collects names that the file uses but does not have. A name that is wrong in one place (where it is
 * made) is used in many: it is told once, at its first use, with the lines of the others.
 */
export class WrongNames {
  private readonly uses = new Map<string, {message: string; mend: string; paths: Path[]}>();

  note(key: string, path: Path, message: string, mend: string): void {
    const use = this.uses.get(key);
    if (use) use.paths.push(path);
    else this.uses.set(key, {message, mend, paths: [path]});
  }

  errors(source: YamlSource): ContentError[] {
    return [...this.uses.values()].map(({message, mend, paths}) => {
      const lines = [...new Set(paths.slice(1).map((path) => source.lineOf(path)))];
      const others = lines.filter((line) => line !== source.lineOf(paths[0]!));
      const also = others.length === 0 ? '' : ` (also on ${listOfLines(others)})`;
      return source.errorAt(paths[0]!, `${message}${also}`, mend);
    });
  }
}

function listOfLines(lines: readonly number[]): string {
  if (lines.length === 1) return `line ${lines[0]}`;
  const first = lines.slice(0, 5).join(', ');
  return lines.length > 5 ? `lines ${first} and ${lines.length - 5} more` : `lines ${first}`;
}

/** "did you mean …?", or all that there are. */
export function suggest(name: string, names: readonly string[]): string {
  const near = nearestName(name, names);
  if (near) return `did you mean ${near}?`;
  if (names.length === 0) return 'there are none to choose from';
  const some = names.slice(0, 12).join(', ');
  return names.length > 12 ? `there are ${some} …` : `there are ${some}`;
}

/** Where two entries of a list have one id: an error at the second, naming the line of the first. */
export function doubledIds(
  list: string,
  one: string,
  ids: readonly (string | undefined)[],
  source: YamlSource,
): ContentError[] {
  return ids.flatMap((id, i) => {
    const first = ids.indexOf(id);
    if (id === undefined || first === i) return [];
    const line = source.lineOf([list, first, 'id']);
    return [
      source.errorAt(
        [list, i, 'id'],
        `two ${one}s have the id ${id} (the first on line ${line})`,
        'give one of them another id',
      ),
    ];
  });
}
