import {parseArgs} from 'node:util';
import {spiceNodeNames} from '../circuits/spice-names.ts';
import {spiceNetlist} from '../circuits/spice-netlist.ts';
import {stateOf, stateOptions} from './state-options.ts';
import {unitOf} from './unit-argument.ts';

/** `rungbench netlist`: the solved state as SPICE reads it. */
export function netlistCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {...stateOptions, dc: {type: 'boolean'}},
  });
  const operating = stateOf(unitOf(positionals[0]), values);
  print(spiceNetlist(operating.network, operating.states, values.dc ? 'dc' : 'ac').trimEnd());
}

/** `rungbench nodes`: our own solution of the same state, under the netlist's node names. */
export function nodesCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {...stateOptions, json: {type: 'boolean'}, dc: {type: 'boolean'}},
  });
  const operating = stateOf(unitOf(positionals[0]), values);
  const nodes = [...spiceNodeNames(operating.network)]
    .filter(([point]) => point !== 'earth')
    .map(([point, node]) => {
      if (values.dc) return {node, point, volts: operating.dcVolts(point, 'earth')};
      const {re, im} = operating.acVolts(point, 'earth');
      return {
        node,
        point,
        volts: Math.hypot(re, im),
        degrees: (Math.atan2(im, re) * 180) / Math.PI,
        re,
        im,
      };
    });
  if (values.json) {
    print(JSON.stringify(nodes, null, 2));
    return;
  }
  const width = Math.max(...nodes.map(({node}) => node.length));
  for (const {node, volts, degrees} of nodes) {
    const angle = degrees === undefined ? '' : `  ${degrees.toFixed(2).padStart(8)}°`;
    print(`${node.padEnd(width)}  ${volts.toFixed(6).padStart(12)} V${angle}`);
  }
}
