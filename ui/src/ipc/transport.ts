// The one seam between the page and the core: the shell's command in the window, the bridge in browser tests.
import { invoke } from '@tauri-apps/api/core';

/** Carries one command to the core and brings back its JSON, or throws what came instead. */
export type Transport = (name: string, input: unknown) => Promise<unknown>;

/** In the window: the shell's only command. */
export const shell: Transport = (name, input) => invoke('call', { name, input });

/** Through the bridge of the browser tests, with the token of this run. */
export function bridge(token: string, send: typeof fetch = fetch): Transport {
  return async (name, input) => {
    const response = await send('/call', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-carryover-token': token },
      body: JSON.stringify({ name, input }),
    });
    const text = await response.text();
    try {
      return JSON.parse(text) as unknown;
    } catch {
      throw new Error(`status ${response.status}, ${text.slice(0, 200)}`);
    }
  };
}

/** The transport for this page: the bridge names itself by a meta tag, the window has none. */
export function transportOf(page: Pick<Document, 'querySelector'>): Transport {
  const token = page.querySelector('meta[name="carryover-bridge"]')?.getAttribute('content');
  return token ? bridge(token) : shell;
}
