/** The few functions of the library that are held against ours. */
declare module 'jstat' {
  const jstat: {
    readonly studentt: { inv(p: number, freedom: number): number };
    readonly centralF: { cdf(f: number, above: number, below: number): number };
  };
  export default jstat;
}
