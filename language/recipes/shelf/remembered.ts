/** For questions to something that never changes, such as the catalogue: each path is looked up once. */
export function remembered<V>(look: (path: string) => V): (path: string) => V {
  const known = new Map<string, V>();
  return (path) => {
    const found = known.get(path);
    if (found !== undefined || known.has(path)) return found as V;
    const value = look(path);
    known.set(path, value);
    return value;
  };
}
