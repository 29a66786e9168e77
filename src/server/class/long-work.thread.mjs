// Lets the thread read TypeScript as it stands, whichever way the server itself was started.
import {register} from 'tsx/esm/api';

register();
await import('./long-work.thread.ts');
