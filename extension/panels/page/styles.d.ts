/** Styles imported by a page go into the stylesheet of its bundle. */
declare module '*.css';
