import {readFileSync} from 'node:fs';
import {basename} from 'node:path';
import type {Plugin} from 'vite';
import {loadUnit} from '../load-unit.ts';

/**
 * `import unit from './some.yaml?checked'` gives the unit, read and checked while the page is built: what a student's
 * device gets needs neither a YAML reader nor a schema. A file with mistakes ends the build with all of them.
 */
export function checkedUnits(): Plugin {
  return {
    name: 'checked-units',
    load(id) {
      const [path, query] = id.split('?');
      if (query !== 'checked') return undefined;
      this.addWatchFile(path);
      const {unit, errors} = loadUnit(readFileSync(path, 'utf8'), basename(path));
      if (!unit)
        return this.error(
          errors
            .map(({line, column, message, mend}) => `${path}:${line}:${column}: ${message} ${mend}`)
            .join('\n'),
        );
      // a text that is parsed as JSON is read sooner than the same as script
      return `export default JSON.parse(${JSON.stringify(JSON.stringify(unit))});`;
    },
  };
}
