/** Styles imported by a page go into the stylesheet of its bundle; with `?raw`, into its script as a text. */
declare module '*.css';
declare module '*.css?raw' {
  const text: string;
  export default text;
}
