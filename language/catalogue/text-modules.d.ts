/** A file taken into the bundle as its text. */
declare module '*?raw' {
  const text: string;
  export default text;
}
