/** What writes plans for machines and for paper, with the libraries that takes: a program of its own, loaded when asked for. */
export { dxfOf } from './dxf.js';
export { pdfOf } from './pdf.js';
