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

/** Whether closing a switch can never make the condition false: it has no "not". */
export function isMonotone(condition: Condition): boolean {
  if (condition.is === 'input') return true;
  return condition.is !== 'not' && condition.terms.every(isMonotone);
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

/**
 * Minimal path sets of a monotone condition (fewest closed switches that make it true) and minimal cut sets (fewest
 * open ones that make it false), as bit sets. A monotone circuit that is on at each path set alone and off with each
 * cut set open is right everywhere: every other combination has more closed than a path, or more open than a cut
 * (Barlow and Proschan, Statistical Theory of Reliability, 1975, chapter 1; from memory).
 */
export function pathAndCutSets(
  condition: Condition,
  order: readonly string[],
): {paths: number[]; cuts: number[]} {
  return {paths: minimalSets(condition, order, 'or'), cuts: minimalSets(condition, order, 'and')};
}

/** Sums of products; with `union` "and" the dual, whose products are the cuts. */
function minimalSets(
  condition: Condition,
  order: readonly string[],
  union: 'and' | 'or',
): number[] {
  if (condition.is === 'not') throw new Error('A condition with "not" has no path and cut sets.');
  if (condition.is === 'input') return [1 << order.indexOf(condition.input)];
  const terms = condition.terms.map((term) => minimalSets(term, order, union));
  const sets =
    condition.is === union
      ? terms.flat()
      : terms.reduce((made, next) => made.flatMap((set) => next.map((more) => set | more)), [0]);
  // absorption: a set that holds another one says nothing new
  const once = [...new Set(sets)];
  return once.filter((set) => !once.some((other) => other !== set && (other & set) === other));
}
