// Addresses inside the window: #/people/ID. Pure: the address in, the screen and its parameters out.

/** A pattern such as "/people/:id", and what stands behind it. */
export interface Route {
  path: string;
}

/** A route that was found, with the parts of the address its pattern names. */
export interface Found<R extends Route> {
  route: R;
  params: Record<string, string>;
}

/** The path of a hash: "#/people/7" gives "/people/7", an empty one gives "/". */
export function pathOf(hash: string): string {
  const path = hash.replace(/^#/, '').replace(/\/+$/, '');
  return path.startsWith('/') ? path : '/';
}

/** The link to a path, its named parts filled in. */
export function href(path: string, params: Record<string, string> = {}): string {
  const filled = path.replace(/:(\w+)/g, (_, name: string) => {
    const value = params[name];
    if (value === undefined || value === '') throw new RangeError(`no ${name} for ${path}`);
    return encodeURIComponent(value);
  });
  return `#${filled}`;
}

/** The part of an address, or null when it is not validly encoded. */
function decode(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
}

/** The first route whose pattern fits, or null. */
export function find<R extends Route>(routes: readonly R[], hash: string): Found<R> | null {
  const parts = pathOf(hash).split('/').slice(1);
  for (const route of routes) {
    const pattern = route.path.split('/').slice(1);
    if (pattern.length !== parts.length) continue;
    const params: Record<string, string> = {};
    const fits = pattern.every((p, i) => {
      const part = decode(parts[i] ?? '');
      if (part === null) return false;
      if (!p.startsWith(':')) return p === part;
      params[p.slice(1)] = part;
      return part !== '';
    });
    if (fits) return { route, params };
  }
  return null;
}

/** Whether an address lies under a nav entry's path, so that the entry is marked as here. */
export function isUnder(hash: string, path: string): boolean {
  const at = pathOf(hash);
  return path === '/' ? at === '/' : at === path || at.startsWith(`${path}/`);
}
