import {describe, expect, it} from 'vitest';
import {MemoryStore} from '../../src/store/memory-store.ts';
import {storeContract} from './attempt-store-contract.ts';

describe('the store in memory', () => {
  storeContract(
    {it, equal: (found, expected) => expect(found).toEqual(expected)},
    async () => new MemoryStore(),
  );

  it('says that it keeps nothing', () => {
    expect(new MemoryStore().kept).toBe(false);
  });
});
