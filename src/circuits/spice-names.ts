import type {Network} from './network.ts';

/**
 * Name of each node in a SPICE netlist: `K1.A1` → `k1_a1`, earth → `0`. Letters, digits and underscores only, since
 * SPICE folds case and reads other signs as arithmetic; two names that would fall together are told apart by a number.
 */
export function spiceNodeNames(network: Network): Map<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>(['0', 'gnd']);
  for (const node of network.nodes) {
    if (node === 'earth') {
      names.set(node, '0');
      continue;
    }
    const plain = node
      .toLowerCase()
      .replaceAll('+', 'plus')
      .replaceAll(/[^a-z0-9]+/g, '_');
    let name = plain;
    for (let number = 2; taken.has(name); number += 1) name = `${plain}_${number}`;
    taken.add(name);
    names.set(node, name);
  }
  return names;
}
