import type {ErrorAnswer, Hello, SignedIn} from '../../classroom/protocol/rest.ts';

/** Why the class's server said no, or did not answer: one sentence for people. */
export class ApiError extends Error {
  /** HTTP status; 0 where no answer came. */
  readonly status: number;
  /** Seconds to wait before the next try, where the server named them. */
  readonly retryAfterSeconds: number;

  constructor(status: number, sentence: string, retryAfterSeconds = 0) {
    super(sentence);
    this.name = 'ApiError';
    this.status = status;
    this.retryAfterSeconds = retryAfterSeconds;
  }
}

type Method = 'GET' | 'POST' | 'PATCH' | 'DELETE';

let csrf = '';

/** Asks the class's server. `path` is below `/api`. Rejects with an {@link ApiError}. */
export async function api<Answer>(method: Method, path: string, body?: unknown): Promise<Answer> {
  const response = await reach(path, {
    method,
    credentials: 'same-origin',
    headers: {
      ...(body === undefined ? {} : {'content-type': 'application/json'}),
      ...(csrf && method !== 'GET' ? {'x-csrf': csrf} : {}),
    },
    ...(body === undefined ? {} : {body: JSON.stringify(body)}),
  });
  if (!response.ok) throw await errorOf(response);
  try {
    return (await response.json()) as Answer;
  } catch {
    throw new ApiError(0, noServer);
  }
}

const noServer =
  'No class server answers at this address. It comes with “npm start”; a copy of the tutor on a plain web server has none.';

async function reach(path: string, request: RequestInit): Promise<Response> {
  try {
    return await fetch(`api/${path}`, request);
  } catch {
    throw new ApiError(
      0,
      'The class server does not answer. Check that it runs and that this device is on its network, then try again.',
    );
  }
}

async function errorOf(response: Response): Promise<ApiError> {
  const wait = Number(response.headers.get('retry-after') ?? 0) || 0;
  const text = await response.text().catch(() => '');
  try {
    const {error} = JSON.parse(text) as Partial<ErrorAnswer>;
    if (typeof error === 'string') return new ApiError(response.status, error, wait);
  } catch {
    // not an answer of the class's server
  }
  return new ApiError(response.status === 404 ? 0 : response.status, noServer, wait);
}

/** What the server is, and whether it waits for its first instructor. */
export const hello = (): Promise<Hello> => api<Hello>('GET', 'hello');

/**
 * Who is signed in on this device; undefined where nobody is. Keeps the token against forged requests. Where nobody has
 * ever signed in, the server is not asked: most devices are students', and many tutors have no class server at all.
 */
export async function signedIn(): Promise<SignedIn | undefined> {
  if (!hasSignedIn()) return undefined;
  try {
    return remember(await api<SignedIn>('GET', 'signed-in'));
  } catch (error) {
    if (error instanceof ApiError && error.status === 401) {
      noteSignedIn(false);
      return undefined;
    }
    throw error;
  }
}

export async function signIn(name: string, passphrase: string): Promise<SignedIn> {
  return remember(await api<SignedIn>('POST', 'sign-in', {name, passphrase}));
}

export async function firstStart(key: string, name: string, passphrase: string): Promise<SignedIn> {
  return remember(await api<SignedIn>('POST', 'first-start', {key, name, passphrase}));
}

export async function signOut(): Promise<void> {
  await api('POST', 'sign-out', {});
  csrf = '';
  noteSignedIn(false);
}

const key = 'rungbench-instructor';
let inThisTab = false;

function hasSignedIn(): boolean {
  try {
    return inThisTab || localStorage.getItem(key) === 'yes';
  } catch {
    return inThisTab;
  }
}

/** Only that somebody has: the sign-in itself is a cookie that no script can read. */
function noteSignedIn(signed: boolean): void {
  inThisTab = signed;
  try {
    if (signed) localStorage.setItem(key, 'yes');
    else localStorage.removeItem(key);
  } catch {
    // the tab remembers
  }
}

function remember(signed: SignedIn): SignedIn {
  csrf = signed.csrf;
  noteSignedIn(true);
  return signed;
}

/** The sentence of whatever went wrong. */
export function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
