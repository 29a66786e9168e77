import type {Cube} from './combinations.ts';

/**
 * A condition over the switches of a task: `Y and (FS1 or FS2) and not HPS`. A switch named alone is closed.
 * Compiled to a question of one number, whose bit i is 1 while input i is closed.
 */
export type Condition =
  | {readonly is: 'input'; readonly input: string}
  | {readonly is: 'not'; readonly term: Condition}
  | {readonly is: 'and' | 'or'; readonly terms: readonly Condition[]};

/** What could not be read in a statement, in words for the person who wrote it. */
export class StatementError extends Error {
  readonly mend: string;
  constructor(message: string, mend: string) {
    super(message);
    this.name = 'StatementError';
    this.mend = mend;
  }
}

/** Reads a condition; "is closed" and "are closed" at the end are allowed. Throws StatementError. */
export function readCondition(text: string): Condition {
  const words = text.replace(/\s+(is|are)\s+closed\s*$/, '').match(/[()]|[^\s()]+/g);
  if (!words)
    throw new StatementError('there is no condition', 'name the switches, such as "Y and HPS"');
  let at = 0;
  const sum = (): Condition => {
    const terms = [product()];
    while (words[at] === 'or') {
      at++;
      terms.push(product());
    }
    return terms.length === 1 ? terms[0] : {is: 'or', terms};
  };
  const product = (): Condition => {
    const terms = [factor()];
    while (words[at] === 'and') {
      at++;
      terms.push(factor());
    }
    return terms.length === 1 ? terms[0] : {is: 'and', terms};
  };
  const factor = (): Condition => {
    const word = words[at++];
    if (word === 'not') return {is: 'not', term: factor()};
    if (word === '(') {
      const inside = sum();
      if (words[at++] !== ')')
        throw new StatementError('a bracket is not closed', 'put the missing ")" in');
      return inside;
    }
    if (word === undefined || word === ')' || word === 'and' || word === 'or')
      throw new StatementError(
        `a switch is missing ${word === undefined ? 'at the end' : `before "${word}"`}`,
        'name a switch there',
      );
    return {is: 'input', input: word};
  };
  const condition = sum();
  if (at < words.length)
    throw new StatementError(
      `"${words[at]}" stands where "and" or "or" should`,
      'join the switches with "and" or "or"',
    );
  return condition;
}

/** Inputs that a condition names, each once, in the order of reading. */
export function inputsOf(condition: Condition): string[] {
  if (condition.is === 'input') return [condition.input];
  if (condition.is === 'not') return inputsOf(condition.term);
  return [...new Set(condition.terms.flatMap(inputsOf))];
}

/** The condition as a question of the closed switches. @param order input ids; bit i stands for order[i] */
export function compileCondition(
  condition: Condition,
  order: readonly string[],
): (closed: number) => boolean {
  switch (condition.is) {
    case 'input': {
      const bit = 1 << order.indexOf(condition.input);
      return (closed) => (closed & bit) !== 0;
    }
    case 'not': {
      const term = compileCondition(condition.term, order);
      return (closed) => !term(closed);
    }
    case 'and': {
      const terms = condition.terms.map((term) => compileCondition(term, order));
      return (closed) => terms.every((term) => term(closed));
    }
    case 'or': {
      const terms = condition.terms.map((term) => compileCondition(term, order));
      return (closed) => terms.some((term) => term(closed));
    }
  }
}

/** A condition asked of a cube of combinations: true or false where all of them agree by its form, else undefined. */
export type CubeQuestion = (cube: Cube) => boolean | undefined;

/** The condition as a question of cubes (Kleene's three-valued logic). `undefined` may hide an agreement. */
export function compileForCubes(condition: Condition, order: readonly string[]): CubeQuestion {
  switch (condition.is) {
    case 'input': {
      const bit = 1 << order.indexOf(condition.input);
      return ({mask, care}) => ((care & bit) === 0 ? undefined : (mask & bit) !== 0);
    }
    case 'not': {
      const term = compileForCubes(condition.term, order);
      return (cube) => {
        const value = term(cube);
        return value === undefined ? undefined : !value;
      };
    }
    case 'and':
    case 'or': {
      const decides = condition.is === 'or';
      const terms = condition.terms.map((term) => compileForCubes(term, order));
      return (cube) => {
        let value: boolean | undefined = !decides;
        for (const term of terms) {
          const each = term(cube);
          if (each === decides) return decides;
          if (each === undefined) value = undefined;
        }
        return value;
      };
    }
  }
}

/**
 * A combination of the cube for which the question is true; none where there is none. Splits the cube only along
 * `bits`, the switches that the question names.
 *
 * @param first position that is tried first for every switch that the cube leaves free
 */
export function findIn(
  question: CubeQuestion,
  cube: Cube,
  bits: readonly number[],
  first: 'closed' | 'open' = 'closed',
): number | undefined {
  const value = question(cube);
  if (value === false) return undefined;
  const free = bits.find((bit) => (cube.care & bit) === 0);
  if (free === undefined) return value === true ? cube.mask & cube.care : undefined;
  const care = cube.care | free;
  const [p, q] = [cube.mask | free, cube.mask & ~free];
  const [one, other] = first === 'closed' ? [p, q] : [q, p];
  return (
    findIn(question, {mask: one, care}, bits, first) ??
    findIn(question, {mask: other, care}, bits, first)
  );
}
