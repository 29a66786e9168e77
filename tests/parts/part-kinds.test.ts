import {describe, expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import type {Element} from '../../src/parts/element.ts';
import {isMotor, motorWindings} from '../../src/parts/motor-windings.ts';
import {partKinds} from '../../src/parts/part-kinds.ts';

/** One right example of each kind's data: those that the shipped units use. */
const examples = shippedUnitIds()
  .flatMap((id) => readShippedUnit(id).parts)
  .map((part) => ({
    name: `${part.kind} ${part.id}`,
    kind: partKinds.get(part.kind)!,
    data: part.data,
  }));

const endsOf = (element: Element): string[] =>
  element.is === 'transformer'
    ? element.windings.flatMap((winding) => [winding.a, winding.b])
    : isMotor(element)
      ? motorWindings(element).flatMap(({a, b}) => [a, b])
      : [element.a, element.b];

const idsOf = (element: Element): string[] =>
  element.is === 'transformer'
    ? [element.id, ...element.windings.map((winding) => winding.id)]
    : isMotor(element)
      ? [element.id, ...motorWindings(element).map(({id}) => id.slice(id.indexOf('.') + 1))]
      : [element.id];

test('every part kind is used by a shipped unit', () => {
  const awaiting: string[] = [];
  expect(new Set([...examples.map(({kind}) => kind.kind), ...awaiting])).toEqual(
    new Set(partKinds.keys()),
  );
});

describe.each(examples)('$name', ({kind, data}) => {
  const terminals = kind.terminals(data);
  const elements = kind.elements(data);
  const ids = elements.flatMap(idsOf);
  const modes = kind.modes(data);

  test('has terminals, each once, and elements between them or points inside', () => {
    expect(terminals.length).toBeGreaterThan(0);
    expect(new Set(terminals).size).toBe(terminals.length);
    const strange = elements
      .flatMap(endsOf)
      .filter((end) => end !== 'earth' && !end.startsWith('~') && !terminals.includes(end));
    expect(strange).toEqual([]);
  });

  test('has element ids, each once', () => {
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('fails only in elements and terminals that it has', () => {
    expect(new Set(modes.map((mode) => mode.id)).size).toBe(modes.length);
    for (const mode of modes) {
      for (const change of mode.changes ?? []) expect(ids, mode.id).toContain(change.element);
      if (mode.toCabinet) expect(terminals, mode.id).toContain(mode.toCabinet.terminal);
      if (mode.joins)
        expect(terminals).toEqual(expect.arrayContaining([mode.joins.a, mode.joins.b]));
      expect(Boolean(mode.changes?.length ?? mode.toCabinet ?? mode.joins ?? mode.behaviour)).toBe(
        true,
      );
    }
  });

  test('begins with its controls at a position that they have', () => {
    for (const control of kind.controls?.(data) ?? [])
      if (control.type === 'choice')
        expect(control.choices!.map((choice) => choice.value)).toContain(control.initial);
      else if (control.type === 'number') {
        expect(control.initial).toBeGreaterThanOrEqual(control.min!);
        expect(control.initial).toBeLessThanOrEqual(control.max!);
      }
  });

  test('refuses data with a key that it does not know', () => {
    expect(kind.data.safeParse({...(data as object), wibble: 1}).success).toBe(false);
  });
});
