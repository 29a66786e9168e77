import {shownName} from './protocol/fields.ts';

export interface ReadRoster {
  /** In the order of the text, each once. */
  readonly names: readonly string[];
  /** What could not be taken, one sentence a line. */
  readonly problems: readonly string[];
}

/** As many as any school puts in front of one bench. */
export const mostStudents = 1000;

/**
 * Names out of a pasted list (one a line) or a CSV (RFC 4180) with a header: the column `name`, else `nickname`, else
 * `first name` and `last name` together, else the first column. A text without such a header is a list.
 */
export function readRoster(text: string): ReadRoster {
  const rows = readRows(text.replace(/^\uFEFF/, '')).filter((row) =>
    row.some((cell) => cell.trim()),
  );
  const header = rows[0]?.map((cell) => cell.trim().toLowerCase()) ?? [];
  const pick = columnOf(header);
  const body = pick ? rows.slice(1) : rows;
  const names: string[] = [];
  const known = new Set<string>();
  const problems: string[] = [];
  body.forEach((row, at) => {
    const line = at + (pick ? 2 : 1);
    const parsed = shownName.safeParse((pick ?? wholeLine)(row).trim().replace(/\s+/g, ' '));
    if (!parsed.success) {
      problems.push(`Line ${line}: the name ${parsed.error.issues[0].message}.`);
    } else if (known.has(nameKey(parsed.data))) {
      problems.push(
        `Line ${line}: "${parsed.data}" is there already. Add a letter to tell the two apart.`,
      );
    } else {
      known.add(nameKey(parsed.data));
      names.push(parsed.data);
    }
  });
  return {names, problems};
}

/** Two names that people would take for the same one. */
export const nameKey = (name: string): string => name.normalize('NFKC').toLowerCase();

/** A pasted line "Last, First" is one name. */
const wholeLine = (row: readonly string[]): string => row.join(', ').replace(/[,;\s]+$/, '');

function columnOf(header: readonly string[]): ((row: readonly string[]) => string) | undefined {
  const at = (...titles: string[]): number => header.findIndex((cell) => titles.includes(cell));
  const [first, last] = [at('first name', 'given name'), at('last name', 'family name')];
  const name = at('name', 'student', 'student name', 'full name');
  const nick = at('nickname');
  if (nick >= 0) return (row) => row[nick]?.trim() || row[Math.max(name, 0)] || '';
  if (name >= 0) return (row) => row[name] ?? '';
  if (first >= 0 && last >= 0) return (row) => `${row[first] ?? ''} ${row[last] ?? ''}`;
  if (first >= 0) return (row) => row[first] ?? '';
  return undefined;
}

/** Rows of a CSV; the separator is what the first line has more of: comma, semicolon or tab. */
function readRows(text: string): string[][] {
  const head = text.split(/\r?\n/, 1)[0];
  const count = (mark: string): number => head.split(mark).length;
  const separator = [',', ';', '\t'].reduce((best, mark) =>
    count(mark) > count(best) ? mark : best,
  );
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endRow = (): void => {
    rows.push([...row, cell]);
    row = [];
    cell = '';
  };
  for (let i = 0; i < text.length; i++) {
    const mark = text[i];
    if (quoted) {
      if (mark === '"' && text[i + 1] === '"') cell += text[++i];
      else if (mark === '"') quoted = false;
      else cell += mark;
    } else if (mark === '"' && cell === '') quoted = true;
    else if (mark === separator) {
      row.push(cell);
      cell = '';
    } else if (mark === '\n') endRow();
    else if (mark !== '\r') cell += mark;
  }
  endRow();
  return rows;
}
