import {resolve} from 'node:path';
import {parseArgs} from 'node:util';

/** How the server was asked to run. */
export interface ServerSettings {
  readonly dataFolder: string;
  /** Postgres in place of the embedded database. */
  readonly postgres?: string;
  /** Listens to the whole network, so that phones can join; `false` = this machine only. */
  readonly network: boolean;
  /** Behind a balancer or a TLS proxy: believe its `x-forwarded-*` headers. `loopback`, an address, or `true`. */
  readonly trustProxy: boolean | string;
  /** Address that people use where a proxy stands before it. */
  readonly publicUrl?: string;
}

/**
 * Reads `--data`, `--local`, `--trust-proxy`, `--public-url` and the variables RUNGBENCH_DATA, DATABASE_URL (or
 * POSTGRES_URL), RUNGBENCH_TRUST_PROXY, RUNGBENCH_PUBLIC_URL. Throws one sentence where one is wrong.
 */
export function readSettings(
  args: readonly string[],
  variables: Readonly<Record<string, string | undefined>>,
  root: string,
): ServerSettings {
  const {values} = parseArgs({
    args: [...args],
    options: {
      data: {type: 'string'},
      local: {type: 'boolean'},
      'trust-proxy': {type: 'string'},
      'public-url': {type: 'string'},
    },
  });
  const postgres = variables['DATABASE_URL'] || variables['POSTGRES_URL'];
  if (postgres && !/^postgres(ql)?:\/\//.test(postgres)) {
    throw new Error(
      'DATABASE_URL is no Postgres address: it begins with postgres://. Leave it out for the embedded database.',
    );
  }
  const trust = values['trust-proxy'] ?? variables['RUNGBENCH_TRUST_PROXY'];
  const publicUrl = values['public-url'] ?? variables['RUNGBENCH_PUBLIC_URL'];
  if (publicUrl !== undefined && !/^https?:\/\/[^\s/]+/.test(publicUrl)) {
    throw new Error('--public-url is no address: it begins with http:// or https://.');
  }
  return {
    dataFolder: resolve(root, values.data ?? variables['RUNGBENCH_DATA'] ?? 'data'),
    ...(postgres ? {postgres} : {}),
    network: values.local !== true,
    trustProxy: trust === undefined ? false : trust === 'true' || trust === '1' ? true : trust,
    ...(publicUrl === undefined ? {} : {publicUrl: publicUrl.replace(/\/?$/, '/')}),
  };
}
