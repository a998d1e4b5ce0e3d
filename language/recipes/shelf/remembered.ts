/** More paths than any shop writes; words mistyped on the way to a path must not stay for good. */
const KEPT = 4000;

/** For questions to something that never changes, such as the catalogue: each path is looked up once, and after many others again. */
export function remembered<V>(look: (path: string) => V): (path: string) => V {
  const known = new Map<string, V>();
  return (path) => {
    const found = known.get(path);
    if (found !== undefined || known.has(path)) return found as V;
    const value = look(path);
    if (known.size >= KEPT) known.clear();
    known.set(path, value);
    return value;
  };
}
