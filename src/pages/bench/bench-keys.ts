import type {ReactiveController, ReactiveControllerHost} from 'lit';
import {functionAt} from '../../meter/function-names.ts';
import type {BenchDesk} from './bench-desk.element.ts';
import {commandOf, type Command} from './shortcuts.ts';

/** What single keys act on. */
export interface KeyedBench {
  readonly desk: BenchDesk | null | undefined;
  turnDrawing(): void;
  name(): void;
  mute(): void;
  help(): void;
}

/** The bench's single keys, heard wherever the focus is, as long as the page stands. */
export class BenchKeys implements ReactiveController {
  private readonly bench: () => KeyedBench | undefined;

  /** @param bench what the keys act on; undefined while they are off */
  constructor(host: ReactiveControllerHost, bench: () => KeyedBench | undefined) {
    this.bench = bench;
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener('keydown', this.hear);
  }

  hostDisconnected(): void {
    removeEventListener('keydown', this.hear);
  }

  private readonly hear = (event: KeyboardEvent): void => {
    const bench = this.bench();
    const command = bench && commandOf(event, event.composedPath());
    if (!command) return;
    event.preventDefault();
    obey(bench, command);
  };
}

function obey({desk, ...bench}: KeyedBench, command: Command): void {
  switch (command.is) {
    case 'lead':
      return desk?.takeLead(command.lead);
    case 'function': {
      const fn = functionAt(command.place);
      return fn && desk?.chooseFunction(fn);
    }
    case 'expect':
      return void desk?.focusOn('expectation');
    case 'read':
      return desk?.read();
    case 'diagram':
      return void desk?.focusOn('diagram');
    case 'find':
      return void desk?.focusOn('list');
    case 'drawing':
      return bench.turnDrawing();
    case 'panel':
      return void desk?.goToPanel(command.panel);
    case 'name':
      return bench.name();
    case 'mute':
      return bench.mute();
    case 'help':
      return bench.help();
  }
}
