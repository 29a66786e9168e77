import {expect, test} from 'vitest';
import {LocalBus} from '../../../src/server/class/live-bus.ts';
import {Presence} from '../../../src/server/class/presence.ts';

/** A bus between processes, all of them here. */
class SharedBus extends LocalBus {
  override readonly isShared = true;
}

test('a process that starts later learns who is on the others', () => {
  const bus = new SharedBus();
  const early = new Presence(bus);
  early.here('ana', 'socket 1');
  const late = new Presence(bus);
  expect(late.isOnline('ana')).toBe(true);
  expect(late.isOnline('ben')).toBe(false);
  early.close();
  late.close();
});

test('students of a process that was killed count as gone after a minute', () => {
  let nowMs = 0;
  const bus = new SharedBus();
  const killed = new Presence(bus, () => nowMs);
  const other = new Presence(bus, () => nowMs);
  killed.here('ana', 'socket 1');
  killed.say();
  nowMs = 59_000;
  expect(other.isOnline('ana')).toBe(true);
  nowMs = 61_000;
  expect(other.isOnline('ana')).toBe(false);
  killed.close();
  other.close();
});

test('a thousand students fit into messages that Postgres takes', () => {
  const bus = new SharedBus();
  const sent: string[] = [];
  bus.subscribe((message) => void sent.push(JSON.stringify(message)));
  const presence = new Presence(bus);
  // ids as long as ours are
  for (let i = 0; i < 1000; i++) presence.here(`s${i}`.padEnd(32, 'x'), `k${i}`.padEnd(32, 'x'));
  presence.say();
  expect(Math.max(...sent.map(({length}) => length))).toBeLessThan(7900);
  expect(sent.join()).toContain('s999');
  presence.close();
});
